import { setFlagsFromString } from 'node:v8';

/*
 * How long the engine interprets a function before it optimises it. The flag is the engine's own and undocumented;
 * a test sees to it that it still exists.
 */

/** While the language is loaded and plans are read: optimised code would not pay for its making so soon. */
export function hurry(): void {
    setFlagsFromString('--interrupt-budget=10000000');
}

/** For what computes, and for many files. Measured: from 25,000 to 200,000 the more patient took the least time. */
export function settle(): void {
    setFlagsFromString('--interrupt-budget=200000');
}
