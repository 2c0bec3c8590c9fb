import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finish } from '../../../language/src/physics/steps.ts';
import { courseOf } from '../../../language/src/physics/turn/course.ts';
import { type Envelope, envelope, type JudgedLine } from '../../../language/src/physics/turn/envelope.ts';
import { layOut, turnTime } from '../../../language/src/physics/turn/manoeuvre.ts';
import { pairsInTurn } from '../../../language/src/physics/turn/pairs.ts';
import {
    type Change,
    sensitivityInSteps,
    USUAL_STEPS,
} from '../../../language/src/physics/turn/sensitivity.ts';
import { taut } from '../../../language/src/physics/turn/taut.ts';
import { tightestInSteps } from '../../../language/src/physics/turn/tightest.ts';
import type { Vec } from '../../../language/src/physics/vector.ts';
import { DEGREE, SPREADS, TOW_POINTS } from '../spreads.ts';

const SPEED = 4.116;
const judged = (towPoint: Vec, astern: number, leastSpeed = 0): JudgedLine => ({
    towPoint,
    layback: towPoint[0] + astern,
    sway: 4 * DEGREE,
    cap: 3,
    leastSpeed,
});
const spread = (astern: readonly number[], leastSpeed = 0) =>
    Object.values(TOW_POINTS).map((towPoint, index) => judged(towPoint, astern[index]!, leastSpeed));
const [STAGGERED, , EQUAL] = SPREADS;

/** Six lures and two teasers' worth of lines: all that a large boat tows. */
const seven: readonly JudgedLine[] = [
    ...spread([16, 24, 33, 44], 3.2),
    judged([1, 0, 8], 62, 2.5),
    judged([3, 3.2, 5], 8, 3.2),
    judged([3, -3.2, 5], 10, 3.2),
];

const radiusOf = (part: Envelope['noFoul']) => (part.outcome === 'limited' ? part.radius : undefined);

/** The least gap of all pairs in a turn, judged without any pruning across pairs. */
function leastGap(lines: readonly JudgedLine[], side: 'port' | 'starboard', radius: number): number {
    const turn = layOut({ speed: SPEED, radius, side })!;
    const { pairs } = pairsInTurn(
        lines.map((line) => ({ course: courseOf(line, turn)!, sway: line.sway, cap: line.cap })),
        turn,
    );
    return pairs[0]!.distance;
}

describe.each(['port', 'starboard'] as const)('turning to %s', (side) => {
    const { noFoul, allWorking, tally } = envelope(seven, { speed: SPEED, side })!;

    test('the tightest turn without a foul is clean, and a metre tighter is not', () => {
        const radius = radiusOf(noFoul)!;
        expect(leastGap(seven, side, radius)).toBeGreaterThan(0.25 * 0.95);
        expect(leastGap(seven, side, radius - 1)).toBeLessThanOrEqual(0.25);
        for (const wider of [1.1, 1.3, 1.7, 2])
            expect(leastGap(seven, side, radius * wider)).toBeGreaterThan(0.25);
    });

    test('the limiting pair and moment are those of the first contact in the tighter turn', () => {
        if (noFoul.outcome !== 'limited') throw new Error('the spread is limited');
        const { kind, lines, time, turned } = noFoul.limit;
        expect(kind).toBe('foul');
        const turn = layOut({ speed: SPEED, radius: noFoul.radius - 1, side })!;
        const touching = pairsInTurn(
            seven.map((line) => ({ course: courseOf(line, turn)!, sway: line.sway, cap: line.cap })),
            turn,
        ).pairs.filter(({ distance }) => distance <= 0.25);
        expect(touching.map((pair) => pair.lines)).toContainEqual(lines);
        expect(time).toBeGreaterThan(0);
        expect(turned).toBeLessThanOrEqual(Math.PI + 1e-12);
    });

    test('the tightest turn with all working keeps every lure at its least speed, a metre tighter does not', () => {
        const radius = radiusOf(allWorking)!;
        const lacking = (tried: number) => {
            const turn = layOut({ speed: SPEED, radius: tried, side })!;
            const times = Array.from({ length: 4001 }, (_, index) => (turn.end * index) / 4000);
            return Math.max(
                ...seven.map((line) => {
                    const speeds = taut(line, turn, times)!.states.map(({ speed }) => speed);
                    return line.leastSpeed! - Math.min(...speeds);
                }),
            );
        };
        expect(lacking(radius)).toBeLessThan(1e-3);
        expect(lacking(radius - 1)).toBeGreaterThan(0);
        if (allWorking.outcome === 'limited') expect(allWorking.limit.kind).toBe('slow');
    });

    test('pruning leaves few fans to compare', () => {
        // Twenty-one pairs, thirty-odd radii, dozens of moments each: some fifty thousand without it.
        expect(tally.fanPairs).toBeLessThan(8000);
    });
});

