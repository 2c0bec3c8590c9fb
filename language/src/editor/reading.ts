import { tooDeep, tooLarge, type Unfit } from '../plan/fit.ts';

/** What became of reading a file. */
export type Reading =
    /** `version` is of the package that the file was read from. */
    | { readonly kind: 'text'; readonly text: string; readonly version?: string }
    | { readonly kind: 'missing' }
    | ({ readonly kind: 'refused' } & Refusal);

/** Why a file that is there is not read. */
export interface Refusal {
    /** The code of the finding about it; none where it is no plan and nobody's but its user's concern. */
    readonly rule?: Unfit['rule'] | 'unread';
    /** Completes "plan.spread …". */
    readonly reason: string;
    readonly remedy?: string;
}

/** The text that a file's bytes hold, without its byte order mark. */
export function decode(bytes: Uint8Array): Reading {
    const large = tooLarge(bytes.length);
    if (large) return { kind: 'refused', ...large };
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
    const unfit = tooLarge(text.length) ?? tooDeep(text);
    return unfit ? { kind: 'refused', ...unfit } : { kind: 'text', text };
}

/** A file that was never meant as a plan. */
export function stranger(reason: string): Reading {
    return { kind: 'refused', reason };
}

export function unread(reason: string, remedy?: string): Reading {
    return { kind: 'refused', rule: 'unread', reason, ...(remedy && { remedy }) };
}
