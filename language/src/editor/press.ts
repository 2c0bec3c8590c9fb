import type { Connection } from 'vscode-languageserver';
import type { CardPrinter } from '../drawing/card/printer.ts';
import { type Press as PngPress, type PngWishes, pngOf } from '../drawing/png.ts';
import type { SeldomViews } from '../drawing/seldom.ts';
import type { FenceDrawer } from './fence-drawing.ts';
import { readFile } from './protocol.ts';

/**
 * Turns drawings into pixels and plans into cards. What it needs lies in a folder of the package and is asked of the
 * client once, when it is first wanted: a web worker has no disk.
 */
export class Press {
    private readonly connection: Connection;
    private readonly read = new Map<string, Promise<Uint8Array<ArrayBuffer>>>();
    private readonly programs = new Map<string, Promise<unknown>>();

    constructor(connection: Connection) {
        this.connection = connection;
    }

    /** A drawing as a PNG file. */
    async pixels(svg: string, folder: string, wishes: PngWishes): Promise<Uint8Array> {
        const [renderer, faces] = await Promise.all([
            this.fileIn(folder, 'renderer.wasm'),
            this.faces(folder),
        ]);
        const press: PngPress = { renderer, faces };
        return pngOf(svg, press, wishes);
    }

    /** Regular, bold and italic of the family that sheets are set in. */
    faces(folder: string): Promise<Uint8Array[]> {
        return Promise.all(
            ['regular.ttf', 'bold.ttf', 'italic.ttf'].map((name) => this.fileIn(folder, name)),
        );
    }

    /** What makes cards. */
    printer(folder: string): Promise<CardPrinter> {
        return this.program(folder, 'card.js', 'laybackCard');
    }

    /** What draws plans that no file holds. */
    fences(folder: string): Promise<FenceDrawer> {
        return this.program(folder, 'fence.js', 'laybackFence');
    }

    /** What makes the views that are seldom asked for. */
    views(folder: string): Promise<SeldomViews> {
        return this.program(folder, 'views.js', 'laybackViews');
    }

    /** Read from where the editor lies, like the server itself, and only once it is wanted. */
    private program<T>(folder: string, name: string, as: string): Promise<T> {
        const programs = this.programs as Map<string, Promise<T>>;
        return once(programs, `${folder}/${name}`, async () => {
            const text = new TextDecoder().decode(await this.fileIn(folder, name));
            return new Function(`${text}\nreturn ${as};`)() as T;
        });
    }

    private fileIn(folder: string, name: string): Promise<Uint8Array<ArrayBuffer>> {
        const uri = `${folder}/${name}`;
        return once(this.read, uri, async () => {
            const content = await this.connection.sendRequest<string | null>(readFile.method, { uri });
            if (content === null) throw new Error(`There is no ${uri}.`);
            return Uint8Array.from(atob(content), (character) => character.charCodeAt(0));
        });
    }
}

/** What failed once may be there the next time. */
function once<T>(kept: Map<string, Promise<T>>, key: string, make: () => Promise<T>): Promise<T> {
    const before = kept.get(key);
    if (before) return before;
    const made = make();
    kept.set(key, made);
    made.catch(() => kept.delete(key));
    return made;
}

/** `btoa` takes characters, and only so many arguments go into one call. */
export function base64(content: Uint8Array | string): string {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    let characters = '';
    for (let at = 0; at < bytes.length; at += 0x8000) {
        characters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    }
    return btoa(characters);
}