test('a plan mirrored has its two sides exchanged', () => {
    const mirrored = seven.map((line): JudgedLine => {
        const [x, y, z] = line.towPoint;
        return { ...line, towPoint: [x, -y, z] };
    });
    const [port, starboard] = [
        envelope(seven, { speed: SPEED, side: 'port' })!,
        envelope(mirrored, { speed: SPEED, side: 'starboard' })!,
    ];
    expect(radiusOf(starboard.noFoul)).toBeCloseTo(radiusOf(port.noFoul)!, 6);
    expect(radiusOf(starboard.allWorking)).toBeCloseTo(radiusOf(port.allWorking)!, 6);
});

test('lines that touch running straight have no clean turn, and the limit names them at the start', () => {
    const { noFoul } = envelope(spread(EQUAL!.astern), { speed: SPEED, side: 'port' })!;
    expect(noFoul).toMatchObject({
        outcome: 'never',
        limit: { kind: 'foul', lines: [0, 1], time: 0, turned: 0 },
    });
});

test('in a tight turn a good spread is limited by an inner lure that stops working before it fouls', () => {
    // Lures that need 6.2 kn of the boat's 8: common practice for active heads.
    const wide = spread(STAGGERED!.astern, 3.2);
    for (const side of ['port', 'starboard'] as const) {
        const { noFoul, allWorking } = envelope(wide, { speed: SPEED, side })!;
        const working = radiusOf(allWorking)!;
        expect(working).toBeGreaterThan(radiusOf(noFoul)!);
        if (allWorking.outcome !== 'limited') throw new Error('some lure is slow');
        const [slow] = allWorking.limit.lines;
        expect(Math.sign(wide[slow!]!.towPoint[1])).toBe(side === 'port' ? 1 : -1);
    }
});

test('a shotgun from a low centre tow point fouls rigger lines in turns; the highest line does not', () => {
    const withShotgun = (up: number) => [...spread(STAGGERED!.astern), judged([1, 0, up], 62)];
    const fouls = (up: number) => {
        const turn = layOut({ speed: SPEED, radius: 70, side: 'port' })!;
        return pairsInTurn(
            withShotgun(up).map((line) => ({
                course: courseOf(line, turn)!,
                sway: line.sway,
                cap: line.cap,
            })),
            turn,
        ).pairs.filter(({ lines, distance }) => lines[1] === 4 && distance <= 0.25);
    };
    expect(fouls(4).some(({ lines: [rigger] }) => rigger === 2 || rigger === 3)).toBe(true);
    expect(fouls(9)).toEqual([]);
});

test('a line so long that it falls slack ends the clean turns as slack, not as a foul', () => {
    const alone = [judged([0, 0, 6], 70, 1)];
    const { noFoul, allWorking } = envelope(alone, { speed: 4, side: 'port', angle: 2 * Math.PI })!;
    expect(noFoul).toMatchObject({ outcome: 'limited', limit: { kind: 'slack', lines: [0] } });
    expect(allWorking).toMatchObject({ outcome: 'limited', limit: { kind: 'slow', lines: [0] } });
    // Beyond the line's length a circle settles; the lure then needs the boat's speed times the cosine of the lag.
    expect(radiusOf(noFoul)).toBeLessThan(70);
    expect(radiusOf(allWorking)).toBeGreaterThanOrEqual(radiusOf(noFoul)!);
});

test('one short line alone is free to turn as tight as looked at', () => {
    const { noFoul, allWorking } = envelope([judged([0, 0, 2], 8, 1)], { speed: 4, side: 'port' })!;
    expect(noFoul).toEqual({ outcome: 'free', radius: 15 });
    expect(allWorking).toEqual({ outcome: 'free', radius: 15 });
});

test('a clean turn tighter than a fault is not taken for the answer, nor looked at', () => {
    const looked: number[] = [];
    const faulty = (radius: number) => {
        looked.push(radius);
        return radius < 20 || (radius > 40 && radius < 60) ? 'foul' : undefined;
    };
    const found = finish(tightestInSteps({ tightest: 10, widest: 200 }, faulty, (radius) => radius));
    if (found.outcome !== 'limited') throw new Error('there is a fault');
    expect(found.radius).toBeGreaterThanOrEqual(60);
    expect(found.radius).toBeLessThan(61);
    expect(found.limit).toBeLessThan(60);
    expect(Math.min(...looked)).toBeGreaterThan(50);
});

test('a half turn takes π times the radius over the speed', () => {
    expect(turnTime({ speed: 4, radius: 50, side: 'port' })).toBeCloseTo((Math.PI * 50) / 4, 12);
});

