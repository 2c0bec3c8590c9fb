import { textWidth, type Weight } from '../text-width.ts';

/** Words that stay on one line: a number and its unit, what a bracket opens with it, `wave 7`, `halyard 1`, `loop 0.8 m`. */
export function bound(words: string): string[] {
    const bound: string[] = [];
    for (const word of words.split(/\s+/).filter(Boolean)) {
        const before = bound.at(-1);
        const follows =
            before !== undefined &&
            ((/(^|[ (])~?[\d.]+$/.test(before) && /^[a-z%]{1,5}[).,;:]*$/.test(word)) ||
                (/(^|\()(wave|halyard|loop)$/.test(before) && /^~?\d/.test(word)));
        if (follows) bound[bound.length - 1] = `${before} ${word}`;
        else bound.push(word);
    }
    return bound;
}

/** The text in lines no wider than asked, where that can be: a number is never parted from its unit. */
export function breakLines(text: string, width: number, size: number, weight: Weight = 'regular'): string[] {
    const lines: string[] = [];
    for (const word of bound(text)) {
        const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
        if (lines.length > 0 && textWidth(longer, size, weight) <= width) lines[lines.length - 1] = longer;
        else lines.push(word);
    }
    return lines;
}
