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

/** `a lure`, `an outfit`. */
export function withArticle(word: string): string {
    return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}

/** Of a text that somebody wrote, as much as a message has room for. */
export function shorten(text: string): string {
    const line = text.split(/[\r\n]/, 1)[0]!;
    return line.length > 40 ? `${line.slice(0, 39)}…` : line;
}
