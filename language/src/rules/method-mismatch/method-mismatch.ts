import type { Measure } from '../../plan/measure.ts';
import type { Drag, Method, SpreadLine } from '../../plan/model.ts';
import { standardGravity } from '../../units/quantity.ts';
import { replaceValue } from '../fixes.ts';
import { hooksOf } from '../gear.ts';
import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { share } from '../settings.ts';
import { practice } from '../standing.ts';

/** A line that is set up for something else than its strike method wants. */
export const methodMismatch = rule({
    name: 'method-mismatch',
    group: 'drag and strike',
    standing: practice(
        'A method is one agreed way to take a strike; a line that differs surprises whoever runs to it.',
    ),
    severity: 'warning',
    summary: 'Drag, loop, wait or clip of a line contradict the method that it is fished with.',
    settings: {
        slack: share('10 %', ['0 %', '100 %'], "Numbers this close to the method's count as equal."),
    },

    check(analysis, { slack }, report) {
        for (const { line } of fishedLines(analysis)) {
            const method = line.method?.value;
            if (!method) continue;
            for (const { what, decided, wanted, sayIt } of comparisons(line, method)) {
                if (!decided || !wanted || Math.abs(decided.si - wanted.si) <= wanted.si * slack) continue;
                report({
                    at: decided,
                    what: `${what} is ${sayIt(decided)}, and ${method.title} wants ${sayIt(wanted)}.`,
                    why: 'Whoever takes the rod counts on the method.',
                    remedy: "Set it to the method's figure, or choose another method for this line.",
                    related: [{ at: wanted, what: `${method.title} says it here.` }],
                    fixes: [replaceValue((text) => `Change ${what} to ${text}`, decided, wanted.si)],
                    positions: [line],
                });
            }
            const slow = method.style?.value === 'direct' ? slackIn(line) : undefined;
            if (slow) {
                report({
                    at: slow.measure,
                    what: `${line.position.name} has a ${slow.what}, and ${method.title} drives the hook at the bite.`,
                    why: 'Slack and waiting belong to a drop-back.',
                    remedy: 'Take it out, or choose a drop-back method for this line.',
                    related: [{ at: method.style, what: 'The style is said here.' }],
                    positions: [line],
                });
            }
            const circle = method.style?.value === 'direct' && line.bait ? circleIn(line) : undefined;
            if (circle) {
                report({
                    at: method === analysis.plan.method?.value ? line.bait! : line.method!,
                    what: `${line.position.name} fishes a circle hook, and ${method.title} drives the hook at the bite.`,
                    why: 'A circle hook sets itself in the corner of the jaw, and a strike pulls it out.',
                    remedy: 'Choose a drop-back method for this line, and come up slowly.',
                    related: [{ at: circle, what: 'The hook is said here.' }],
                    positions: [line],
                });
            }
        }
    },
});

interface Comparison {
    readonly what: string;
    readonly decided: Measure | undefined;
    readonly wanted: Measure | undefined;
    readonly sayIt: (measure: Measure) => string;
}

function* comparisons(line: SpreadLine, method: Method): Generator<Comparison> {
    for (const stage of ['set', 'hooked', 'full'] as const) {
        // What the method wants wins over what the outfit was set up for, so the outfit is asked itself.
        const decided = ownWord(line.drag[stage]) ?? line.outfit?.value.drag[stage];
        yield {
            what: `${stage} drag at ${line.position.name}`,
            decided,
            wanted: wantedDrag(stage, line, method),
            sayIt: say.load,
        };
    }
    const at = (what: string) => `${what} at ${line.position.name}`;
    yield { what: at('the loop'), decided: ownWord(line.loop), wanted: method.loop, sayIt: say.length };
    yield { what: at('the wait'), decided: ownWord(line.wait), wanted: method.wait, sayIt: say.time };
    yield { what: at('the clip'), decided: ownWord(line.clip), wanted: method.clip, sayIt: say.load };
    yield {
        what: at('the number of wraps'),
        decided: ownWord(line.wraps),
        wanted: method.wraps,
        sayIt: say.count,
    };
}

/** What a method wants of a stage: a share is one of this line's class. */
function wantedDrag(stage: keyof Drag, line: SpreadLine, { dragSaid }: Method): Measure | undefined {
    const { force, share } = dragSaid[stage] ?? {};
    const lineClass = line.outfit?.value.line?.lineClass;
    if (force || !share || !lineClass) return force;
    return { ...share, si: share.si * lineClass.si * standardGravity };
}

function ownWord(measure: Measure | undefined): Measure | undefined {
    return measure?.origin.voice === 'position' ? measure : undefined;
}

function circleIn(line: SpreadLine) {
    const hooks = hooksOf(line);
    return hooks?.kind?.value.includes('circle') ? hooks.kind : undefined;
}

function slackIn({
    loop,
    wait,
}: SpreadLine): { readonly what: string; readonly measure: Measure } | undefined {
    if (loop && loop.si > 0) return { what: `loop of ${say.length(loop)}`, measure: loop };
    return wait && wait.si > 0 ? { what: `wait of ${say.time(wait)}`, measure: wait } : undefined;
}
