import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KNOT, STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import { type LineQuestion, lineAtRest, type RestingLine } from '../../language/src/physics/line.ts';
import { bow, hang } from '../../language/src/physics/sag.ts';
import { mirror, norm, scale, subtract, type Vec } from '../../language/src/physics/vector.ts';
import { integrate } from './integrate.ts';
import { lineSlopes } from './line-slopes.ts';
import steady from './reference/steady-line-from-air.json' with { type: 'json' };
import straight from './reference/straight-tow.json' with { type: 'json' };

const degrees = (angle: number) => (angle * 180) / Math.PI;

const rest = (question: LineQuestion): RestingLine => {
    const answer = lineAtRest(question);
    if (answer.kind !== 'at-rest') throw new Error(JSON.stringify(answer));
    return answer;
};

const nylon = (diameter: number): LineQuestion['sections'] => [{ length: 100, diameter, density: 1140 }];

/** A rigger line with a thick leader, at 8 kn in a fresh beam wind. */
const rigger: LineQuestion = {
    sections: [
        { length: 4.2, diameter: 1.8e-3, density: 1140 },
        { length: 100, diameter: 0.9e-3, density: 1140 },
    ],
    lure: { dragArea: 0.003, mass: 0.3, weightInWater: 1.5 },
    towPoint: [2, 6, 6.5],
    speed: 8 * KNOT,
    length: { astern: 44 },
    wind: [0, 9, 0],
};

describe('against another solver (DOP853, rtol 1e-10): steady-line-from-air', () => {
    type Case = Partial<Record<string, number>> & { case: string; L: number; V: number; clip_height: number };

    test.each(steady.cases as unknown as Case[])('$case', (given) => {
        const { L, V, clip_height, CdA, lure_z, net_weight_N } = given;
        const question: LineQuestion = {
            sections: [{ length: L, diameter: 0.0009, density: 1150 }],
            lure: { dragArea: CdA!, mass: 0.3, weightInWater: net_weight_N ?? 0 },
            normalDrag: 1.2,
            tangentialDrag: 0.0064,
            towPoint: [0, 0, clip_height],
            speed: V,
            length: { out: L },
            runs: net_weight_N ? 'free' : lure_z === 0 ? 'surface' : { depth: -lure_z! },
            airDrag: false,
        };
        const line = rest(question);
        expect(Math.abs(-line.lure[0] - given.layback_lure!)).toBeLessThan(2e-4);
        expect(line.lure[2]).toBeCloseTo(lure_z!, 3);
        expect(line.tension.towPoint / given.T_clip!).toBeCloseTo(1, 4);
        expect(line.tension.lure / given.T_lure!).toBeCloseTo(1, 4);
        expect(line.upward.pull / given.vertical_force_on_lure_from_line_up!).toBeCloseTo(1, 3);
        expect(degrees(line.angle.towPoint)).toBeCloseTo(given.clip_angle_below_horizontal_deg!, 2);
        expect(degrees(line.angle.lure)).toBeCloseTo(given.lure_line_angle_deg!, 1);
        expect(line.wet).toBeCloseTo(given.wet_length!, 3);
        if (line.entry) {
            expect(Math.abs(-line.entry.point[0] - given.entry_distance_behind_clip!)).toBeLessThan(2e-3);
            expect(degrees(line.entry.angle)).toBeCloseTo(given.entry_angle_deg!, 2);
        } else {
            expect(given.entry_distance_behind_clip).toBe(given.layback_lure);
        }

        // Where the lure runs astern being given instead, the line out is found again.
        const found = rest({ ...question, length: { astern: -line.lure[0] } });
        expect(found.lineOut).toBeCloseTo(L, 5);
    });

    test('drag of still air changes what it changed there', () => {
        const { V, clip_height, ...given } = steady.air_drag_check.find(({ air_drag }) => air_drag)!;
        const line = rest({
            sections: [{ length: 30, diameter: 0.0009, density: 1150 }],
            lure: { dragArea: 0.002, mass: 0.3, weightInWater: 0 },
            normalDrag: 1.2,
            tangentialDrag: 0.0064,
            towPoint: [0, 0, clip_height],
            speed: V,
            length: { out: 30 },
            runs: 'surface',
        });
        expect(-line.lure[0]).toBeCloseTo(given.layback_lure, 3);
        expect(line.upward.pull).toBeCloseTo(given.vertical_force_on_lure_from_line_up, 3);
        expect(line.tension.towPoint / given.T_clip).toBeCloseTo(1, 2);
        expect(degrees(line.angle.towPoint)).toBeCloseTo(given.clip_angle_below_horizontal_deg, 1);
    });

    test.each(steady.critical_angles)(
        'a long line of $rho_line kg/m³ and $d m at $V m/s hangs at its critical angle',
        ({ d, rho_line, V, critical_angle_deg }) => {
            // Towed from under water so that its upper part is under water too.
            const line = rest({
                sections: [{ length: 1, diameter: d, density: rho_line }],
                lure: { dragArea: 0.0002, mass: 0.05, weightInWater: 0.1 },
                normalDrag: 1.2,
                tangentialDrag: 0.0064,
                towPoint: [0, 0, -1],
                speed: V,
                length: { out: 400 },
            });
            // Tension along the line has no part in it; the net weight there is taken with g = 9.81.
            expect(degrees(line.angle.towPoint)).toBeGreaterThan(critical_angle_deg * 0.999);
            expect(degrees(line.angle.towPoint)).toBeLessThan(critical_angle_deg * 1.15);
        },
    );
});

