/** A file that can be read and is no plan by any measure: a finding about it, and nothing is made of its text. */
export interface Unfit {
    readonly rule: 'file-size' | 'nesting';
    /** Completes "plan.spread …". */
    readonly reason: string;
    readonly remedy: string;
}

/** No plan that a crew can read is longer than this. */
const mostBytes = 2_000_000;
/** Blocks inside blocks: the language itself needs five, and the parser has no more room than its stack. */
const mostNested = 200;

export function tooLarge(bytes: number): Unfit | undefined {
    if (bytes <= mostBytes) return undefined;
    return {
        rule: 'file-size',
        reason: `has ${(bytes / 1e6).toFixed(1)} MB, and no plan over ${mostBytes / 1e6} MB is read`,
        remedy: 'Split it, or leave it out if it is no plan.',
    };
}

export function tooDeep(text: string): Unfit | undefined {
    const depth = deepest(text);
    if (depth <= mostNested) return undefined;
    return {
        rule: 'nesting',
        reason: `has ${depth} blocks inside one another, and a plan has a handful`,
        remedy: 'Close each block with `}` before the next one begins.',
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
