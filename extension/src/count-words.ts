import type { Tally } from '../../language/src/editor/protocol.ts';

/** `2 errors`, `1 hint`: how many findings of each kind there are; nothing of a kind that there is none of. */
export function countWords({
    errors,
    warnings,
    hints,
}: Pick<Tally, 'errors' | 'warnings' | 'hints'>): string[] {
    const counts = [
        [errors, 'error'],
        [warnings, 'warning'],
        [hints, 'hint'],
    ] as const;
    return counts.flatMap(([number, what]) =>
        number === 0 ? [] : [`${number} ${what}${number === 1 ? '' : 's'}`],
    );
}