describe('against a mooring code and a boundary-value solver: straight-tow', () => {
    test.each(straight.cases)(
        '$name, $N segments',
        ({ V, params, ode_elastic, ode_inextensible, moordyn }) => {
            const area = (Math.PI / 4) * params.d ** 2;
            const tow = (modulus?: number): LineQuestion => ({
                sections: [
                    { length: 30, diameter: params.d, density: params.rho_line, ...(modulus && { modulus }) },
                ],
                lure: {
                    dragArea: params.CdA,
                    mass: params.M,
                    weightInWater: (params.M - params.rho * params.Vol) * STANDARD_GRAVITY,
                },
                normalDrag: params.Cdn,
                tangentialDrag: params.Cdt,
                towPoint: [0, 0, -1],
                speed: V,
                length: { out: 30 },
            });
            const stretchy = rest(tow(params.EA / area));
            expect(Math.abs(-stretchy.lure[0] - ode_elastic.trail_x)).toBeLessThan(2e-3);
            expect(Math.abs(-1 - stretchy.lure[2] - ode_elastic.lure_below_fairlead)).toBeLessThan(1e-3);
            expect(stretchy.tension.towPoint / ode_elastic.T_top).toBeCloseTo(1, 4);
            expect(stretchy.tension.lure / ode_elastic.T_lure).toBeCloseTo(1, 4);
            expect(Math.abs(-stretchy.lure[0] - moordyn.trail_x)).toBeLessThan(2e-3);
            expect(stretchy.stretch).toBeGreaterThan(0.1);

            const stiff = rest(tow());
            expect(Math.abs(-stiff.lure[0] - ode_inextensible.trail_x)).toBeLessThan(2e-3);
            expect(Math.abs(-1 - stiff.lure[2] - ode_inextensible.lure_below_fairlead)).toBeLessThan(1e-3);
            expect(stiff.stretch).toBe(0);
        },
    );
});

