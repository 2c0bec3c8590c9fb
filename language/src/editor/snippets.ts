/* Texts with places to fill in, as editors understand them. */

/** A text that a snippet repeats as it is. */
export function escaped(text: string): string {
    return text.replace(/[\\$}]/g, '\\$&');
}

/** A place to fill in, with what stands in it until then. */
export function place(number: number, text: string): string {
    return `\${${number}:${escaped(text)}}`;
}

/** A place to fill in with one of some words. */
export function choice(number: number, words: readonly string[]): string {
    return `\${${number}|${words.join(',')}|}`;
}
