import { isUtf8 } from 'node:buffer';
import { closeSync, fstatSync, openSync, readFileSync } from 'node:fs';
import { reasonOf } from './refusal.ts';

/** No plan that a crew can read is longer than this. */
const mostBytes = 2_000_000;
/** Blocks inside blocks: the language itself needs five. */
const mostNested = 200;

export type Reading =
    | { readonly kind: 'text'; readonly text: string; readonly byteOrderMark: boolean }
    | { readonly kind: 'unfit'; readonly unfit: Unfit }
    /** Completes "plan.spread …". */
    | { readonly kind: 'refused'; readonly reason: string; readonly gone: boolean };

/** A file that can be read and is no plan by any measure: a finding about it, and nothing is made of its text. */
export interface Unfit {
    readonly rule: 'file-size' | 'nesting';
    /** Completes "plan.spread …". */
    readonly reason: string;
    readonly remedy: string;
}

/** The text of a file, without its byte order mark. Never throws. */
export function readPlan(path: string): Reading {
    let handle: number | undefined;
    try {
        handle = openSync(path, 'r');
        const stats = fstatSync(handle);
        if (!stats.isFile()) return { kind: 'refused', reason: 'is not a file', gone: false };
        if (stats.size > mostBytes) return tooLarge(stats.size);
        return decode(readFileSync(handle));
    } catch (error) {
        const gone = (error as NodeJS.ErrnoException).code === 'ENOENT';
        return { kind: 'refused', reason: reasonOf(error), gone };
    } finally {
        if (handle !== undefined) closeSync(handle);
    }
}

export function decode(bytes: Buffer): Reading {
    if (bytes.length > mostBytes) return tooLarge(bytes.length);
    const refused = (reason: string): Reading => ({ kind: 'refused', reason, gone: false });
    if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
        return refused('is written in UTF-16; save it as UTF-8');
    }
    if (bytes.includes(0)) return refused('is not text: it holds zero bytes');
    if (!isUtf8(bytes))
        return refused(`is not UTF-8: line ${lineOfFault(bytes)} holds other bytes; save it as UTF-8`);
    const text = bytes.toString('utf8');
    const depth = deepest(text);
    if (depth > mostNested) return tooDeep(depth);
    const byteOrderMark = text.startsWith('\ufeff');
    return { kind: 'text', text: byteOrderMark ? text.slice(1) : text, byteOrderMark };
}

function lineOfFault(bytes: Buffer): number {
    let line = 1;
    let start = 0;
    while (start < bytes.length) {
        const end = bytes.indexOf(0x0a, start);
        const stop = end < 0 ? bytes.length : end + 1;
        if (!isUtf8(bytes.subarray(start, stop))) return line;
        start = stop;
        line++;
    }
    return line;
}

function tooLarge(bytes: number): Reading {
    const reason = `has ${(bytes / 1e6).toFixed(1)} MB, and no plan over ${mostBytes / 1e6} MB is read`;
    return unfit('file-size', reason, 'Split it, or leave it out if it is no plan.');
}

function tooDeep(depth: number): Reading {
    const reason = `has ${depth} blocks inside one another, and a plan has a handful`;
    return unfit('nesting', reason, 'Close each block with `}` before the next one begins.');
}

function unfit(rule: Unfit['rule'], reason: string, remedy: string): Reading {
    return { kind: 'unfit', unfit: { rule, reason, remedy } };
}

function deepest(text: string): number {
    let [depth, most] = [0, 0];
    for (const brace of text.matchAll(/[{}]/g)) {
        depth = brace[0] === '{' ? depth + 1 : Math.max(0, depth - 1);
        most = Math.max(most, depth);
    }
    return most;
}
