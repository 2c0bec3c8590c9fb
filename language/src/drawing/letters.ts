/**
 * A text in the letters that the faces on board hold, for what is printed: a PDF and a PNG have no other faces to turn
 * to, and a box or a gap in a name says less than nothing. What they lack is counted: `[5 letters]`, `[sign]`. Writing
 * that runs from right to left counts as lacking too: it would turn the figures beside it, and no card may do that.
 */
export function inOurLetters(text: string): string {
    if (!strange.test(text)) return combining.test(text) ? text.normalize('NFC') : text;
    return text.normalize('NFC').replace(strangers, (run) => {
        const signs = run.match(picture)?.length ?? 0;
        const letters = run.replace(picture, '').match(/[\p{L}\p{N}\p{S}\p{P}\p{Co}\p{Cn}]/gu)?.length ?? 0;
        const told = [counted(letters, 'letter'), counted(signs, 'sign')].filter(Boolean);
        return told.length > 0 ? `[${told.join(', ')}]` : '';
    });
}

/** The same in everything that a value holds; for plain values. */
export function allInOurLetters<T>(value: T): T {
    if (typeof value === 'string') return inOurLetters(value) as T;
    if (Array.isArray(value)) return value.map(allInOurLetters) as T;
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, allInOurLetters(each)])) as T;
}

/** The same in the words of a drawing of ours. */
export function drawingInOurLetters(svg: string): string {
    if (!strange.test(svg)) return svg;
    return svg.replace(/>[^<>]+</g, inOurLetters);
}

/** Whether a text has letters that would be counted instead of printed. */
export function hasStrangeLetters(text: string): boolean {
    return strange.test(text.normalize('NFC'));
}

function counted(count: number, what: string): string {
    if (count === 0) return '';
    return count === 1 ? what : `${count} ${what}s`;
}

// All that Arimo 1.33 holds in its three faces and writes from left to right, letter by letter: Latin, Greek, Cyrillic,
// their punctuation and some signs. A test holds this to the faces' own tables.
const ours =
    '\\t\\n\\r -~\\u00a0-\\u0377\\u037a-\\u037f\\u0384-\\u038a\\u038c\\u038e-\\u03a1\\u03a3-\\u052f' +
    '\\u1e00-\\u1eff\\u2000-\\u200a\\u2010-\\u2027\\u202f-\\u205e\\u2070\\u2071\\u2074-\\u208e\\u20a0-\\u20be' +
    '\\u2100-\\u214f\\u2190-\\u2195\\u2202\\u2206\\u220f\\u2211\\u2212\\u2215\\u2219-\\u221a\\u221e\\u221f' +
    '\\u2229\\u222b\\u2248\\u2260\\u2261\\u2264\\u2265\\u25a0\\u25a1\\u25b2\\u25ba\\u25bc\\u25c4\\u25ca\\u25cb' +
    '\\u25cf\\u2640\\u2642\\u2660\\u2663\\u2665\\u2666\\ufb01\\ufb02';

const strange = new RegExp(`[^${ours}]`, 'u');
/** Marks that a letter carries by itself where there is one that does: in print they would stand beside it. */
const combining = /[\u0300-\u036f]/;
/** A run of them with the spaces in it: a name of two words is one gap. */
const strangers = new RegExp(`[^${ours}]+(?:\\s+[^${ours}]+)*`, 'gu');
/** A pictogram with all that is joined to it: one sign, however many characters it takes. */
const picture =
    /(?:\p{Extended_Pictographic}|\p{Regional_Indicator}{2})[\ufe0f\u{1f3fb}-\u{1f3ff}]*(?:\u200d\p{Extended_Pictographic}[\ufe0f\u{1f3fb}-\u{1f3ff}]*)*/gu;
