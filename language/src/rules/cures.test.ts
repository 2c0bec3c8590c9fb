import { expect, test } from 'vitest';
import { cureInWords } from './cures.ts';

test('what would clear two lines is said each way, up to the next tenth of a metre', () => {
    expect(cureInWords({ stagger: 1.23, height: 0.5, width: 2.01 }, undefined)).toBe(
        '1.3 m more stagger, 0.5 m more height on the longer line or 2.1 m more width would clear them.',
    );
    expect(cureInWords({ stagger: 12.31 }, undefined)).toBe('12.4 m more stagger would clear them.');
});

test('of the ways there are only those that clear them are named', () => {
    expect(cureInWords({ height: 0.41, width: 3 }, undefined)).toBe(
        '0.5 m more height on the longer line or 3 m more width would clear them.',
    );
    expect(cureInWords({ stagger: 2, width: 3 }, undefined)).toBe(
        '2 m more stagger or 3 m more width would clear them.',
    );
    for (const none of [undefined, {}])
        expect(cureInWords(none, undefined)).toBe('Give the two more stagger, height or width.');
});
