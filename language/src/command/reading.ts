import { isUtf8 } from 'node:buffer';
import { closeSync, fstatSync, openSync, readFileSync } from 'node:fs';
import { tooDeep, tooLarge, type Unfit } from '../plan/fit.ts';
import { reasonOf } from './refusal.ts';

export type Reading =
    | { readonly kind: 'text'; readonly text: string; readonly byteOrderMark: boolean }
    | { readonly kind: 'unfit'; readonly unfit: Unfit }
    /** Completes "plan.spread …". */
    | { readonly kind: 'refused'; readonly reason: string; readonly gone: boolean };

/** The text of a file, without its byte order mark. Never throws. */
export function readPlan(path: string): Reading {
    let handle: number | undefined;
    try {
        handle = openSync(path, 'r');
        const stats = fstatSync(handle);
        if (!stats.isFile()) return { kind: 'refused', reason: 'is not a file', gone: false };
        // Before it is read: it may be larger than the memory.
        const unfit = tooLarge(stats.size);
        return unfit ? { kind: 'unfit', unfit } : decode(readFileSync(handle));
    } catch (error) {
        const gone = (error as NodeJS.ErrnoException).code === 'ENOENT';
        return { kind: 'refused', reason: reasonOf(error), gone };
    } finally {
        if (handle !== undefined) closeSync(handle);
    }
}

export function decode(bytes: Buffer): Reading {
    const large = tooLarge(bytes.length);
    if (large) return { kind: 'unfit', unfit: large };
    const refused = (reason: string): Reading => ({ kind: 'refused', reason, gone: false });
    if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
        return refused('is written in UTF-16; save it as UTF-8');
    }
    if (bytes.includes(0)) return refused('is not text: it holds zero bytes');
    if (!isUtf8(bytes))
        return refused(`is not UTF-8: line ${lineOfFault(bytes)} holds other bytes; save it as UTF-8`);
    const text = bytes.toString('utf8');
    const deep = tooDeep(text);
    if (deep) return { kind: 'unfit', unfit: deep };
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
