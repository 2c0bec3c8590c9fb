import type { Spread } from '../../plan/model.ts';

/**
 * Eight hex digits that tell two plans apart on paper: equal for the same resolved inputs however they were laid
 * out, and another for another number, name, word or choice. Comments, order of positions, the unit that a number
 * was written in and what a preset’s version is called do not count.
 */
export function fingerprintOf(plan: Spread): string {
    const { lines, like: _like, presets: _presets, packages: _packages, ...rest } = plan;
    const sorted = [...lines].sort((a, b) => (a.position.name < b.position.name ? -1 : 1));
    const hash = fnv1a(new TextEncoder().encode(canonical({ ...rest, lines: sorted })));
    return `${hash.slice(0, 4)}-${hash.slice(4, 8)}`;
}

/** Where things were said and how, as against what was said. */
const notInputs: ReadonlySet<string> = new Set(['origin', 'quantity', 'standing', 'doc', 'inherited']);

/** Plain values in one spelling: keys in order, numbers to twelve figures, so that 2 m and 200 cm are one. */
function canonical(value: unknown): string {
    if (typeof value === 'number') return String(Number(value.toPrecision(12)));
    if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? '';
    if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
    const entries = value instanceof Map ? [...value] : Object.entries(value);
    const kept = entries
        .filter(([key, each]) => each !== undefined && !(value instanceof Map ? false : notInputs.has(key)))
        .sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${kept.map(([key, each]) => `${JSON.stringify(key)}:${canonical(each)}`).join()}}`;
}

/**
 * FNV-1a of 64 bits as sixteen hex digits (Fowler, Noll, Vo: offset basis cbf29ce484222325, prime 100000001b3),
 * in two halves of 32 bits, since numbers hold 53.
 */
export function fnv1a(bytes: Uint8Array): string {
    let [high, low] = [0xcbf29ce4, 0x84222325];
    for (const byte of bytes) {
        low = (low ^ byte) >>> 0;
        const product = low * 0x1b3;
        high = (Math.imul(high, 0x1b3) + (low << 8) + Math.floor(product / 2 ** 32)) >>> 0;
        low = product >>> 0;
    }
    return [high, low].map((half) => half.toString(16).padStart(8, '0')).join('');
}
