import { expect, test } from 'vitest';
import { boundsText, fallbacks, fallbackText, isUsable, length, share, speed } from './settings.ts';

const gap = length('2 m', ['1 m', '5 m'], 'A gap.');
const stray = speed({ otherwise: 'not judged' }, ['0.1 kn', '3 kn'], 'How far it strays.');

test('a number is usable from its least to its greatest, the bounds themselves as they were written', () => {
    expect([0.9, 0.99999, 1, 3, 5, 5.00001, 6].map((value) => isUsable(value, gap))).toEqual([
        false,
        false,
        true,
        true,
        true,
        false,
        false,
    ]);
    // A tenth of a knot in metres a second, as a computer has it from either side.
    const tenth = (0.1 * 1852) / 3600;
    expect(isUsable(tenth * (1 - 1e-13), stray)).toBe(true);
    expect(isUsable(tenth * 30 * (1 + 1e-13), stray)).toBe(true);
});

test('what applies where nobody wrote a number is one, or is said in words', () => {
    expect(fallbacks({ gap, stray })).toEqual({ gap: 2, stray: undefined });
    expect(fallbackText(gap)).toBe('2 m');
    expect(fallbackText(stray)).toBe('not judged');
    const { otherwise, ...bare } = stray;
    expect(fallbackText(bare)).toBe('');
    expect(boundsText(gap)).toBe('1 m to 5 m');
    expect(fallbacks({ half: share('50 %', ['0 %', '100 %'], 'A half.') })).toEqual({ half: 0.5 });
});

test('a setting of another kind is refused where it is declared', () => {
    expect(() => length('2 kg', ['1 m', '5 m'], 'A gap.')).toThrow('2 kg is no length.');
    expect(() => length('2 m', ['1 m', 'many'], 'A gap.')).toThrow('many is no length.');
});