describe('against ODEX, with leader, wind and drag by Reynolds number', () => {
    test.each([
        ['a lure held up by its line', 1.5],
        ['a lure that sinks', 7],
    ])('%s', (_, weightInWater) => {
        const question: LineQuestion = { ...rigger, lure: { ...rigger.lure, weightInWater } };
        const line = rest(question);
        expect(line.atSurface).toBe(weightInWater < 3);
        const drag = 0.5 * 1025 * 0.003 * question.speed ** 2;
        let state = [drag, 0, line.upward.pull, ...line.lure];
        const [leader, main] = question.sections as unknown as { diameter: number; density: number }[];
        const cuts = [
            { to: Math.min(4.2, line.wet), wet: true, of: leader! },
            { to: Math.max(4.2, line.wet), wet: line.wet > 4.2, of: line.wet > 4.2 ? main! : leader! },
            { to: line.lineOut, wet: false, of: main! },
        ];
        let from = 0;
        for (const { to, wet, of } of cuts) {
            if (to > from)
                state = integrate(lineSlopes(question, wet, of.diameter, of.density), from, state, to);
            from = Math.max(from, to);
            if (to === line.wet && line.entry) {
                expect(norm(subtract([state[3]!, state[4]!, state[5]!], line.entry.point))).toBeLessThan(
                    1e-5,
                );
            }
        }
        expect(norm(subtract([state[3]!, state[4]!, state[5]!], question.towPoint))).toBeLessThan(1e-5);
        expect(Math.hypot(state[0]!, state[1]!, state[2]!)).toBeCloseTo(line.tension.towPoint, 5);
    });
});

