import { expect, test } from 'vitest';
import { polePoint, rodTip } from '../../language/src/physics/tow-points.ts';

const foot = { ahead: 3, out: 1.5, up: 2 };
const pole = { foot, length: 6, rise: 0.7, sweep: 1.2 };

test('a halyard at the foot of its pole is where the pole stands, one at the end is at the tip', () => {
    expect(polePoint(pole, 0, 'port')).toEqual([3, 1.5, 2]);
    expect(polePoint(pole, 6, 'port')).toBeDefined();
});

test('no pole is swept further than astern, and no rod lies flat or below to any side', () => {
    expect(polePoint({ ...pole, sweep: Math.PI }, 3, 'port')).toBeDefined();
    expect(polePoint({ ...pole, sweep: 3.2 }, 3, 'port')).toBeUndefined();
    expect(polePoint({ ...pole, sweep: -3.2 }, 3, 'port')).toBeUndefined();
    for (const splay of [Math.PI / 2, 2, -2, 5])
        expect(rodTip({ foot, lean: 0.2, splay }, 1, 'port')).toBeUndefined();
    expect(rodTip({ foot, lean: 0.2, splay: 1.5 }, 1, 'port')).toBeDefined();
});
