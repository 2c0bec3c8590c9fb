import type { Connection } from 'vscode-languageserver';
import { type PngWishes, type Press, pngOf } from '../drawing/png.ts';
import { readFile } from './protocol.ts';

/** Turns drawings into pixels. What it needs is asked of the client once: a web worker has no disk. */
export class PngPress {
    private readonly connection: Connection;
    private readonly loaded = new Map<string, Promise<Press>>();

    constructor(connection: Connection) {
        this.connection = connection;
    }

    /**
     * @param folder  address of the folder with the renderer and the faces
     * @returns the PNG file in base 64
     */
    async print(svg: string, folder: string, wishes: PngWishes): Promise<string> {
        let press = this.loaded.get(folder);
        if (!press) {
            press = this.load(folder);
            this.loaded.set(folder, press);
            // What failed once may be there the next time.
            press.catch(() => this.loaded.delete(folder));
        }
        return base64(await pngOf(svg, await press, wishes));
    }

    private async load(folder: string): Promise<Press> {
        const read = async (name: string) => {
            const uri = `${folder}/${name}`;
            const content = await this.connection.sendRequest<string | null>(readFile.method, { uri });
            if (content === null) throw new Error(`There is no ${uri}.`);
            return Uint8Array.from(atob(content), (character) => character.charCodeAt(0));
        };
        const names = ['renderer.wasm', 'regular.ttf', 'bold.ttf', 'italic.ttf'];
        const [renderer, ...faces] = await Promise.all(names.map(read));
        return { renderer: renderer!, faces };
    }
}

/** `btoa` takes characters, and only so many arguments go into one call. */
function base64(bytes: Uint8Array): string {
    let characters = '';
    for (let at = 0; at < bytes.length; at += 0x8000) {
        characters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    }
    return btoa(characters);
}