describe('what a crew sees', () => {
    test('40 N from 2.4 m at 16 m pull up with 6 N, twice the weight of a 290 g lure', () => {
        const line = rest({
            sections: nylon(0.7e-3),
            lure: { dragArea: 40 / (0.5 * 1025 * 16), mass: 0.29, weightInWater: 1.4 },
            towPoint: [0, 0, 2.4],
            speed: 4,
            length: { astern: 16 },
        });
        expect(line.upward.pull).toBeCloseTo(6, 0);
        expect(line.upward.ofWeight).toBeCloseTo(2.1, 1);
    });

    test('a clip 8 m up with the lure 45 m astern makes 9 to 10°, a rod tip at 2.5 m about 3°', () => {
        const high = rest({ ...rigger, wind: [0, 0, 0], towPoint: [0, 0, 8], length: { astern: 45 } });
        const low = rest({ ...rigger, wind: [0, 0, 0], towPoint: [0, 0, 2.5], length: { astern: 45 } });
        expect(degrees(high.angle.lure)).toBeGreaterThan(9);
        expect(degrees(high.angle.lure)).toBeLessThan(10.5);
        expect(degrees(low.angle.lure)).toBeGreaterThan(2.5);
        expect(degrees(low.angle.lure)).toBeLessThan(3.5);
    });

    test('a lure that the line can hold up runs at the surface; a heavier one sinks, never shallower when heavier', () => {
        const depths = [0.5, 1.5, 4, 5, 6, 8, 12].map((weightInWater) => {
            const { lure, atSurface } = rest({ ...rigger, lure: { ...rigger.lure, weightInWater } });
            expect(atSurface).toBe(lure[2] === 0);
            return 0 - lure[2];
        });
        expect(depths[0]).toBe(0);
        expect(depths.at(-1)).toBeGreaterThan(0.5);
        expect([...depths].sort((a, b) => a - b)).toEqual(depths);
    });

    test('a floating line towed slowly from low down lies on the water before it leaves it, level', () => {
        const question: LineQuestion = {
            sections: [{ length: 1, diameter: 4e-4, density: 960 }],
            lure: { dragArea: 3e-4, mass: 0.05, weightInWater: 0 },
            towPoint: [0, 0, 0.3],
            speed: 1,
            length: { astern: 20 },
        };
        const line = rest(question);
        expect(line.entry!.angle).toBe(0);
        expect(line.upward.pull).toBe(0);
        expect(line.wet).toBeGreaterThan(5);
        // From there it hangs as half a catenary: rise = (H/w)·(cosh(w·x/H) − 1).
        const weight = 960 * (Math.PI / 4) * 4e-4 ** 2 * STANDARD_GRAVITY;
        const calm = rest({ ...question, wind: [1, 0, 0] });
        const x = -calm.entry!.point[0];
        const pull = 0.5 * 1025 * (3e-4 + 0.005 * Math.PI * 4e-4 * calm.wet);
        expect((pull / weight) * (Math.cosh((weight * x) / pull) - 1)).toBeCloseTo(0.3, 5);
        // Heavier than water, it dips under instead.
        const sinking = rest({ ...question, sections: [{ ...question.sections[0], density: 1140 }] });
        expect(sinking.upward.pull).toBeLessThan(0.001);
    });

    test('a lip pulls a diver down as a weight does', () => {
        const weighed = rest({ ...rigger, lure: { ...rigger.lure, weightInWater: 9 } });
        const diveArea = 7.5 / (0.5 * 1025 * rigger.speed ** 2);
        const diving = rest({ ...rigger, lure: { ...rigger.lure, diveArea } });
        expect(diving.lure[2]).toBeCloseTo(weighed.lure[2], 6);
    });

    test('the leader is what drags in the water: a thicker one pulls the line steeper at the lure', () => {
        const [, main] = rigger.sections;
        const heavy: LineQuestion = { ...rigger, lure: { ...rigger.lure, weightInWater: 8 } };
        const thin = rest({ ...heavy, sections: [main!] });
        const thick = rest(heavy);
        expect(thick.tension.towPoint).toBeGreaterThan(thin.tension.towPoint);
        expect(thick.lure[2]).toBeGreaterThan(thin.lure[2]);
    });

    test('a side wind shifts the lure to leeward, and the line bows as the closed forms say', () => {
        const line = rest({ ...rigger, normalDrag: 1.2, sections: nylon(0.9e-3), tangentialDrag: 0 });
        expect(line.lure[1]).toBeGreaterThan(6);
        const [, , height] = rigger.towPoint;
        const chord = Math.hypot(46, height);
        const tension = (line.tension.lure + line.tension.towPoint) / 2;
        const area = (Math.PI / 4) * 0.9e-3 ** 2;
        // Still air meets the boat head on, the wind from the side: 0.5·ρ·d·Cd·|w|·w across the line.
        const apparent = Math.hypot(9, (rigger.speed * height) / chord);
        const side = 0.5 * 1.225 * 0.9e-3 * 1.2 * apparent * 9;
        expect(line.sag.aside / bow(chord, tension, side)!).toBeCloseTo(1, 1);
        // The lure lies where the line's side force vanishes: the parabola's vertex.
        expect((line.lure[1] - 6) / (4 * bow(chord, tension, side)!)).toBeCloseTo(1, 1);

        const calm = rest({ ...rigger, sections: nylon(0.9e-3), wind: [rigger.speed, 0, 0] });
        const flatter =
            hang(46, tension, 1140 * area * STANDARD_GRAVITY)!.sag / Math.cos(Math.asin(height / chord));
        expect(calm.sag.down / flatter).toBeCloseTo(1, 1);
    });

    test('the pull up the line is the lure’s drag, friction and weight of the line, and nothing else', () => {
        const line = rest({ ...rigger, lure: { ...rigger.lure, weightInWater: 7 } });
        const drag = 0.5 * 1025 * 0.003 * rigger.speed ** 2;
        expect(line.tension.lure).toBeCloseTo(Math.hypot(drag, 7), 6);
        expect(line.tension.towPoint).toBeGreaterThan(line.tension.lure);
        expect(line.tension.towPoint).toBeLessThan(line.tension.lure * 1.2);
    });
});

