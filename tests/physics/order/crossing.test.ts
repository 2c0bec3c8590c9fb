import { expect, test } from 'vitest';
import { crossing, type HandledLine, nearestPlace } from '../../../language/src/physics/order/crossing.ts';
import { lerp, norm, subtract, type Vec } from '../../../language/src/physics/vector.ts';

const line = (rodTip: Vec, towPoint: Vec, astern: number): HandledLine => ({ rodTip, towPoint, astern });

/** A line that hangs straight from its rod tip down to its lure, in a plane along the boat. */
const straight = (y: number, up: number, astern: number) => line([0, y, up], [0, y, up], astern);

test('lines in two planes along the boat are as far apart as the planes, on the way as well', () => {
    const [handled, set] = [straight(0, 2, 20), straight(0.2, 2, 30)];
    const met = crossing(handled, set)!;
    expect(met.stage).toBe('paying out');
    expect(met.distance).toBeCloseTo(0.2, 12);
    expect(met.at[0][1]).toBe(0);
    expect(met.at[1][1]).toBe(0.2);
    expect(crossing(handled, set, 0.2)?.distance).toBeCloseTo(0.2, 12);
    expect(crossing(handled, set, 0.19)).toBeUndefined();
});

test('a line is paid out from under its rod tip: what hangs in between is met, what hangs further in is not', () => {
    // A set line across the wake, 1 m above the water from side to side.
    const across = (x: number): HandledLine => ({ rodTip: [x, -9, 1], towPoint: [x, 9, 1], astern: -x });
    const handled = straight(0, 2, 20);
    expect(crossing(handled, across(-5))).toMatchObject({ stage: 'paying out', distance: 0 });
    // At half the height of the tip the last line passes 10 m astern, the first one straight under the tip.
    expect(crossing(handled, across(-9.9))?.distance).toBe(0);
    expect(crossing(handled, across(-13))).toBeUndefined();
    expect(crossing(handled, across(0.1))?.distance).toBeCloseTo(0.1, 12);
    expect(crossing(handled, across(0.4))).toBeUndefined();
    expect(crossing(handled, across(5))).toBeUndefined();
});

test('a lure that runs ahead of its rod tip goes down where it runs, not astern of that', () => {
    const handled = straight(0, 2, -3);
    const low = (x: number): HandledLine => ({ rodTip: [x, -9, 0], towPoint: [x, 9, 0], astern: -x });
    expect(crossing(handled, low(3))?.distance).toBe(0);
    expect(crossing(handled, low(0))).toBeUndefined();
});

test('on its way to the clip a line passes through whatever hangs between rod tip and clip', () => {
    const handled = line([0, 0, 2], [0, 6, 5], 40);
    // Longer, so that the handled lure goes out short of it; in a plane of its own half way to the clip.
    const between = crossing(handled, straight(3, 2, 45))!;
    expect(between.stage).toBe('hauling to the clip');
    expect(between.distance).toBe(0);
    expect(between.at[0][1]).toBeCloseTo(3, 9);
    expect(between.at[1][1]).toBeCloseTo(3, 9);
});

test('and nears what hangs beyond the clip as far as the clip goes', () => {
    const handled = line([0, 0, 2], [0, 6, 5], 40);
    const beyond = crossing(handled, straight(6.2, 5, 40))!;
    expect(beyond.stage).toBe('hauling to the clip');
    expect(beyond.distance).toBeCloseTo(0.2, 12);
    expect(crossing(handled, straight(-0.5, 5, 40))).toBeUndefined();
    expect(crossing(handled, straight(6.5, 5, 40))).toBeUndefined();
});

test('the way over the clip belongs to a set line: from its rod to the clip, and from the clip to the lure', () => {
    const set = line([1, -4, 3], [1, 4, 3], 60);
    // Short, straight up to the tip that stands in the way from rod to clip.
    expect(crossing(line([1, 0, 2.9], [1, 0, 2.9], 8), set)?.distance).toBeCloseTo(0.1, 2);
    expect(crossing(line([1, 4.1, 3], [1, 4.1, 3], 60), set)?.distance).toBeCloseTo(0.1, 9);
    expect(crossing(line([1, -4.1, 3], [1, -4.1, 3], 60), set)?.distance).toBeCloseTo(0.1, 9);
    expect(crossing(line([1, 0, 2], [1, 0, 2], 8), set)).toBeUndefined();
});

