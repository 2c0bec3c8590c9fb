import { exceeds } from '../../units/compare.ts';
import { replaceValue, toldAs } from '../fixes.ts';
import { runnerOf } from '../gear.ts';
import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { physics } from '../standing.ts';

/** On a line with no clip the reel alone holds the lure, and this one lets it go. */
export const dragUnderTow = rule({
    name: 'drag-under-tow',
    group: 'drag and strike',
    standing: physics(
        'Without a clip, set drag carries the whole towing pull.',
        'The surge, 1.2 to 1.5 times the pull by the sea; the pull itself where nobody put the lure on a scale.',
    ),
    severity: 'warning',
    summary: 'On a line with no clip, set drag is below the pull of the lure, or below it with surge.',
    settings: {},

    check(analysis, _, report) {
        const { plan } = analysis;
        for (const { line, pull, towing } of fishedLines(analysis)) {
            const { set, hooked } = line.drag;
            const runner = runnerOf(line);
            if (line.from?.kind !== 'rod tip' || !runner || !set || !pull.known || !towing.known) continue;
            const creeps = exceeds(pull.value, set.si);
            // Without a sea nobody knows the surge.
            const most = plan.sea ? towing.value : pull.value;
            if (!creeps && !exceeds(most, set.si)) continue;
            const light = line.method?.value.style?.value === 'drop-back';
            const name = runner.value.title;
            const [drag, pulls] = sayApart.load(set, creeps ? pull.value : most);
            const changed = [creeps ? undefined : plan.sea, plan.speed].filter((each) => each !== undefined);
            const how = creeps ? 'by itself' : `with surge in a sea of ${say.length(plan.sea!)}`;
            const what = `Set drag at ${line.position.name} is ${drag}, and ${name} pulls ${pulls} ${how}.`;
            const tooMuch = hooked && most > hooked.si;
            report({
                at: [set, runner, ...changed],
                ...((light || !creeps) && { severity: 'hint' }),
                what,
                why: 'No clip holds this line, so the lure takes it off the reel.',
                remedy: tooMuch
                    ? 'Tow it from a clip, or tow one that pulls less.'
                    : `Raise it to ${toldAs(set, most, 'up')}, or tow it from a clip${light ? '; on light drag, take the line back every half hour' : ''}.`,
                related: [{ at: runner.value.pull?.load, what: `What ${name} pulls is said here.` }],
                fixes: [
                    tooMuch
                        ? undefined
                        : replaceValue((text) => `Raise set drag to ${text}`, set, most, 'up'),
                ],
                positions: [line],
                together: {
                    kind: creeps ? 'creep' : 'surge',
                    name: line.position.name,
                    what: (names) =>
                        `Set drag at ${names} is below what the lures pull ${creeps ? 'by themselves' : how}.`,
                    remedy: 'Raise set drag on each, or tow them from clips.',
                    each: { at: set, what },
                },
            });
        }
    },
});
