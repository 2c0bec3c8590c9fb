import { exceeds } from '../../units/compare.ts';
import { heldLure } from '../clips.ts';
import { replaceValue, toldAs } from '../fixes.ts';
import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { share } from '../settings.ts';
import { physics } from '../standing.ts';

/** A clip that opens for the lure, or for the sea, and not for a fish. */
export const clipFalseRelease = rule({
    name: 'clip-false-release',
    group: 'drag and strike',
    standing: physics(
        "A clip carries the lure's whole pull until it opens.",
        'The surge, 1.2 to 1.5 times the pull by the sea; the pull itself where nobody put the lure on a scale.',
    ),
    severity: 'warning',
    summary: 'A clip is set below the pull of its lure with surge, so that the sea opens it.',
    settings: {
        margin: share('100 %', ['50 %', '300 %'], 'Least setting of a clip, of the pull with surge.'),
    },

    check(analysis, { margin }, report) {
        const { plan } = analysis;
        for (const figures of fishedLines(analysis)) {
            const held = heldLure(figures, plan);
            if (!held) continue;
            const { line } = figures;
            const { clip, runner, pull, towing, limit } = held;
            const { setting } = clip;
            const [least, alone] = [towing * margin, exceeds(pull, setting.si)];
            if (!exceeds(least, setting.si)) continue;
            const name = runner.value.title;
            const [opens, pulls] = sayApart.load(setting, alone ? pull : towing);
            const how = alone ? 'by itself' : `with surge in a sea of ${say.length(plan.sea!)}`;
            // A light clip on purpose: a few false releases are the price (common practice).
            const light = !alone && line.method?.value.style?.value === 'drop-back';
            const measured = figures.pull.known && figures.pull.standing === 'measured';
            const torn = limit && least > limit.most.si;
            // In a plan that is like another the clip may be as it was, and only the sea or the speed another.
            const changed = [alone ? undefined : plan.sea, plan.speed].filter((each) => each !== undefined);
            const what = `The clip at ${line.position.name} opens at ${opens}, and ${name} pulls ${pulls} ${how}${alone || margin === 1 ? '' : `, of which ${say.share(margin)} is asked for`}.`;
            report({
                at: [setting, runner, ...changed],
                ...(light && { severity: 'hint' }),
                ...(alone && measured && { severity: 'error' }),
                what,
                why: alone
                    ? 'It opens as soon as the line is in it.'
                    : 'Each false release is a lure that does not fish until somebody has seen it.',
                remedy: torn
                    ? `No setting holds this lure and opens for a fish at ${say.load(limit.most)}: tow one that pulls less.`
                    : `Set it to ${toldAs(setting, least, 'up')} or more.`,
                related: [
                    { at: runner.value.pull?.load, what: `What ${name} pulls is said here.` },
                    ...(alone ? [] : [{ at: plan.sea, what: 'The sea is said here.' }]),
                ],
                fixes: [
                    torn
                        ? undefined
                        : replaceValue((text) => `Set the clip to ${text}`, setting, least, 'up'),
                ],
                positions: [line],
                together: {
                    kind: alone ? 'alone' : 'surge',
                    name: line.position.name,
                    what: (names) =>
                        `The clips at ${names} are set below what their lures pull ${alone ? 'by themselves' : how}.`,
                    remedy: 'Set each to what its lure pulls, or change back what makes them pull more.',
                    fixes: [],
                    each: { at: setting, what },
                },
            });
        }
    },
});
