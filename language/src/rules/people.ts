import type { Said } from '../plan/origin.ts';

/** Whom a name means: “Kim”, “kim” and “Kim ” are one person aboard. */
export function personOf({ value }: Said<string>): string {
    return value.trim().replace(/\s+/g, ' ').toLowerCase();
}

export function isSamePerson(a: Said<string> | undefined, b: Said<string> | undefined): boolean {
    return a !== undefined && b !== undefined && personOf(a) === personOf(b);
}
