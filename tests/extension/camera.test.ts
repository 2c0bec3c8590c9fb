import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
    follow,
    pan,
    type Sight,
    type Size,
    type Spot,
    viewBox,
    type Water,
    wholeOf,
    within,
    zoom,
} from '../../extension/view/camera.ts';

const page: Size = { width: 2100, height: 2970 };
const screen: Size = { width: 500, height: 700 };

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spots = fc.record({ x: length(-400, 400), y: length(-400, 400) });
const sights: fc.Arbitrary<Sight> = fc.record({
    scale: length(0.2, 5),
    middle: fc.record({ x: length(0, 2100), y: length(0, 2970) }),
});
const waters: fc.Arbitrary<Water> = fc.record({
    perMetre: length(5, 60),
    transom: fc.record({ x: length(200, 1800), y: length(200, 1200) }),
});

/** The point of the page that lies under a point of the screen, counted from its middle. */
const under = ({ scale, middle }: Sight, { x, y }: Spot): Spot => ({
    x: middle.x + x / scale,
    y: middle.y + y / scale,
});
const close = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y) < 1e-6;

describe('the camera', () => {
    test('all of a page is as large as fits, in the middle', () => {
        const sight = wholeOf(page, screen);
        const [x, y, width, height] = viewBox(sight, screen);
        expect(y).toBeCloseTo(0, 9);
        expect(height).toBeCloseTo(2970, 9);
        expect(x + width / 2).toBeCloseTo(1050, 9);
        expect(width / height).toBeCloseTo(500 / 700, 9);
    });

    test('what is under the pointer stays there while one zooms', () => {
        fc.assert(
            fc.property(sights, spots, length(0.5, 2), (sight, pointer, factor) =>
                close(under(sight, pointer), under(zoom(sight, factor, pointer, page, screen), pointer)),
            ),
        );
    });

    test('zooming stops at half of what fits, and at forty times that', () => {
        const whole = wholeOf(page, screen);
        const middle = { x: 0, y: 0 };
        expect(zoom(whole, 1e-9, middle, page, screen).scale).toBeCloseTo(whole.scale / 2, 9);
        expect(zoom(whole, 1e9, middle, page, screen).scale).toBeCloseTo(whole.scale * 40, 9);
    });

    test('what one takes hold of comes along with the hand', () => {
        fc.assert(
            fc.property(sights, spots, spots, (sight, at, by) =>
                close(under(sight, at), under(pan(sight, by), { x: at.x + by.x, y: at.y + by.y })),
            ),
        );
    });

    test('on a page of another scale the same water is at the same place of the screen, as large as before', () => {
        const metres = (at: Spot, { perMetre, transom }: Water) => ({
            x: (at.x - transom.x) / perMetre,
            y: (at.y - transom.y) / perMetre,
        });
        fc.assert(
            fc.property(sights, waters, waters, spots, (sight, before, after, at) => {
                const next = follow(sight, before, after);
                expect(next.scale * after.perMetre).toBeCloseTo(sight.scale * before.perMetre, 6);
                return close(metres(under(sight, at), before), metres(under(next, at), after));
            }),
        );
    });

    test('nobody can drag the page out of sight', () => {
        fc.assert(
            fc.property(sights, length(-1e6, 1e6), length(-1e6, 1e6), (sight, x, y) => {
                const { middle } = within(pan(sight, { x, y }), page);
                return middle.x >= 0 && middle.x <= 2100 && middle.y >= 0 && middle.y <= 2970;
            }),
        );
    });
});
