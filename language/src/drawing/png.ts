import { drawingInOurLetters } from './letters.ts';

/** What turns a sheet into pixels: the renderer's module and the faces to set text in, as bytes. */
export interface Press {
    readonly renderer: BufferSource;
    /** Regular, bold and italic of one family. */
    readonly faces: readonly Uint8Array[];
}

export interface PngWishes {
    /** Dots per inch; 150 by default, good for a screen and passable on paper. */
    readonly dpi?: number;
    /** px; instead of a resolution. */
    readonly width?: number;
}

let ready: Promise<void> | undefined;

/**
 * An SVG of ours as a PNG file, with the same letters on every machine: fonts of the system are never used, and letters
 * that ours lack are counted.
 *
 * @param svg  with its size in mm
 * @returns the file's bytes
 */
export async function pngOf(
    svg: string,
    press: Press,
    { dpi = 150, width }: PngWishes = {},
): Promise<Uint8Array> {
    // Only now: most who draw want no pixels.
    const { initWasm, Resvg } = await import('@resvg/resvg-wasm');
    ready ??= initWasm(press.renderer);
    await ready;
    const page = new Resvg(drawingInOurLetters(svg), {
        fitTo: { mode: 'width', value: width ?? Math.round((widthInMillimetres(svg) / 25.4) * dpi) },
        font: { fontBuffers: [...press.faces], defaultFontFamily: FAMILY, sansSerifFamily: FAMILY },
        textRendering: 2,
        shapeRendering: 2,
    });
    const image = page.render();
    try {
        return image.asPng();
    } finally {
        image.free();
        page.free();
    }
}

const FAMILY = 'Arimo';

function widthInMillimetres(svg: string): number {
    const found = /^<svg[^>]* width="([\d.]+)mm"/.exec(svg)?.[1];
    if (!found) throw new RangeError('The drawing does not say its width in millimetres.');
    return Number(found);
}