/** Distance of a point from a line of straight pieces. */
function distanceTo(point: Vec, pieces: readonly Vec[]): number {
    const each = pieces.slice(1).map((to, index) => {
        const from = pieces[index]!;
        const [way, off] = [subtract(to, from), subtract(point, from)];
        const square = way[0] ** 2 + way[1] ** 2 + way[2] ** 2;
        const share = square > 0 ? (off[0] * way[0] + off[1] * way[1] + off[2] * way[2]) / square : 0;
        return norm(subtract(point, lerp(from, to, Math.min(1, Math.max(0, share)))));
    });
    return Math.min(...each);
}

const ways: readonly [string, HandledLine, HandledLine][] = [
    [
        'a rigger over a corner',
        line([0.9, 1.1, 2.4], [2, 6, 6.5], 44),
        line([0.2, 1.6, 2.3], [0, 3.3, 0.9], 46),
    ],
    [
        'a corner beside a rigger',
        line([0.2, -1.4, 2.3], [0, -2.3, 0.9], 24),
        line([0.9, -4, 2.4], [2, -6, 5.5], 33),
    ],
    ['a shotgun past a rigger', line([2, 0, 5], [2, 1, 8], 30), line([0.9, 3.1, 2.4], [2, 6, 6.5], 44)],
];

test.each(ways)(
    '%s: of all places that the line passes, sampled, none is nearer than what is told',
    (_, handled, set) => {
        const pieces: Vec[] = [set.rodTip, set.towPoint, [-set.astern, set.towPoint[1], 0]];
        const steps = Array.from({ length: 81 }, (_, index) => index / 80);
        const { rodTip, towPoint, astern } = handled;
        const under: Vec = [rodTip[0], rodTip[1], 0];
        const paid = steps.flatMap((way) =>
            steps.map((along) => lerp(rodTip, lerp(under, [-astern, rodTip[1], 0], way), along)),
        );
        const hauled = steps.flatMap((way) => {
            const clip = lerp(rodTip, towPoint, way);
            const lure: Vec = [-astern, clip[1], 0];
            return steps.flatMap((along) => [lerp(rodTip, clip, along), lerp(clip, lure, along)]);
        });
        const least = (points: readonly Vec[]) =>
            Math.min(...points.map((point) => distanceTo(point, pieces)));
        const [paying, hauling] = [least(paid), least(hauled)];
        // Samples are a metre apart at most, so the nearest of them is not much further than the nearest place.
        const near = (told: number, sampled: number) => {
            expect(told).toBeLessThanOrEqual(sampled + 1e-9);
            expect(told).toBeGreaterThan(sampled - 0.5);
        };
        const whole = crossing(handled, set, 100)!;
        expect(whole.stage).toBe('paying out');
        near(whole.distance, paying);
        if (hauling > paying) return expect(crossing(handled, set, paying - 0.5)).toBeUndefined();
        const hauledTo = crossing(handled, set, (paying + hauling) / 2 - 0.01)!;
        expect(hauledTo.stage).toBe('hauling to the clip');
        near(hauledTo.distance, hauling);
    },
);

test('what is further away than asked for may be told as any distance beyond it, and nothing nearer', () => {
    const swept = [
        [
            [0, 0, 0],
            [1, 0, 0],
            [0, 1, 0],
        ],
    ] as const;
    const [far, near]: [Vec[], Vec[]] = [
        [
            [0, 0, 3],
            [1, 0, 3],
        ],
        [
            [0.2, 0.2, 0.5],
            [0.2, 0.2, 4],
        ],
    ];
    expect(nearestPlace(swept, far).distance).toBe(3);
    expect(nearestPlace(swept, far, 3).distance).toBe(3);
    expect(nearestPlace(swept, far, 2.9).distance).toBeGreaterThan(2.9);
    expect(nearestPlace(swept, [...far, ...near], 1)).toMatchObject({ distance: 0.5 });
    expect(nearestPlace(swept, near, 1)).toMatchObject({
        distance: 0.5,
        at: [
            [0.2, 0.2, 0],
            [0.2, 0.2, 0.5],
        ],
    });
});
