import { readFileSync } from 'node:fs';
import type { Press } from '../drawing/png.ts';

/** The renderer and the faces that the build lays beside the command. */
export function press(): Press {
    const bytes = (name: string) => readFileSync(new URL(`../press/${name}`, import.meta.url));
    return {
        renderer: bytes('renderer.wasm'),
        faces: [bytes('regular.ttf'), bytes('bold.ttf'), bytes('italic.ttf')],
    };
}
