import type { Size, Spot, Water } from './camera.ts';

/** A picture that may be put into the page. */
export interface Drawing {
    readonly svg: SVGSVGElement;
    readonly page: Size;
    /** The colour that it is drawn on. */
    readonly paper: string;
    /** Absent where the page does not say, as the view from the side does not. */
    readonly water?: Water;
    /** Which way the boat lies on the page, and how large; absent likewise. */
    readonly course?: Course;
}

/** How places along the boat's course lie on a page. */
export interface Course {
    readonly perMetre: number;
    readonly transom: Spot;
    /** One metre astern, as a step on the page of unit length. */
    readonly astern: Spot;
}

/** How far astern of the transom a spot of the page is, m. */
export function asternOn({ perMetre, transom, astern }: Course, { x, y }: Spot): number {
    return ((x - transom.x) * astern.x + (y - transom.y) * astern.y) / perMetre;
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
    const course = courseOf(svg);
    // The eye follows a change of scale only with the bow up.
    const water = svg.dataset.bow === 'up' ? course : undefined;
    const paper = svg.querySelector('rect')?.getAttribute('fill') ?? '';
    return { svg, page: { width, height }, paper, ...(water && { water }), ...(course && { course }) };
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

function courseOf({ dataset }: SVGSVGElement): Course | undefined {
    const perMetre = Number(dataset.perMetre);
    const [x, y] = (dataset.transom ?? '').split(' ').map(Number);
    const astern = { up: { x: 0, y: 1 }, right: { x: -1, y: 0 } }[dataset.bow ?? ''];
    const isKnown = perMetre > 0 && Number.isFinite(x) && Number.isFinite(y);
    return isKnown && astern ? { perMetre, transom: { x: x!, y: y! }, astern } : undefined;
}
