/** Sheets that a card is printed on, tenths of a millimetre, upright. */
export const papers = {
    /** ISO 216. */
    a4: { width: 2100, height: 2970 },
    /** ANSI/ASME Y14.1, size A: 8½ in by 11 in. */
    letter: { width: 2159, height: 2794 },
    /** ISO 216 A5: half an A4 sheet, for laminating. */
    half: { width: 1480, height: 2100 },
} as const;

export type PaperName = keyof typeof papers;

/** How a card is set on its paper, tenths of a millimetre. */
export interface Setting {
    readonly width: number;
    /** Infinity for a picture on a screen, which is as long as it needs to be. */
    readonly height: number;
    readonly margin: number;
    /** Columns of the words below the table, and the gap between them. */
    readonly columns: number;
    readonly gap: number;
    /** Size at which the plan view is laid out; it is drawn as wide as the paper. */
    readonly picture: { readonly width: number; readonly height: number };
}

export function settingOn(paper: PaperName, endless = false): Setting {
    const { width, height } = papers[paper];
    const small = paper === 'half';
    return {
        width,
        height: endless ? Number.POSITIVE_INFINITY : height,
        margin: small ? 60 : 80,
        columns: small ? 1 : 2,
        gap: 60,
        picture: { width: small ? 1900 : width, height: 1060 },
    };
}

/** Letter heights and lines, tenths of a millimetre: 36 is ten points. */
export const sizes = {
    heading: 40,
    headingLine: 66,
    text: 34,
    line: 42,
    between: 12,
    /** What is read at arm's length: distances and drags. */
    large: 42,
    table: 30,
    tableLine: 36,
    foot: 24,
    footLine: 30,
} as const;
