/*
 * Whether something that came from the other end of a wire is what it should be.
 */

export type Check = (value: unknown) => boolean;

/** As long as an address or a name in a plan can sensibly be. */
const longest = 4096;

export function isRecord(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null;
}

export function isList(value: unknown, holds: Check): boolean {
    return Array.isArray(value) && value.every(holds);
}

export function isText(value: unknown): value is string {
    return typeof value === 'string';
}

export function isTexts(value: unknown): value is readonly string[] {
    return isList(value, isText);
}

export function isName(value: unknown): value is string {
    return isText(value) && value !== '' && value.length <= longest;
}

export function isNumber(value: unknown): value is number {
    return typeof value === 'number' && Number.isFinite(value);
}

/** So many numbers, or any number of them. */
export function numbers(count?: number): Check {
    return (value) =>
        isList(value, isNumber) && (count === undefined || (value as unknown[]).length === count);
}

export function oneOf(...choices: readonly unknown[]): Check {
    return (value) => choices.includes(value);
}

export function maybe(check: Check): Check {
    return (value) => value === undefined || check(value);
}

export function listOf(check: Check): Check {
    return (value) => isList(value, check);
}

/** A record with these fields; what else it has is nobody's business. */
export function fields(checks: Readonly<Record<string, Check>>): Check {
    return (value) => isRecord(value) && Object.entries(checks).every(([key, check]) => check(value[key]));
}
