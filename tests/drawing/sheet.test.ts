import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rectangle } from '../../language/src/drawing/chart.ts';
import { place } from '../../language/src/drawing/labels.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { layOut, type Sheet } from '../../language/src/drawing/sheet.ts';
import { dense, diamond, finding, type Made, makePlan, seven, type Towed } from './plans.ts';

const heads = ['slant', 'plunger', 'pusher', 'chugger', 'bullet', 'jet', 'diver'] as const;
const names = ['port', 'starboard', 'centre'].flatMap((side) =>
    [
        'short corner',
        'long corner',
        'short rigger',
        'long rigger',
        'shotgun',
        'short far rigger',
        'long tower',
    ].map((rest) => `${side} ${rest}`),
);

const towed = (position: string): fc.Arbitrary<Towed> =>
    fc.record(
        {
            position: fc.constant(position),
            gear: fc.string({ minLength: 1, maxLength: 40 }),
            kind: fc.constantFrom(...heads),
            length: fc.double({ min: 0.1, max: 0.5, noNaN: true }),
            back: fc.double({ min: 3, max: 110, noNaN: true }),
            from: fc.constantFrom('halyard', 'flat clip', 'rod tip'),
            tow: fc
                .tuple(
                    fc.double({ min: -1, max: 6, noNaN: true }),
                    fc.double({ min: 0, max: 9, noNaN: true }),
                )
                .map(
                    ([x, y]) =>
                        [
                            x,
                            position.startsWith('port') ? y : position.startsWith('centre') ? 0 : -y,
                            4,
                        ] as const,
                ),
        },
        { requiredKeys: ['position'] },
    );

/** Plans such as teams write, and worse ones: up to fourteen lines anywhere, figures missing, lures on one spot. */
const plans: fc.Arbitrary<Made> = fc.record({
    title: fc.string({ minLength: 1, maxLength: 120 }),
    knots: fc.double({ min: 3, max: 14, noNaN: true }),
    boat: fc.record({
        title: fc.string({ minLength: 1, maxLength: 60 }),
        length: fc.double({ min: 4, max: 25, noNaN: true }),
        beam: fc.double({ min: 1.5, max: 7, noNaN: true }),
    }),
    lines: fc
        .shuffledSubarray(names, { maxLength: 14 })
        .chain((chosen) => fc.tuple(...chosen.map(towed)) as fc.Arbitrary<Towed[]>),
});

const findings = [
    finding(
        'stagger',
        'warning',
        ['port short corner', 'port long rigger'],
        'They touch at 2.1 m of sway.',
        'Move one.',
    ),
    finding(
        'drag-over-class',
        'error',
        ['port long rigger', 'centre shotgun'],
        'Full drag is over the class.',
    ),
    finding('drag-untested', 'hint', ['port short corner', 'starboard long rigger'], 'Never tested.'),
];

describe('labels on a sheet', () => {
    test.each(['up', 'right'] as const)(
        'never overlap each other, the chart or the sheet’s edge, bow %s',
        (bow) => {
            fc.assert(
                fc.property(plans, (made) => {
                    const sheet = layOut(sceneFromAbove(makePlan(made), findings), { bow });
                    expect(sheet.labels).toHaveLength(made.lines.length);
                    expectApart(sheet);
                }),
                { numRuns: 250, seed: 19470 },
            );
        },
    );

    test.each([
        ['diamond', diamond],
        ['seven', seven],
        ['dense', dense],
    ])('of the %s plan say everything', (_, made) => {
        const sheet = layOut(sceneFromAbove(makePlan(made), findings));
        const spoken = sheet.labels.flatMap(({ label }) => label.lines.map(({ words }) => words));
        for (const { gear, kind, length } of made.lines) {
            if (kind) expect(spoken).toContain(`${gear}, ${kind}, ${Math.round(length! * 1000)} mm`);
        }
    });

    test('are led to their lures by lines that do not cross between border and label', () => {
        for (const made of [diamond, seven, dense]) {
            for (const bow of ['up', 'right'] as const) {
                const sheet = layOut(sceneFromAbove(makePlan(made)), { bow });
                const along = bow === 'up' ? 1 : 0;
                const sideOf = ({ box }: (typeof sheet.labels)[number]) =>
                    bow === 'up' ? box.x < sheet.water.x : box.y < sheet.water.y;
                for (const side of [true, false]) {
                    const leaders = sheet.labels
                        .filter((label) => sideOf(label) === side)
                        .map(({ leader }) => leader);
                    const byLabel = [...leaders].sort((a, b) => a[0]![along] - b[0]![along]);
                    const bends = byLabel.map((leader) => leader[1]![along]);
                    expect(bends).toEqual([...bends].sort((a, b) => a - b));
                }
            }
        }
    });

    test('end at the nose of the lure that they name, or short of it by a hair', () => {
        const scene = sceneFromAbove(makePlan(seven));
        const sheet = layOut(scene);
        for (const { label, leader } of sheet.labels) {
            const [x, y] = sheet.toPage(label.note.point!);
            const [ex, ey] = leader.at(-1)!;
            expect(Math.hypot(ex - x, ey - y)).toBeCloseTo(16, 6);
        }
    });
});

