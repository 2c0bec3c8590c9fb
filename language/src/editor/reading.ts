/** No plan that a crew can read is longer than this. */
export const mostBytes = 2_000_000;
/** Blocks inside blocks: the language itself needs five. */
const mostNested = 200;

/** What became of reading a file. */
export type Reading =
    | { readonly kind: 'text'; readonly text: string }
    | { readonly kind: 'missing' }
    | ({ readonly kind: 'refused' } & Refusal);

/** Why a file that is there is not read. */
export interface Refusal {
    /** The code of the finding about it; none where it is no plan and nobody's but its user's concern. */
    readonly rule?: 'file-size' | 'nesting' | 'unread';
    /** Completes "plan.spread …". */
    readonly reason: string;
    readonly remedy?: string;
}

/** The text that a file's bytes hold, without its byte order mark. */
export function decode(bytes: Uint8Array): Reading {
    if (bytes.length > mostBytes) return tooLarge(bytes.length);
    const [first, second] = bytes;
    if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
        return unread('is written in UTF-16', 'Save it as UTF-8.');
    }
    if (bytes.includes(0)) return unread('is not text: it holds zero bytes');
    try {
        return fitting(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    } catch {
        return unread('is not UTF-8', 'Save it as UTF-8.');
    }
}

/** A text that is already here, if it is one that can be a plan. */
export function fitting(text: string): Reading {
    if (text.length > mostBytes) return tooLarge(text.length);
    const depth = deepest(text);
    if (depth <= mostNested) return { kind: 'text', text };
    return {
        kind: 'refused',
        rule: 'nesting',
        reason: `has ${depth} blocks inside one another, and a plan has a handful`,
        remedy: 'Close each block with `}` before the next one begins.',
    };
}

/** A file that was never meant as a plan. */
export function stranger(reason: string): Reading {
    return { kind: 'refused', reason };
}

export function unread(reason: string, remedy?: string): Reading {
    return { kind: 'refused', rule: 'unread', reason, ...(remedy && { remedy }) };
}

/** @param bytes  of a file that is refused by its size, without reading it */
export function tooLarge(bytes: number): Reading {
    return {
        kind: 'refused',
        rule: 'file-size',
        reason: `has ${(bytes / 1e6).toFixed(1)} MB, and no plan over ${mostBytes / 1e6} MB is read`,
        remedy: 'Split it, or leave it out if it is no plan.',
    };
}

function deepest(text: string): number {
    let [depth, most] = [0, 0];
    for (let at = 0; at < text.length; at++) {
        const code = text.charCodeAt(at);
        if (code === 0x7b) most = Math.max(most, ++depth);
        else if (code === 0x7d) depth = Math.max(0, depth - 1);
    }
    return most;
}
