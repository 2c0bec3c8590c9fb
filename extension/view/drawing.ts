import type { Size, Water } from './camera.ts';

/** A picture that may be put into the page. */
export interface Drawing {
    readonly svg: SVGSVGElement;
    readonly page: Size;
    /** The colour that it is drawn on. */
    readonly paper: string;
    /** Absent where the page does not say, as the view from the side does not. */
    readonly water?: Water;
}

/** What a drawing of ours is made of. Everything else, whatever it could do, stays out. */
const elements = new Set([
    ...['svg', 'title', 'desc', 'g', 'path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'ellipse'],
    ...['text', 'tspan'],
]);

/** Attributes that can run, load or restyle something. */
const astray = /^(on|style$|href$|src$)|:/;

/**
 * Reads a drawing, and leaves out of it what could be anything but a drawing.
 *
 * @returns undefined for what is no drawing
 */
export function readDrawing(text: string): Drawing | undefined {
    const read = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    const [x, y, width, height] = (read.getAttribute('viewBox') ?? '').split(' ').map(Number);
    const isPage =
        x === 0 && y === 0 && width !== undefined && height !== undefined && width > 0 && height > 0;
    if (read.localName !== 'svg' || !isPage) return undefined;
    const svg = document.importNode(read, true) as unknown as SVGSVGElement;
    clean(svg);
    // The page decides how large it is shown.
    svg.removeAttribute('width');
    svg.removeAttribute('height');
    const water = waterOf(svg);
    const paper = svg.querySelector('rect')?.getAttribute('fill') ?? '';
    return { svg, page: { width, height }, paper, ...(water && { water }) };
}

function clean(element: Element): void {
    for (const child of [...element.children]) {
        if (elements.has(child.localName)) clean(child);
        else child.remove();
    }
    for (const { name } of [...element.attributes]) {
        if (astray.test(name) && name !== 'xmlns') element.removeAttribute(name);
    }
}

function waterOf({ dataset }: SVGSVGElement): Water | undefined {
    const perMetre = Number(dataset.perMetre);
    const [x, y] = (dataset.transom ?? '').split(' ').map(Number);
    const isKnown = perMetre > 0 && Number.isFinite(x) && Number.isFinite(y);
    return isKnown && dataset.bow === 'up' ? { perMetre, transom: { x: x!, y: y! } } : undefined;
}
