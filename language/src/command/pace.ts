import { setFlagsFromString } from 'node:v8';

/*
 * How long the engine interprets a function before it optimises it, and how fast the room for new objects grows. The
 * flags are the engine's own and undocumented; a test sees to it that they still exist.
 */

/** While the language is loaded and plans are read: optimised code would not pay for its making so soon. */
export function hurry(): void {
    // A start makes many objects that live to its end: to copy them around in a small room is work for nothing.
    setFlagsFromString('--semi-space-growth-factor=16');
    setFlagsFromString('--interrupt-budget=10000000');
    // As the engine has it: what was compiled is kept under the flags of a start, also by who was thrifty meanwhile.
    setFlagsFromString('--heap-growing-percent=0');
}

/** For what computes, and for many files. Measured: from 25,000 to 200,000 the more patient took the least time. */
export function settle(): void {
    setFlagsFromString('--interrupt-budget=200000');
}

/** For a server, which runs for hours: soon, as the engine does by itself. */
export function serve(): void {
    setFlagsFromString('--interrupt-budget=67584');
}

/** For so many files that their memory counts: the heap is tidied before it has doubled. */
export function beThrifty(): void {
    setFlagsFromString('--heap-growing-percent=100');
}
