import { dirname, extname, join, parse, resolve } from 'node:path';
import { Refusal } from './refusal.ts';
import { writeWhole } from './writing.ts';

/** What a sheet is printed at where nobody says otherwise. */
const USUAL_DPI = 150;

/**
 * Where a picture goes, by its name.
 *
 * @throws Refusal where the name does not say what to draw
 */
export function pictureAt(path: string): string {
    const ending = extname(path).toLowerCase();
    if (ending !== '.svg' && ending !== '.png')
        throw new Refusal(`${path} should end in .svg or .png, to say what to draw.`);
    return join(dirname(resolve(path)), parse(path).base);
}

/** Writes a drawing as what its file's ending says. */
export async function writePicture(svg: string, target: string, dpi = USUAL_DPI): Promise<void> {
    writeWhole(target, extname(target).toLowerCase() === '.png' ? await pixels(svg, dpi) : svg);
}

/** A drawing as the bytes of a PNG; what makes them is loaded only now. */
export async function pixels(svg: string, dpi = USUAL_DPI): Promise<Uint8Array> {
    const [{ pngOf }, { press }] = await Promise.all([import('../drawing/png.ts'), import('./press.ts')]);
    return pngOf(svg, press(), { dpi });
}
