import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advanceChain, layChain } from '../../../language/src/physics/chain/chain.ts';
import { chain, compareTaut } from '../../../language/src/physics/chain/model.ts';
import { restChain } from '../../../language/src/physics/chain/rest.ts';
import { type ChainLine, runChain } from '../../../language/src/physics/chain/run.ts';
import { KNOT, STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import { lineAtRest, type RestingLine } from '../../../language/src/physics/line.ts';
import { layOut, type Manoeuvre } from '../../../language/src/physics/turn/manoeuvre.ts';
import { mirror, scale, type Vec } from '../../../language/src/physics/vector.ts';
import { statesOf } from './moored.ts';

const speed = 8 * KNOT;

/** A port rigger line with a lure that its line holds up. */
const rigger: ChainLine = {
    towPoint: [2, 6, 6.5],
    layback: 40,
    tow: {
        sections: [
            { length: 4.2, diameter: 1.6e-3, density: 1140 },
            { length: 60, diameter: 0.9e-3, density: 1140 },
        ],
        lure: { dragArea: 0.003, mass: 0.3, weightInWater: 1.5 },
    },
};
const half: Manoeuvre = { speed, radius: 50, side: 'starboard' };
const every = (step: number, until: number) =>
    Array.from({ length: Math.floor(until / step) + 1 }, (_, index) => index * step);
const distance = (a: Vec, b: Vec) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('as one model among others', () => {
    const turn = layOut(half)!;

    test('it answers every time that is asked, from the tow point to the lure', () => {
        const times = [-3, 0, 0.05, 7.3, 7.3, 40];
        const { states } = chain(rigger, turn, times)!;
        expect(states.map(({ time }) => time)).toEqual(times);
        for (const { line } of states) expect(line).toHaveLength(21);
        expect(states[3]).toEqual(states[4]);
        // Before the helm goes over, all moves with the boat.
        const [before, at] = states;
        expect(distance(before!.line.at(-1)!, at!.line.at(-1)!)).toBeCloseTo(3 * speed, 9);
        expect(before!.speed).toBeCloseTo(speed, 6);
        expect(at!.line[0]).toEqual([2, 6, 6.5]);
        expect(at!.line.at(-1)![0]).toBeCloseTo(2 - 40, 1);
    });

    test('on the inside of the turn the lure slows, on the outside it is faster than the boat', () => {
        const inner = chain(rigger, layOut({ ...half, side: 'port' })!, every(0.5, 35))!;
        const outer = chain(rigger, turn, every(0.5, 35))!;
        expect(Math.min(...inner.states.map((state) => state.speed))).toBeLessThan(speed * 0.75);
        expect(Math.max(...outer.states.map((state) => state.speed))).toBeGreaterThan(speed * 1.02);
    });

    test('a line longer than the circle is wide falls slack in a held turn; the same line in a wide one does not', () => {
        const long = { ...rigger, layback: 60 };
        const held = layOut({ speed, radius: 20, side: 'port', angle: 12, after: 0 })!;
        const { states, slackAt } = chain(long, held, every(1, held.end))!;
        expect(slackAt).toBeGreaterThan(5);
        expect(states.find(({ slack }) => slack)!.time).toBeCloseTo(slackAt!, -0.3);
        // Left to itself, the lure sinks at the speed at which its drag bears its weight.
        const sinking = states.filter(({ slack }) => slack).map(({ line }) => line.at(-1)![2]);
        const terminal = Math.sqrt(1.5 / (0.5 * 1025 * 0.003));
        expect((sinking[0]! - sinking[4]!) / 4 / terminal).toBeCloseTo(1, 0.5);
        const wide = layOut({ speed, radius: 150, side: 'port' })!;
        expect(chain(long, wide, every(1, wide.end))!.slackAt).toBeUndefined();
    });

    test('lines, turns and times that cannot be have no answer, and say why', () => {
        expect(chain({ ...rigger, layback: -1 }, turn, [0])).toBeUndefined();
        expect(chain(rigger, turn, [1, 0])).toBeUndefined();
        expect(chain(rigger, turn, [Number.NaN])).toBeUndefined();
        expect(chain({ ...rigger, links: 0 }, turn, [0])).toBeUndefined();
        const reason = runChain({ ...rigger, layback: 0 }, turn, [0]).next().value;
        expect(reason).toMatchObject({ kind: 'bad-line', reason: expect.stringContaining('astern') });
        expect(runChain(rigger, turn, [5000]).next().value).toMatchObject({ kind: 'bad-line' });
    });
});

describe('slice by slice', () => {
    test('a run can be left between two states, and until then costs only what was asked', () => {
        const run = runChain(rigger, layOut(half)!, every(0.5, 60));
        const all = statesOf(rigger, half, every(0.5, 60)).states;
        for (let index = 0; index < 5; index++) expect(run.next().value).toEqual(all[index]);
        const leaving = { kind: 'did-not-settle', at: 2 } as const;
        expect(run.return(leaving)).toEqual({ value: leaving, done: true });
        expect(run.next().done).toBe(true);
    });

    test('a chain moved on in many calls arrives where one call brings it', () => {
        const { tow, towPoint } = rigger;
        const rest = lineAtRest({ ...tow, towPoint, speed, length: { astern: 38 } }) as RestingLine;
        const at = (time: number): Vec => [2 + speed * time, 6 + 0.5 * (1 - Math.cos(0.4 * time)), 6.5];
        const start = () => {
            const laid = layChain(tow, rest.lineOut, 20, 6)!;
            restChain(laid, rest.shape, speed);
            return laid;
        };
        const whole = start();
        expect(advanceChain(whole, at, 10)).toBe(true);
        const sliced = start();
        for (let slice = 1; slice <= 20; slice++) advanceChain(sliced, at, slice / 2);
        expect(sliced.time).toBeCloseTo(10, 9);
        whole.now.x.forEach((place, index) => {
            expect(sliced.now.x[index]).toBeCloseTo(place, 4);
        });
    });
});

describe('where the taut line may be trusted', () => {
    const wide = layOut({ speed, radius: 80, side: 'port' })!;

    test('a light lure on a line in the air, in a wide turn: they agree to a fraction of a metre', () => {
        const answer = compareTaut(rigger, wide);
        expect(answer).toMatchObject({ kind: 'compared', slack: false, trusted: true });
        if (answer.kind === 'compared') expect(answer.astray).toBeLessThan(0.6);
    });

    test('the lighter the line and the lure for their drag, the nearer the tractrix', () => {
        const strays = [1, 0.3, 0.1].map((share) => {
            const sections = rigger.tow.sections.map((section) => ({
                ...section,
                diameter: section.diameter * Math.sqrt(share),
                modulus: 4e11 / share, // as good as without stretch, which the tractrix does not know
            }));
            const lure = { ...rigger.tow.lure, mass: 0.3 * share, weightInWater: 1.5 * share };
            const tow = {
                ...rigger.tow,
                sections: sections as unknown as ChainLine['tow']['sections'],
                lure,
            };
            const answer = compareTaut({ ...rigger, tow }, wide);
            if (answer.kind !== 'compared') throw new Error(answer.reason);
            return answer.astray;
        });
        expect(strays[1]).toBeLessThan(strays[0]!);
        expect(strays[2]).toBeLessThan(strays[1]!);
        expect(strays[2]).toBeLessThan(0.03);
    });

    test('not for a heavy lure with little drag, nor in a turn tighter than the line is long', () => {
        const heavy = {
            ...rigger,
            tow: { ...rigger.tow, lure: { dragArea: 0.001, mass: 0.6, weightInWater: 5 } },
        };
        expect(compareTaut(heavy, layOut(half)!)).toMatchObject({ trusted: false });
        const tight = layOut({ speed, radius: 25, side: 'port' })!;
        const answer = compareTaut(rigger, tight);
        expect(answer).toMatchObject({ kind: 'compared', trusted: false });
        expect(compareTaut({ ...rigger, layback: 0 }, tight).kind).toBe('no-answer');
    });
});

describe('properties', () => {
    const lines = fc
        .record({
            height: fc.double({ min: 1, max: 10, noNaN: true }),
            side: fc.double({ min: -8, max: 8, noNaN: true }),
            layback: fc.double({ min: 12, max: 80, noNaN: true }),
            diameter: fc.double({ min: 5e-4, max: 2e-3, noNaN: true }),
            dragArea: fc.double({ min: 8e-4, max: 8e-3, noNaN: true }),
            mass: fc.double({ min: 0.08, max: 1.2, noNaN: true }),
            share: fc.double({ min: -0.2, max: 0.9, noNaN: true }),
            density: fc.constantFrom(960, 1140, 1780),
        })
        .map(
            ({ height, side, layback, diameter, dragArea, mass, share, density }): ChainLine => ({
                towPoint: [1, side, height],
                layback,
                tow: {
                    sections: [{ length: 100, diameter, density, modulus: 2.5e9 }],
                    lure: { dragArea, mass, weightInWater: mass * share * STANDARD_GRAVITY },
                    normalDrag: 1.2,
                },
            }),
        );
    const turns = fc.record({
        speed: fc.double({ min: 2, max: 6, noNaN: true }),
        radius: fc.double({ min: 15, max: 120, noNaN: true }),
        side: fc.constantFrom('port' as const, 'starboard' as const),
        ramp: fc.double({ min: 0, max: 6, noNaN: true }),
        turnSpeed: fc.double({ min: 1.5, max: 6, noNaN: true }),
    });

    test('whatever the line and the turn, it settles; no tension is negative, nothing is not a number', () => {
        fc.assert(
            fc.property(lines, turns, (line, turn) => {
                const { states } = statesOf({ ...line, links: 12 }, turn, every(2, 60));
                for (const state of states) {
                    expect(state.tension).toBeGreaterThanOrEqual(0);
                    expect(state.lureTension).toBeGreaterThanOrEqual(0);
                    expect(state.line.flat().every(Number.isFinite)).toBe(true);
                }
            }),
            { numRuns: 60 },
        );
    });

    test('mirror boat and turn, and every node mirrors', () => {
        fc.assert(
            fc.property(lines, turns, (line, turn) => {
                const other = { ...line, towPoint: mirror(line.towPoint), links: 10 };
                const opposite = { ...turn, side: turn.side === 'port' ? 'starboard' : 'port' } as const;
                const one = statesOf({ ...line, links: 10 }, turn, every(5, 30)).states;
                const two = statesOf(other, opposite, every(5, 30)).states;
                one.forEach((state, index) => {
                    state.line.forEach((point, node) => {
                        expect(distance(mirror(point), two[index]!.line[node]!)).toBeLessThan(1e-6);
                    });
                });
            }),
            { numRuns: 15 },
        );
    });

    test('a model to scale (lengths × k, times × √k, forces × k³) makes the same turn', () => {
        fc.assert(
            fc.property(turns, fc.double({ min: 0.3, max: 3, noNaN: true }), (turn, k) => {
                // A lure that stays under water: the hold of the surface is a figure of its own.
                const tow: ChainLine['tow'] = {
                    sections: [{ length: 100, diameter: 1e-3, density: 1140, modulus: 2.5e9 }],
                    lure: { dragArea: 0.002, mass: 1, weightInWater: 8 },
                    normalDrag: 1.2,
                };
                const [section] = tow.sections;
                const line: ChainLine = { towPoint: [0, 3, -1], layback: 30, tow, links: 10 };
                const model: ChainLine = {
                    ...line,
                    towPoint: scale(line.towPoint, k),
                    layback: 30 * k,
                    step: 0.1 * Math.sqrt(k),
                    tow: {
                        ...tow,
                        sections: [
                            {
                                length: 100 * k,
                                diameter: section.diameter * k,
                                density: 1140,
                                modulus: 2.5e9 * k,
                            },
                        ],
                        lure: { dragArea: 0.002 * k ** 2, mass: k ** 3, weightInWater: 8 * k ** 3 },
                    },
                };
                const small = {
                    ...turn,
                    speed: turn.speed * Math.sqrt(k),
                    turnSpeed: turn.turnSpeed * Math.sqrt(k),
                    radius: turn.radius * k,
                    ramp: turn.ramp * Math.sqrt(k),
                };
                const full = statesOf(line, turn, every(5, 25)).states;
                const scaled = statesOf(
                    model,
                    small,
                    every(5, 25).map((time) => time * Math.sqrt(k)),
                ).states;
                full.forEach((state, index) => {
                    const lure = scale(scaled[index]!.line.at(-1)!, 1 / k);
                    expect(distance(lure, state.line.at(-1)!)).toBeLessThan(0.02); // iterations end within so many metres, not to scale
                });
            }),
            { numRuns: 15 },
        );
    });

    test('finer steps of time come together with the square of the step', () => {
        // A helm put over smoothly, for a tow point on the centreline; the lure under water all the time.
        const line: ChainLine = {
            towPoint: [0, 0, -1],
            layback: 30,
            tow: {
                sections: [{ length: 100, diameter: 1e-3, density: 1140, modulus: 2.5e9 }],
                lure: { dragArea: 0.002, mass: 1, weightInWater: 8 },
                normalDrag: 1.2,
            },
        };
        const turn: Manoeuvre = { speed: 4, radius: 40, side: 'port', ramp: 8 };
        const end = (step: number) => statesOf({ ...line, step }, turn, [16]).states[0]!.line.at(-1)!;
        const [a, b, c] = [0.4, 0.2, 0.1].map(end) as [Vec, Vec, Vec];
        const order = Math.log2(distance(a, b) / distance(b, c));
        expect(order).toBeGreaterThan(1.6);
        expect(distance(b, c)).toBeLessThan(0.01);
    });

    test('after the turn the line comes to rest again, as it was, on the opposite course', () => {
        const { states } = statesOf(rigger, { ...half, after: 300 }, [0, 200]);
        const [first, last] = states as [(typeof states)[0], (typeof states)[0]];
        const offset = ({ line }: typeof first) => {
            const [tow, lure] = [line[0]!, line.at(-1)!];
            return [Math.hypot(lure[0] - tow[0], lure[1] - tow[1]), lure[2]] as const;
        };
        expect(offset(last)[0]).toBeCloseTo(offset(first)[0], 3);
        expect(offset(last)[1]).toBeCloseTo(offset(first)[1], 3);
        expect(last.tension).toBeCloseTo(first.tension, 2);
    });
});