describe('properties', () => {
    type Asked = LineQuestion & { length: { astern: number }; wind: Vec };
    const questions: fc.Arbitrary<Asked> = fc
        .record({
            diameter: fc.double({ min: 4e-4, max: 2e-3, noNaN: true }),
            density: fc.constantFrom(960, 1140, 1780),
            dragArea: fc.double({ min: 1e-3, max: 1e-2, noNaN: true }),
            mass: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
            floats: fc.double({ min: -0.2, max: 1, noNaN: true }),
            height: fc.double({ min: 0.5, max: 12, noNaN: true }),
            speed: fc.double({ min: 2, max: 8, noNaN: true }),
            astern: fc.double({ min: 6, max: 90, noNaN: true }),
            wind: fc.tuple(
                fc.double({ min: -8, max: 8, noNaN: true }),
                fc.double({ min: -8, max: 8, noNaN: true }),
            ),
        })
        .map(
            ({ diameter, density, dragArea, mass, floats, height, speed, astern, wind }): Asked => ({
                sections: [{ length: 50, diameter, density }],
                lure: { dragArea, mass, weightInWater: floats * mass * STANDARD_GRAVITY },
                towPoint: [1, 3, height],
                speed,
                length: { astern },
                wind: [...wind, 0],
                normalDrag: 1.2,
            }),
        )
        // Ordinary: the wind on the line has much less to say than the lure.
        .filter(({ sections: [{ diameter }], lure, speed, length, wind }) => {
            const blown = 0.5 * 1.225 * 1.2 * diameter * (Math.hypot(...wind) + speed) ** 2 * length.astern;
            return 0.5 * 1025 * lure.dragArea * speed ** 2 > 2 * blown;
        });

    test('every ordinary line has an answer; it meets tow point and lure, and the lure its weight', () => {
        fc.assert(
            fc.property(questions, (question) => {
                const line = rest(question);
                expect(-line.lure[0]).toBeCloseTo(question.length.astern, 5);
                expect(line.lineOut).toBeGreaterThanOrEqual(
                    norm(subtract(line.lure, question.towPoint)) - 1e-6,
                );
                expect(line.shape[0]![2]).toBeCloseTo(question.towPoint[2], 3);
                expect(line.shape.at(-1)).toEqual(line.lure);
                expect(line.tension.lure).toBeGreaterThan(0);
                if (line.atSurface) {
                    // A floating line that lies on the water bears the little that the lure weighs.
                    const afloat = question.sections[0].density < 1025 && line.entry?.angle === 0;
                    if (!afloat) expect(line.upward.pull).toBeGreaterThan(question.lure.weightInWater - 1e-5);
                } else expect(line.upward.pull).toBeCloseTo(question.lure.weightInWater, 9);
            }),
            { numRuns: 200 },
        );
    });

    test('mirror the boat and the wind, and the line mirrors', () => {
        fc.assert(
            fc.property(questions, (question) => {
                const line = rest(question);
                const other = rest({
                    ...question,
                    towPoint: mirror(question.towPoint),
                    wind: mirror(question.wind!),
                });
                other.shape.forEach((point, index) => {
                    expect(norm(subtract(mirror(point), line.shape[index]!))).toBeLessThan(1e-9);
                });
                expect(other.tension.towPoint).toBeCloseTo(line.tension.towPoint, 9);
            }),
            { numRuns: 60 },
        );
    });

    test('a model to scale (lengths × k, speeds × √k, forces × k³) makes the same picture', () => {
        fc.assert(
            fc.property(questions, fc.double({ min: 0.2, max: 5, noNaN: true }), (question, k) => {
                const line = rest(question);
                const [section] = question.sections;
                const model = rest({
                    ...question,
                    sections: [{ ...section, length: section.length * k, diameter: section.diameter * k }],
                    lure: {
                        dragArea: question.lure.dragArea * k ** 2,
                        mass: question.lure.mass * k ** 3,
                        weightInWater: question.lure.weightInWater * k ** 3,
                    },
                    towPoint: scale(question.towPoint, k),
                    speed: question.speed * Math.sqrt(k),
                    length: { astern: question.length.astern * k },
                    wind: scale(question.wind!, Math.sqrt(k)),
                });
                // A line that leaves its lure level grazes the surface over metres of its length, and whether those
                // are wetted hangs on 2 mm: their friction is up to a tenth of the pull.
                const grazes = Math.abs(line.angle.lure) < 2e-3;
                expect(Math.abs(model.lineOut / k / line.lineOut - 1)).toBeLessThan(grazes ? 1e-4 : 5e-6);
                expect(model.lure[1] / k).toBeCloseTo(line.lure[1], 3);
                expect(model.lure[2] / k).toBeCloseTo(line.lure[2], 3);
                const tension = model.tension.towPoint / k ** 3 / line.tension.towPoint;
                expect(Math.abs(tension - 1)).toBeLessThan(grazes ? 0.15 : 5e-5);
            }),
            { numRuns: 60 },
        );
    });
});

