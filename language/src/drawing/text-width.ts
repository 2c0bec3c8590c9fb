/** Which face a text is set in. */
export type Weight = 'regular' | 'bold' | 'italic';

// Advance widths in thousandths of the letter height, Arimo 1.33 (the widths of Arial, Helvetica and Liberation
// Sans, so that a sheet keeps its lines wherever it is opened). Checked against the font's own tables.
const regular: Readonly<Record<number, string>> = {
    188: '′',
    191: "'",
    222: 'ijl‘’',
    260: '|¦',
    278: ' !,./:;I[\\]ftÌÍÎÏìíîï',
    333: '()-`r¡¨²³´·¸¹“”',
    334: '{}',
    354: '″',
    355: '"',
    365: 'º',
    370: 'ª',
    389: '*',
    400: '°',
    469: '^',
    500: 'Jcksvxyzçýÿ',
    537: '¶',
    549: '±÷≤≥≈√',
    552: '¯',
    556: '#$0123456789?L_abdeghnopqu¢£¤¥§«»àáâãäåèéêëðñòóôõöùúûüþ–',
    576: 'µ',
    584: '+<=>~¬×−',
    611: 'FTZ¿ßø',
    667: '&ABEKPSVXYÀÁÂÃÄÅÈÉÊËÝÞ',
    722: 'CDHNRUwÇÐÑÙÚÛÜ',
    737: '©®',
    778: 'GOQÒÓÔÕÖØ',
    833: 'Mm',
    834: '¼½¾',
    889: '%æ',
    944: 'W',
    1000: 'Æ—…→',
    1015: '@',
};

const bold: Readonly<Record<number, string>> = {
    238: "'",
    240: '′',
    278: ' ,./I\\ijlÌÍÎÏìíîï‘’',
    280: '|¦',
    333: '!()-:;[]`ft¡¨²³´·¸¹',
    365: 'º',
    370: 'ª',
    389: '*r{}',
    400: '°',
    474: '"',
    479: '″',
    500: 'z“”',
    549: '±÷≤≥≈√',
    552: '¯',
    556: '#$0123456789J_aceksvxy¢£¤¥§«¶»àáâãäåçèéêëýÿ–',
    584: '+<=>^~¬×−',
    600: 'µ',
    611: '?FLTZbdghnopqu¿ßðñòóôõöøùúûüþ',
    667: 'EPSVXYÈÉÊËÝÞ',
    722: '&ABCDHKNRUÀÁÂÃÄÅÇÐÑÙÚÛÜ',
    737: '©®',
    778: 'GOQwÒÓÔÕÖØ',
    833: 'M',
    834: '¼½¾',
    889: '%mæ',
    944: 'W',
    975: '@',
    1000: 'Æ—…→',
};

const byCharacter: Readonly<Record<Weight, readonly (number | undefined)[]>> = {
    regular: widths(regular),
    bold: widths(bold),
    italic: widths(regular),
};

/** Wide enough for the letters of any script that the table leaves out. */
const unknownWidth = 1000;

/**
 * How wide a text runs, in the unit of `size`; letters that the table leaves out count as wide as any.
 *
 * @param size  letter height (em), any unit
 */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
    const known = byCharacter[weight];
    let thousandths = 0;
    for (let i = 0; i < text.length; i++) {
        const code = text.charCodeAt(i);
        // The second half of a character beyond the table was counted with its first.
        if (code < 0xdc00 || code > 0xdfff) thousandths += known[code] ?? unknownWidth;
    }
    return (thousandths * size) / 1000;
}

/** Whether every letter is in the table, so that the width is what the faces really give. */
export function isMeasured(text: string, weight: Weight = 'regular'): boolean {
    const known = byCharacter[weight];
    for (let i = 0; i < text.length; i++) if (known[text.charCodeAt(i)] === undefined) return false;
    return true;
}

/** The text, or as much of it as fits with an ellipsis after it; always at least its first character. */
export function cutToWidth(text: string, width: number, size: number, weight: Weight = 'regular'): string {
    if (textWidth(text, size, weight) <= width) return text;
    let kept = '';
    for (const character of text) {
        if (kept && textWidth(`${kept}${character}…`, size, weight) > width) break;
        kept += character;
    }
    return `${kept.trimEnd()}…`;
}

/** The text in lines no wider than asked, broken between words; a word that is wider alone is cut. */
export function wrap(text: string, width: number, size: number, weight: Weight = 'regular'): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(/\s+(?!%)/).filter(Boolean)) {
        const longer = line ? `${line} ${word}` : word;
        if (textWidth(longer, size, weight) <= width) {
            line = longer;
            continue;
        }
        if (line) lines.push(line);
        line = cutToWidth(word, width, size, weight);
    }
    if (line) lines.push(line);
    return lines;
}

/** By character code, so that measuring a text is one look-up a letter. */
function widths(rows: Readonly<Record<number, string>>): readonly (number | undefined)[] {
    const table: (number | undefined)[] = [];
    for (const [width, characters] of Object.entries(rows)) {
        for (const character of characters) table[character.charCodeAt(0)] = Number(width);
    }
    return table;
}
