import { expect, test } from 'vitest';
import type { Said } from '../plan/origin.ts';
import { isSamePerson } from './people.ts';

const said = (value: string) => ({ value }) as Said<string>;

test('one person aboard, however the name is spaced and whatever letters are large', () => {
    for (const [a, b] of [
        ['Kim', 'kim '],
        ['Kim B', 'KIM   b'],
        ['  Kim\tB', 'Kim B'],
    ])
        expect(isSamePerson(said(a!), said(b!)), `${a} ${b}`).toBe(true);
});

test('two persons, and nobody, are not one', () => {
    expect(isSamePerson(said('Kim'), said('Kit'))).toBe(false);
    expect(isSamePerson(said('Kim B'), said('KimB'))).toBe(false);
    expect(isSamePerson(said('Kim'), undefined)).toBe(false);
    expect(isSamePerson(undefined, said('Kim'))).toBe(false);
    expect(isSamePerson(undefined, undefined)).toBe(false);
});
