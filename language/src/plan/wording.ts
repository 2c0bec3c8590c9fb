/*
 * How words are put together, wherever something is said about a plan.
 */

/** The beginning of a sentence. */
export function capital(text: string): string {
    return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[], last = 'and'): string {
    if (words.length < 2) return words.join('');
    return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** `1.8 kg (1.3 kg to 2.4 kg)`: in brackets what an estimate leaves open, where it reads as more than one figure. */
export function within(
    text: string,
    range: { readonly low: number; readonly high: number } | undefined,
    told: (value: number) => string,
): string {
    if (!range) return text;
    const [low, high] = [told(range.low), told(range.high)];
    return low === high ? text : `${text} (${low} to ${high})`;
}

/** `a lure`, `an outfit`. */
export function withArticle(word: string): string {
    return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}

/** Of a text that somebody wrote, as much as a message has room for. */
export function shorten(text: string): string {
    const line = text.split(/[\r\n]/, 1)[0]!;
    return line.length > 40 ? `${line.slice(0, 39)}…` : line;
}

/** What Markdown or the HTML in it would take for its own is shown as it is; so is what would become a link. */
export function inMarkdown(words: string): string {
    return words
        .replace(/[\\`*_{}[\]<>#|!&~]/g, '\\$&')
        .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2')
        .replace(/^([-+=])/, '\\$1')
        .replace(/\b(https?|ftp|mailto|www)(?=[:.])/gi, '$1\u200b');
}
