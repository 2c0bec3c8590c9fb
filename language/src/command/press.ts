import { readFileSync } from 'node:fs';
import type { Press } from '../drawing/png.ts';

/** The renderer and the faces that the build lays beside the command. */
export function press(): Press {
    return { renderer: bytes('renderer.wasm'), faces: faces() };
}

/** Regular, bold and italic of the family that sheets are set in. */
export function faces(): Uint8Array<ArrayBuffer>[] {
    return [bytes('regular.ttf'), bytes('bold.ttf'), bytes('italic.ttf')];
}

function bytes(name: string): Uint8Array<ArrayBuffer> {
    return readFileSync(new URL(`../press/${name}`, import.meta.url));
}