describe('what the tightest turn hangs on', () => {
    const lines = spread(STAGGERED!.astern, 3.2);
    const looked = { speed: SPEED, side: 'port' } as const;
    const { now, changes } = finish(sensitivityInSteps(lines, looked))!;
    const changedBy = (wanted: Partial<Change>) =>
        changes.find(({ change }) =>
            Object.entries(wanted).every(([key, value]) => `${change[key as 'what']}` === `${value}`),
        )!.envelope;
    const { speed, sway, contact } = USUAL_STEPS;

    test('each change is told: a metre of every line, every line left out, every trade, and the day', () => {
        expect(changes).toHaveLength(2 * lines.length + lines.length + 6 + 6);
        expect(radiusOf(now.noFoul)).toBeCloseTo(radiusOf(envelope(lines, looked)!.noFoul)!, -0.5);
    });

    test('more sway or a nearer contact widen it, a speed does not: a tractrix knows none', () => {
        const radius = radiusOf(now.noFoul)!;
        expect(radiusOf(changedBy({ what: 'sway', by: sway }).noFoul)).toBeGreaterThan(radius);
        expect(radiusOf(changedBy({ what: 'sway', by: -sway }).noFoul)).toBeLessThan(radius);
        expect(radiusOf(changedBy({ what: 'contact', by: contact }).noFoul)).toBeGreaterThanOrEqual(radius);
        expect(radiusOf(changedBy({ what: 'speed', by: speed }).noFoul)).toBeCloseTo(radius, 6);
        // Lures with a least speed mind it.
        expect(radiusOf(changedBy({ what: 'speed', by: speed }).allWorking)).toBeLessThan(
            radiusOf(now.allWorking)!,
        );
    });

    test('a metre is found as if the line had been written so', () => {
        const changed = lines.map((line, index) =>
            index === 1 ? { ...line, layback: line.layback + 1 } : line,
        );
        const written = envelope(changed, { ...looked, refine: 0.1 })!;
        expect(changedBy({ what: 'layback', line: 1, by: 1 })).toEqual({
            ...written,
            tally: expect.anything(),
        });
    });

    test('without the line that limits it, it is tighter, and the limit names lines by their places in the whole', () => {
        if (now.noFoul.outcome !== 'limited') throw new Error('the spread is limited');
        for (const line of now.noFoul.limit.lines) {
            const { noFoul } = changedBy({ what: 'without', line });
            expect(radiusOf(noFoul)).toBeLessThan(radiusOf(now.noFoul)!);
            if (noFoul.outcome === 'limited') expect(noFoul.limit.lines).not.toContain(line);
        }
        const others = lines.map((_, index) => index).filter((index) => index !== 0);
        const { allWorking } = changedBy({ what: 'without', line: 0 });
        if (allWorking.outcome === 'limited') expect(others).toContain(allWorking.limit.lines[0]);
    });

    test('traded distances are astern of the transom', () => {
        const [corner, , rigger] = lines as [JudgedLine, JudgedLine, JudgedLine];
        const moved = lines.map((line, index) =>
            index === 0
                ? { ...line, layback: rigger.layback - rigger.towPoint[0] + line.towPoint[0] }
                : index === 2
                  ? { ...line, layback: corner.layback - corner.towPoint[0] + line.towPoint[0] }
                  : line,
        );
        const written = envelope(moved, { ...looked, refine: 0.1 })!;
        expect(changedBy({ what: 'traded', lines: [0, 2] }).noFoul).toEqual(written.noFoul);
    });

    test('figures out of their range have none', () => {
        expect(finish(sensitivityInSteps(lines, { ...looked, speed: -1 }))).toBeUndefined();
        expect(finish(sensitivityInSteps([lines[0]!], looked))!.changes).toHaveLength(2 + 6);
    });
});

test('whatever is towed, however the boat turns, every figure is a number', () => {
    const numbers = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
    const anyLine = fc.record(
        {
            towPoint: fc.tuple(numbers(-2, 6), numbers(-9, 9), numbers(0, 10)),
            layback: numbers(0.5, 90),
            sway: numbers(0, 8 * DEGREE),
            cap: numbers(0, 5),
            leastSpeed: numbers(0, 5),
        },
        { requiredKeys: ['towPoint', 'layback', 'sway'] },
    );
    const anyTurn = fc.record(
        {
            speed: numbers(1, 7),
            side: fc.constantFrom('port' as const, 'starboard' as const),
            angle: numbers(0.1, 8),
            ramp: numbers(0, 20),
            turnSpeed: numbers(1, 7),
            after: numbers(0, 40),
        },
        { requiredKeys: ['speed', 'side'] },
    );
    const sound = (figure: unknown): boolean =>
        typeof figure === 'number'
            ? Number.isFinite(figure)
            : typeof figure !== 'object' || figure === null || Object.values(figure).every(sound);
    fc.assert(
        fc.property(fc.array(anyLine, { minLength: 1, maxLength: 4 }), anyTurn, (lines, turn) => {
            const found = envelope(lines, turn);
            expect(found).toBeDefined();
            expect(sound(found)).toBe(true);
        }),
        { numRuns: 30 },
    );
});

test('figures out of their range give no envelope', () => {
    const looked = { speed: SPEED, side: 'port' } as const;
    expect(envelope([judged([0, 0, 2], -5)], looked)).toBeUndefined();
    expect(envelope([{ ...judged([0, 0, 2], 20), sway: -1 }], looked)).toBeUndefined();
    expect(envelope(seven, { ...looked, speed: 0 })).toBeUndefined();
    expect(envelope(seven, { ...looked, range: { tightest: 50, widest: 20 } })).toBeUndefined();
    expect(envelope(seven, { ...looked, contact: Number.NaN })).toBeUndefined();
});
