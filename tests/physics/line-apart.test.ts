import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LineQuestion, lineAtRest } from '../../language/src/physics/line.ts';
import { integrate } from './integrate.ts';
import { lineSlopes } from './line-slopes.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Lines as boats tow them: from a rod tip or a pole, a lure that runs, a leader, some wind. */
const lines: fc.Arbitrary<LineQuestion> = fc
    .record({
        leader: fc.record({
            length: between(1, 9),
            diameter: between(1e-3, 2.5e-3),
            density: between(1000, 1300),
        }),
        main: fc.record({ diameter: between(0.4e-3, 1.2e-3), density: between(960, 1300) }),
        dragArea: between(0.0008, 0.012),
        weightInWater: between(0.2, 9),
        up: between(1, 9),
        out: between(0, 8),
        speed: between(2, 7),
        astern: between(12, 90),
        wind: fc.tuple(between(-9, 9), between(-9, 9)),
        free: fc.boolean(),
    })
    .map(({ leader, main, dragArea, weightInWater, up, out, speed, astern, wind: [wx, wy], free }) => ({
        sections: [leader, { length: 1, ...main }] as const,
        lure: { dragArea, mass: weightInWater / 4, weightInWater },
        towPoint: [1, out, up] as const,
        speed,
        length: { astern },
        wind: [wx, wy, 0] as const,
        runs: free ? ('free' as const) : ('surface' as const),
    }));

test('whatever is towed, the line that ODEX integrates from the lure meets the tow point: to 2 mm, the tension to 0.3 %', () => {
    let crossed = 0;
    let leadersOut = 0;
    fc.assert(
        fc.property(lines, (question) => {
            const line = lineAtRest(question);
            fc.pre(line.kind === 'at-rest');
            if (line.kind !== 'at-rest') return;
            // What lies on the water is judged against a catenary elsewhere.
            fc.pre(!(line.entry && line.entry.angle === 0));
            const [leader, main] = question.sections as unknown as [
                { length: number; diameter: number; density: number },
                { diameter: number; density: number },
            ];
            const drag = 0.5 * 1025 * question.lure.dragArea * question.speed ** 2;
            // Under water nothing but the line bears it.
            if (!line.atSurface) expect(line.upward.pull / question.lure.weightInWater).toBeCloseTo(1, 6);
            let state = [drag, 0, line.upward.pull, ...line.lure];
            const cuts = [...new Set([leader.length, line.wet, line.lineOut])]
                .filter((end) => end > 0 && end <= line.lineOut)
                .sort((a, b) => a - b);
            let from = 0;
            for (const to of cuts) {
                const middle = (from + to) / 2;
                const of = middle < leader.length ? leader : main;
                state = integrate(
                    lineSlopes(question, middle < line.wet, of.diameter, of.density),
                    from,
                    state,
                    to,
                );
                from = to;
            }
            const [x, y, z] = question.towPoint;
            expect(Math.hypot(state[3]! - x, state[4]! - y, state[5]! - z)).toBeLessThan(2e-3);
            expect(Math.hypot(state[0]!, state[1]!, state[2]!) / line.tension.towPoint).toBeCloseTo(1, 2.5);
            expect(Math.abs(-line.lure[0] - (question.length as { astern: number }).astern)).toBeLessThan(
                2e-3,
            );
            if (line.wet > 0) crossed++;
            if (line.wet > leader.length) leadersOut++;
        }),
        { numRuns: 150, seed: 20 },
    );
    // Not only lines in air were looked at.
    expect(crossed).toBeGreaterThan(20);
    expect(leadersOut).toBeGreaterThan(5);
});
