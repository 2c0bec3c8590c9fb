import type { AnalysedPlan, PairInTurnFigures } from '../../plan/figures.ts';
import { known, swayOf } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { angle } from '../settings.ts';
import { physics } from '../standing.ts';
import { cleanInWords, cleanSomewhere, judgedTurn, type SidedTurn, widen } from '../turning.ts';

/** Two lines touch in a turn that the plan allows. */
export const turnFoul = rule({
    name: 'turn-foul',
    group: 'layout',
    standing: physics(
        'Taut lines that follow their tow points through a half turn, each with the fan that it sways in.',
        'The sway, 4 deg by default, and the distance at which lines count as touching.',
    ),
    severity: 'warning',
    summary: 'Two lines touch, at the sway that the plan allows, in a turn that the plan allows.',
    settings: {
        sway: angle(
            { otherwise: "the lures' or the plan's own" },
            ['0.5 deg', '45 deg'],
            'Sway that every pair has to bear in a turn.',
        ),
    },
    givesWayTo: ['shotgun-inside'],
    reads: 'turns',

    check(analysis, { sway }, report) {
        const turn = judgedTurn(analysis);
        if (!turn) return;
        for (const { pair, side } of worstOfEach(turn.sides)) {
            const touch = sway === undefined ? pair.clearance < analysis.contact : pair.swayMargin < sway;
            if (!touch || !isOurs(pair) || touchStraight(pair, analysis, sway)) continue;
            const [{ line: a }, { line: b }] = [pair.a, pair.b];
            const [touches, asked] = sayApart.angle(Math.max(pair.swayMargin, 0), sway ?? swayOf(pair));
            const margin = pair.swayMargin > 0 ? `at ${touches} of sway` : 'without any sway';
            const two = `${a.position.name} and ${b.position.name} touch ${margin}`;
            report({
                at: turn.asked,
                what: `${two} in a turn of ${say.length(turn.asked)} to ${side}, and this plan allows for ${asked}.`,
                why: 'Outer lines swing in across the paths of inner ones.',
                remedy: cleanInWords(turn, ...cleanSomewhere(turn)),
                related: [a, b].map((line) => ({
                    at: line.back ?? line,
                    what: `${line.position.name} runs here.`,
                })),
                fixes: [sway === undefined ? widen(turn, ...cleanSomewhere(turn)) : undefined],
                positions: [a, b],
                together: {
                    kind: 'foul',
                    name: `${a.position.name} with ${b.position.name}`,
                    what: (names) => `These lines touch in a turn of ${say.length(turn.asked)}: ${names}.`,
                    each: {
                        at: a.back ?? a,
                        what: `${two} to ${side}, and this plan allows for ${asked}.`,
                    },
                },
            });
        }
    },
});

/** Each pair once, on the side where it bears the least sway. */
function worstOfEach(sides: readonly SidedTurn[]): readonly { pair: PairInTurnFigures; side: string }[] {
    const worst = new Map<string, { pair: PairInTurnFigures; side: string }>();
    for (const { side, figures } of sides) {
        for (const pair of figures.pairs) {
            const key = `${pair.a.line.position.name}\n${pair.b.line.position.name}`;
            const before = worst.get(key);
            if (!before || pair.swayMargin < before.pair.swayMargin) worst.set(key, { pair, side });
        }
    }
    return [...worst.values()];
}

/** Two teasers that touch take nobody's fish. */
function isOurs({ a, b }: PairInTurnFigures): boolean {
    return a.line.role === 'fished' || b.line.role === 'fished';
}

/** Lines that touch while the boat runs straight are said to do so elsewhere, and a turn is not their cause. */
function touchStraight(
    { a, b }: PairInTurnFigures,
    { pairs, contact }: AnalysedPlan,
    sway: number | undefined,
): boolean {
    const straight = pairs.find((pair) => pair.a.line === a.line && pair.b.line === b.line);
    const [clearance, margin] = [
        straight && known(straight.clearance),
        straight && known(straight.swayMargin),
    ];
    if (clearance === undefined || margin === undefined) return false;
    return clearance < contact || (sway !== undefined && margin < sway);
}
