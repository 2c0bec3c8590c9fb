/** A length with the marks that carpenters write: `40'`, `40' 6"`. */
export interface FeetMark {
    readonly start: number;
    readonly end: number;
    /** The same as the language has it: `40 ft 6 in`. */
    readonly text: string;
}

const MARKED = /^['′’]\s*(?:(\d+(?:\.\d+)?)\s*(?:"|″|”|''))?/;

/** The length whose mark for feet stands at an offset. */
export function feetMarkAt(text: string, offset: number): FeetMark | undefined {
    if (!"'′’".includes(text.charAt(offset) || ' ')) return undefined;
    const [feet] = /\d+(?:\.\d+)?\s*$/.exec(text.slice(Math.max(0, offset - 20), offset)) ?? [];
    const [marked, inches] = MARKED.exec(text.slice(offset, offset + 20)) ?? [];
    if (feet === undefined || marked === undefined) return undefined;
    const written = inches === undefined ? `${feet.trim()} ft` : `${feet.trim()} ft ${inches} in`;
    return { start: offset - feet.length, end: offset + marked.trimEnd().length, text: written };
}
