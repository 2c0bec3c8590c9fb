import { isMeasured, textWidth, type Weight } from './text-width.ts';
import { plainText } from './words.ts';

/** A point of a sheet, tenths of a millimetre from its upper left corner. */
export type Spot = readonly [x: number, y: number];

/** How a line or an area is drawn; colours resolved, widths in tenths of a millimetre. */
export interface Stroke {
    readonly stroke?: string;
    readonly width?: number;
    readonly dash?: string;
    readonly fill?: string;
    readonly cap?: 'round';
}

/** Families of one set of widths, so that a text is as long wherever the sheet is opened. */
export const FONTS = 'Arimo, Arial, Liberation Sans, Helvetica, sans-serif';

/** The text as it may stand in an SVG file: plain, with markup escaped. */
export function escapeText(text: string): string {
    const plain = plainText(text);
    return /[&<>"']/.test(plain) ? plain.replace(/[&<>"']/g, (character) => entities[character]!) : plain;
}

const entities: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&#39;',
};

/** A number as short as a hundredth of a millimetre allows. */
export function short(value: number): string {
    return String(Math.round(value * 10) / 10 || 0);
}

export function path(points: readonly Spot[], style: Stroke, closed = false): string {
    if (points.length < 2) return '';
    let d = '';
    for (const [i, [x, y]] of points.entries())
        d += `${i === 0 ? 'M' : i === 1 ? 'L' : ' '}${short(x)} ${short(y)}`;
    return `<path d="${d}${closed ? 'Z' : ''}"${attributes(style)}/>`;
}

export function line(from: Spot, to: Spot, style: Stroke): string {
    return path([from, to], style);
}

export function circle([x, y]: Spot, radius: number, style: Stroke): string {
    return `<circle cx="${short(x)}" cy="${short(y)}" r="${short(radius)}"${attributes(style)}/>`;
}

export function rectangle([x, y]: Spot, width: number, height: number, style: Stroke): string {
    return `<rect x="${short(x)}" y="${short(y)}" width="${short(width)}" height="${short(height)}"${attributes(style)}/>`;
}

export interface Lettering {
    readonly size: number;
    readonly fill: string;
    readonly weight?: Weight;
    readonly anchor?: 'start' | 'middle' | 'end';
    /** A band of this colour around the letters, so that what lies below does not touch them. */
    readonly halo?: string;
}

export function text([x, y]: Spot, words: string, { size, fill, weight, anchor, halo }: Lettering): string {
    if (!words) return '';
    const face =
        weight === 'bold' ? ' font-weight="bold"' : weight === 'italic' ? ' font-style="italic"' : '';
    const aside = anchor && anchor !== 'start' ? ` text-anchor="${anchor}"` : '';
    const place = `<text x="${short(x)}" y="${short(y)}" font-size="${short(size)}"${face}${aside}${fitted(words, size, weight)}`;
    const content = `${escapeText(words)}</text>`;
    const band = halo
        ? `${place} fill="${halo}" stroke="${halo}" stroke-width="${short(size / 3)}" stroke-linejoin="round" aria-hidden="true">${content}`
        : '';
    return `${band}${place} fill="${fill}">${content}`;
}

/** Shorter texts stay within their place in any face. */
const worthFitting = 90;

/** Where none of our families is at hand, the letters of another are made as wide as ours. */
function fitted(words: string, size: number, weight: Weight | undefined): string {
    const width = textWidth(words, size, weight);
    if (width < worthFitting || !isMeasured(words, weight)) return '';
    return ` textLength="${short(width)}" lengthAdjust="spacingAndGlyphs"`;
}

function attributes({ stroke, width, dash, fill = 'none', cap }: Stroke): string {
    let written = ` fill="${fill}"`;
    if (stroke) {
        written += ` stroke="${stroke}" stroke-width="${short(width ?? 2)}"`;
        if (dash) written += ` stroke-dasharray="${dash}"`;
        if (cap) written += ` stroke-linecap="${cap}" stroke-linejoin="${cap}"`;
    }
    return written;
}
