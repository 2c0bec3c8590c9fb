import type { LineFigures, LureInTurnFigures } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { rule } from '../rule.ts';
import { counted, say, sayApart } from '../say.ts';
import { share } from '../settings.ts';
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
    settings: {
        dead: share(
            '50 %',
            ['0 %', '100 %'],
            'Below this share of its least speed a lure hangs dead: more than a hint.',
        ),
    },
    reads: 'turns',

    check(analysis, { dead }, report) {
        const turn = judgedTurn(analysis);
        const straight = analysis.plan.speed?.si;
        if (!turn || straight === undefined) return;
        for (const { lure, side } of worstOfEach(turn.sides)) {
            const { line } = lure.line;
            if (line.role !== 'fished') continue;
            const fault = faultOf(lure, line, straight, dead);
            if (!fault) continue;
            const { name } = line.position;
            const here = line.back ?? line;
            const how = `a turn of ${say.length(turn.asked)}`;
            report({
                at: turn.asked,
                severity: fault.severity,
                what: `${fault.what(`${how} to ${side}`)}.`,
                why: fault.why,
                remedy: cleanInWords(turn, ...fault.clean),
                related: [{ at: here, what: `${name} runs here.` }, ...fault.related],
                fixes: [widen(turn, 'noFoul', 'allWorking')],
                positions: [line],
                together: {
                    kind: fault.kind,
                    name,
                    what: (names) => `${names} ${fault.several} ${how}.`,
                    each: { at: here, what: `${fault.what(`a turn to ${side}`)}.` },
                },
            });
        }
    },
});

/** What a turn does to a line, as a sentence about it, and about several. */
function faultOf({ slackAt, slowest }: LureInTurnFigures, line: SpreadLine, straight: number, dead: number) {
    const { name } = line.position;
    if (slackAt !== undefined) {
        return {
            kind: 'slack',
            severity: 'warning',
            what: (turn: string) =>
                `${name} falls slack ${counted(Math.round(slackAt), 'second')} into ${turn}`,
            several: 'fall slack in',
            why: 'A slack line sinks, and finds the propeller or its neighbour.',
            clean: ['noFoul', 'allWorking'],
            related: [],
        } as const;
    }
    // A bait that slows sinks, and is still one (common practice): only a lure's action stops.
    const works = line.lure?.value;
    const runs = works?.runs;
    // A lure that is too slow on a straight course as well has another cause.
    if (!runs || slowest >= runs.from.si || straight < runs.from.si) return undefined;
    const [slow, least] = sayApart.speed(slowest, runs.from);
    const hangs = slowest < runs.from.si * dead;
    return {
        kind: 'slow',
        severity: hangs ? 'warning' : 'hint',
        what: (turn: string) => `${name} slows to ${slow} in ${turn}, and ${works.title} runs from ${least}`,
        several: `slow ${hangs ? 'far ' : ''}below their least speeds in`,
        why: 'Below that a lure hangs dead, just when the fish looks at what turns.',
        clean: ['allWorking'],
        related: [{ at: runs.from, what: 'Its least speed is said here.' }],
    } as const;
}

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
