import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { crc32 } from 'node:zlib';
import type { Press } from '../drawing/png.ts';
import { loadCompiled } from './compiled.ts';
import { hurry, settle } from './pace.ts';

/** The renderer and the faces that the build lays beside the command. */
export function press(): Press {
    return { renderer: bytes('renderer.wasm'), faces: faces() };
}

/** Regular, bold and italic of the family that sheets are set in. */
export function faces(): Uint8Array<ArrayBuffer>[] {
    return [bytes('regular.ttf'), bytes('bold.ttf'), bytes('italic.ttf')];
}

type PdfPress = typeof import('../drawing/card/pdf.ts');

/** The library that writes PDF, as large as all the rest and needed by one verb: it has a bundle of its own. */
export function pdfPress(): PdfPress {
    // What was compiled is taken back only under the flags that it was kept under.
    hurry();
    const press = loadCompiled(pathOf('../press/pdf.cjs'), (text) =>
        pathOf(`pdf-${crc32(text).toString(16)}`),
    );
    settle();
    return press as PdfPress;
}

function bytes(name: string): Uint8Array<ArrayBuffer> {
    return readFileSync(pathOf(`../press/${name}`));
}

function pathOf(beside: string): string {
    return fileURLToPath(new URL(beside, import.meta.url));
}