describe('what cannot be', () => {
    test('less line than the tow point is high is too short, and says how much it takes', () => {
        expect(lineAtRest({ ...rigger, length: { out: 6.4 } })).toEqual({ kind: 'too-short', least: 6.5 });
        expect(lineAtRest({ ...rigger, length: { out: 6.6 } }).kind).toBe('at-rest');
    });

    test('a line that just grazes the surface has an answer, though its end jumps by the least change of slope', () => {
        const line = rest({
            sections: [{ length: 50, diameter: 0.0009456635164241828, density: 1780 }],
            lure: { dragArea: 1e-3, mass: 0.7515699806006891, weightInWater: -1.4740767500515473 },
            towPoint: [1, 3, 0.8204688911701529],
            speed: 3.762403594278916,
            length: { astern: 30.178612886487862 },
            normalDrag: 1.2,
        });
        expect(line.atSurface).toBe(true);
        expect(line.lure[0]).toBeCloseTo(-30.178612886487862, 6);
        expect(Math.abs(line.angle.lure)).toBeLessThan(1e-4);
        expect(line.shape[0]![2]).toBeCloseTo(0.8204688911701529, 2);
    });

    test('a lure asked to run ahead of its tow point is too short a distance', () => {
        const ahead: LineQuestion = { ...rigger, towPoint: [-3, 0, 2], length: { astern: 2 } };
        expect(lineAtRest(ahead)).toEqual({ kind: 'too-short', least: 3 });
    });

    test('no figure at all, however wild, makes it throw, hang or answer with what is not a number', () => {
        const wild = fc.oneof(fc.double(), fc.double({ min: -10, max: 100, noNaN: true }));
        const question = fc.record({
            sections: fc.tuple(fc.record({ length: wild, diameter: wild, density: wild, modulus: wild })),
            lure: fc.record({ dragArea: wild, mass: wild, weightInWater: wild }),
            towPoint: fc.tuple(wild, wild, wild),
            speed: wild,
            length: fc.oneof(fc.record({ out: wild }), fc.record({ astern: wild })),
            runs: fc.oneof(fc.constantFrom('free' as const, 'surface' as const), fc.record({ depth: wild })),
            wind: fc.tuple(wild, wild, wild),
        });
        fc.assert(
            fc.property(question, (asked) => {
                const answer = lineAtRest(asked);
                if (answer.kind !== 'at-rest') return;
                for (const figure of [
                    answer.lineOut,
                    answer.tension.towPoint,
                    answer.sag.down,
                    ...answer.lure,
                ]) {
                    expect(Number.isFinite(figure)).toBe(true);
                }
            }),
            { numRuns: 2000 },
        );
    });

    test('seven lines settle within 5 ms of the processor', () => {
        const heights = [2.4, 2.4, 5.5, 6.5, 8, 8, 9];
        const times = Array.from({ length: 30 }, () => {
            const start = process.cpuUsage().user;
            heights.forEach((height, index) => {
                rest({ ...rigger, towPoint: [2, index - 3, height], length: { astern: 14 + 9 * index } });
            });
            return (process.cpuUsage().user - start) / 1000;
        });
        expect(Math.min(...times)).toBeLessThan(5);
    });
});