describe('a sheet', () => {
    test('is to scale: a metre is a metre in every direction', () => {
        for (const bow of ['up', 'right'] as const) {
            const sheet = layOut(sceneFromAbove(makePlan(diamond)), { bow });
            const [ox, oy] = sheet.toPage([0, 0]);
            for (const [x, y] of [
                [1, 0],
                [0, 1],
                [-3, 4],
            ] as const) {
                const [px, py] = sheet.toPage([x, y]);
                // 1 m is 10 000 tenths of a millimetre.
                expect(Math.hypot(px - ox, py - oy)).toBeCloseTo(
                    (Math.hypot(x, y) * 10_000) / sheet.denominator,
                    6,
                );
            }
        }
    });

    test('has port on the left when the bow is up, and above when it is to the right', () => {
        const scene = sceneFromAbove(makePlan(diamond));
        const up = layOut(scene);
        expect(up.toPage([0, 1])[0]).toBeLessThan(up.toPage([0, 0])[0]);
        expect(up.toPage([1, 0])[1]).toBeLessThan(up.toPage([0, 0])[1]);
        const right = layOut(scene, { bow: 'right' });
        expect(right.toPage([0, 1])[1]).toBeLessThan(right.toPage([0, 0])[1]);
        expect(right.toPage([1, 0])[0]).toBeGreaterThan(right.toPage([0, 0])[0]);
    });

    test('keeps to A4 for the plans of ordinary boats', () => {
        for (const made of [diamond, seven, dense]) {
            const scene = sceneFromAbove(makePlan(made), findings);
            const { width, height } = layOut(scene);
            expect([width, height]).toEqual([2100, 2970]);
            const lying = layOut(scene, { bow: 'right' });
            expect([lying.width, lying.height]).toEqual([2970, 2100]);
        }
    });

    test('grows rather than letting labels overlap', () => {
        const crowd: Made = {
            ...diamond,
            lines: Array.from({ length: 40 }, (_, i) => ({
                position: `port place ${i + 1}`,
                gear: 'Lure',
                back: 20,
                tow: [1, 3, 4] as const,
            })),
        };
        for (const bow of ['up', 'right'] as const) {
            const sheet = layOut(sceneFromAbove(makePlan(crowd)), { bow });
            expect(bow === 'up' ? sheet.height : sheet.width).toBeGreaterThan(2970);
            expectApart(sheet);
        }
    });
});

describe('placing in a row', () => {
    const things = fc.array(
        fc.record({
            at: fc.double({ min: -50, max: 150, noNaN: true }),
            size: fc.double({ min: 0.5, max: 9, noNaN: true }),
        }),
        { minLength: 1, maxLength: 12 },
    );

    test('keeps order, bounds and gaps', () => {
        fc.assert(
            fc.property(things, (unsorted) => {
                const wanted = [...unsorted].sort((a, b) => a.at - b.at);
                const needed = wanted.reduce((sum, { size }) => sum + size + 1, 0) - 1;
                const middles = place(wanted, 0, 100, 1);
                if (needed > 100) return expect(middles).toBeUndefined();
                for (const [i, middle] of middles!.entries()) {
                    expect(middle - wanted[i]!.size / 2).toBeGreaterThanOrEqual(-1e-6);
                    expect(middle + wanted[i]!.size / 2).toBeLessThanOrEqual(100 + 1e-6);
                    const before = middles![i - 1];
                    if (before === undefined) continue;
                    const room = (wanted[i - 1]!.size + wanted[i]!.size) / 2 + 1;
                    expect(middle - before).toBeGreaterThanOrEqual(room - 1e-6);
                }
            }),
            { seed: 7 },
        );
    });

    test('moves nothing that has room, and shares what two must give way', () => {
        expect(
            place(
                [
                    { at: 10, size: 4 },
                    { at: 50, size: 4 },
                ],
                0,
                100,
                1,
            ),
        ).toEqual([10, 50]);
        // Both want 50 and need 5 between their middles: 47.5 and 52.5 is the least sum of squares.
        expect(
            place(
                [
                    { at: 50, size: 4 },
                    { at: 50, size: 4 },
                ],
                0,
                100,
                1,
            ),
        ).toEqual([47.5, 52.5]);
    });
});

function expectApart(sheet: Sheet): void {
    const boxes = sheet.labels.map(({ box }) => box);
    const { water } = sheet;
    for (const [i, box] of boxes.entries()) {
        expect(overlap(box, water)).toBe(false);
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.y).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(sheet.width);
        expect(box.y + box.height).toBeLessThanOrEqual(sheet.foot ? sheet.foot.notes[1] : sheet.height);
        for (const other of boxes.slice(i + 1)) expect(overlap(box, other)).toBe(false);
    }
}

function overlap(a: Rectangle, b: Rectangle): boolean {
    const slack = 1e-6;
    return (
        a.x + a.width > b.x + slack &&
        b.x + b.width > a.x + slack &&
        a.y + a.height > b.y + slack &&
        b.y + b.height > a.y + slack
    );
}
