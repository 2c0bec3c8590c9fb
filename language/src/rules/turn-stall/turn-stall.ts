import type { LineFigures, LureInTurnFigures } from '../../plan/figures.ts';
import { rule } from '../rule.ts';
import { counted, say, sayApart } from '../say.ts';
import { physics } from '../standing.ts';
import { cleanInWords, judgedTurn, type SidedTurn, widen } from '../turning.ts';

/** A lure that stops working in a turn that the plan allows. */
export const turnStall = rule({
    name: 'turn-stall',
    group: 'layout',
    standing: physics(
        'Taut lines that follow their tow points through a half turn, without weight or stretch.',
    ),
    severity: 'warning',
    summary: 'A line falls slack, or a lure below its least running speed, in a turn that the plan allows.',
    settings: {},
    reads: 'turns',

    check(analysis, _, report) {
        const turn = judgedTurn(analysis);
        const straight = analysis.plan.speed?.si;
        if (!turn || straight === undefined) return;
        for (const { lure, side } of worstOfEach(turn.sides)) {
            const { line, slackAt, slowest } = lure;
            if (line.line.role !== 'fished') continue;
            const name = line.line.position.name;
            const common = { at: turn.asked, positions: [line.line] };
            const here = { at: line.line.back ?? line.line, what: `${name} runs here.` };
            if (slackAt !== undefined) {
                report({
                    ...common,
                    what: `${name} falls slack ${counted(Math.round(slackAt), 'second')} into a turn of ${say.length(turn.asked)} to ${side}.`,
                    why: 'A slack line sinks, and finds the propeller or its neighbour.',
                    remedy: cleanInWords(turn, 'noFoul', 'allWorking'),
                    related: [here],
                    fixes: [widen(turn, 'noFoul', 'allWorking')],
                });
                continue;
            }
            // A bait that slows sinks, and is still one (common practice): only a lure's action stops.
            const works = line.line.lure?.value;
            const runs = works?.runs;
            // A lure that is too slow on a straight course as well has another cause.
            if (!runs || slowest >= runs.from.si || straight < runs.from.si) continue;
            const [slow, least] = sayApart.speed(slowest, runs.from);
            report({
                ...common,
                severity: 'hint',
                what: `${name} slows to ${slow} in a turn of ${say.length(turn.asked)} to ${side}, and ${works.title} runs from ${least}.`,
                why: 'Below that it hangs dead, just when the fish looks at what turns.',
                remedy: cleanInWords(turn, 'allWorking'),
                related: [here, { at: runs.from, what: 'Its least speed is said here.' }],
                fixes: [widen(turn, 'noFoul', 'allWorking')],
            });
        }
    },
});

/** Each lure once, on the side where it slows the most. */
function worstOfEach(sides: readonly SidedTurn[]): readonly { lure: LureInTurnFigures; side: string }[] {
    const worst = new Map<LineFigures, { lure: LureInTurnFigures; side: string }>();
    for (const { side, figures } of sides) {
        for (const lure of figures.lures) {
            const before = worst.get(lure.line);
            if (!before || isWorse(lure, before.lure)) worst.set(lure.line, { lure, side });
        }
    }
    return [...worst.values()];
}

function isWorse(one: LureInTurnFigures, other: LureInTurnFigures): boolean {
    const [when, before] = [one.slackAt ?? Infinity, other.slackAt ?? Infinity];
    return when === before ? one.slowest < other.slowest : when < before;
}
