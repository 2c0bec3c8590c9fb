/** Columns that a text takes in a terminal. */
export type Width = (text: string) => number;

/** Everything in it takes one column for each code unit. */
const plain = /^[\x20-\x7e\xa0-\xac\xae-\u02ff\u2010-\u2015\u2018-\u2027\u202f\u2032-\u2035\u2212]*$/;

/**
 * A measure fit for these texts. The exact one needs a segmenter whose making alone takes as long as checking
 * a small file, so it is loaded only where a text is not plain.
 */
export async function widthFor(texts: Iterable<string>): Promise<Width> {
    for (const text of texts) {
        if (/^[\s\x20-\x7e]*$/.test(text) || plain.test(text.replace(/[\t\r\n]/g, ''))) continue;
        const exact = (await import('string-width')).default;
        return (measured) => (plain.test(measured) ? measured.length : exact(measured));
    }
    return (measured) => measured.length;
}

/** Fills up with blanks on the right. */
export function padEnd(text: string, columns: number, width: Width): string {
    return text + ' '.repeat(Math.max(0, columns - width(text)));
}

export function padStart(text: string, columns: number, width: Width): string {
    return ' '.repeat(Math.max(0, columns - width(text))) + text;
}

/** Words that no terminal line has room for keep their beginning and end. */
const longestWord = 80;

/** Breaks a text between words. */
export function wrap(text: string, columns: number, width: Width): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(' ')) {
        const longer = line === '' ? word : `${line} ${word}`;
        if (line !== '' && width(longer) > columns) {
            lines.push(line);
            line = word;
        } else line = longer;
    }
    lines.push(line);
    return lines;
}

export function shorten(word: string): string {
    if (word.length <= longestWord) return word;
    const letters = Array.from(word.slice(0, 60)).slice(0, 40);
    return `${letters.join('')}…${Array.from(word.slice(-40)).slice(-20).join('')}`;
}

/** Words fit to be shown: harmless, and each of a length that can be read. */
export function readable(text: string): string {
    return harmless(text).split(' ').map(shorten).join(' ');
}

/**
 * The text with nothing in it that moves the cursor, colours the terminal or turns the writing direction:
 * a file may come from anyone. Control characters show as their pictures.
 */
export function harmless(text: string): string {
    return text
        .replace(/[\x00-\x1f]/g, (control) => String.fromCharCode(0x2400 + control.charCodeAt(0)))
        .replace(/\x7f/g, '\u2421')
        .replace(/[\x80-\x9f\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, '\ufffd');
}
