import type { CardPrinter } from '../drawing/card/printer.ts';
import { type Press as PngPress, type PngWishes, pngOf } from '../drawing/png.ts';
import { type Beside, once } from './beside.ts';
import type { FenceDrawer } from './fence-drawing.ts';
import type { Views } from './shown.ts';
import type { Workshop } from './workshop/part.ts';

/**
 * Draws plans, and turns drawings into pixels and plans into cards. What it needs for that lies beside the server and
 * is read once, when it is first wanted.
 */
export class Press {
    private readonly beside: Beside;
    private readonly read = new Map<string, Promise<Uint8Array<ArrayBuffer>>>();
    private readonly programs = new Map<string, Promise<unknown>>();

    constructor(beside: Beside) {
        this.beside = beside;
    }

    /** A drawing as a PNG file. */
    async pixels(svg: string, wishes: PngWishes): Promise<Uint8Array> {
        const [renderer, faces] = await Promise.all([this.file('renderer.wasm'), this.faces()]);
        const press: PngPress = { renderer, faces };
        return pngOf(svg, press, wishes);
    }

    /** Regular, bold and italic of the family that sheets are set in. */
    faces(): Promise<Uint8Array[]> {
        return Promise.all(['regular.ttf', 'bold.ttf', 'italic.ttf'].map((name) => this.file(name)));
    }

    /** What makes cards. */
    printer(): Promise<CardPrinter> {
        return this.program('card.js', 'laybackCard');
    }

    /** What draws plans that no file holds. */
    fences(): Promise<FenceDrawer> {
        return this.program('fence.js', 'laybackFence');
    }

    /** What shows a plan: pictures, turns, bites, comparisons, figures. */
    views(): Promise<Views> {
        return this.program('views.js', 'laybackViews');
    }

    /** What is done now and then: refactorings, change-overs of a day. */
    workshop(): Promise<Workshop> {
        return this.program('workshop.js', 'laybackWorkshop');
    }

    private program<T>(name: string, as: string): Promise<T> {
        const programs = this.programs as Map<string, Promise<T>>;
        return once(programs, name, async () => {
            const text = new TextDecoder().decode(await this.file(name));
            return new Function(`${text}\nreturn ${as};`)() as T;
        });
    }

    private file(name: string): Promise<Uint8Array<ArrayBuffer>> {
        return once(this.read, name, () => this.beside(`press/${name}`));
    }
}
