import { expect, test } from 'vitest';
import { weakestLink } from '../../language/src/physics/weakest-link.ts';

test('a link that cannot be is named, with what is wrong with it', () => {
    const sound = { name: 'line', rated: 200 };
    const without = { name: 'swivel', rated: 0 };
    expect(weakestLink([sound, without])).toEqual({
        kind: 'bad-link',
        link: without,
        reason: 'Its strength is not above zero.',
    });
    for (const fraction of [0, -0.5, 1.01, Number.NaN]) {
        const link = { name: 'knot', rated: 200, fraction };
        expect(weakestLink([sound, link])).toEqual({
            kind: 'bad-link',
            link,
            reason: 'Its share is not above 0 and at most 1.',
        });
    }
    expect(weakestLink([{ ...sound, fraction: 1 }]).kind).toBe('weakest');
});
