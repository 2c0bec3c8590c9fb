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
    /** Height that the plan view should have. */
    readonly picture: number;
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
        picture: small ? 820 : 1060,
    };
}

/** Letter heights, tenths of a millimetre: 30 is 8.5 points. */
export const sizes = {
    heading: 36,
    headingLine: 60,
    text: 30,
    line: 37,
    between: 10,
    table: 30,
    foot: 24,
    footLine: 30,
} as const;
