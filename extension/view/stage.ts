import { follow, pan, type Sight, type Size, type Spot, viewBox, wholeOf, within, zoom } from './camera.ts';
import type { Drawing } from './drawing.ts';

/** Where a drawing is looked at. */
export interface Stage {
    /** Puts another drawing in the place of the one that is there, under the same eye. */
    show(drawing: Drawing, sameView: boolean): void;
    zoomBy(factor: number): void;
    panBy(by: Spot): void;
    fitAll(): void;
    /** Undefined while all of it is shown, however large the panel is. */
    readonly sight: Sight | undefined;
}

/** How far a hand may shake, px, and still mean a click. */
const shake = 4;

/**
 * @param kept  the sight from before a reload, for the first drawing
 * @param moved  called after every change of sight
 */
export function stageIn(host: HTMLElement, kept: Sight | undefined, moved: () => void): Stage {
    let drawing: Drawing | undefined;
    let sight = kept;
    let isFirst = true;

    const screen = (): Size => ({
        width: Math.max(1, host.clientWidth),
        height: Math.max(1, host.clientHeight),
    });
    const current = (page: Size) => sight ?? wholeOf(page, screen());
    const lay = () => {
        if (!drawing) return;
        drawing.svg.setAttribute('viewBox', viewBox(current(drawing.page), screen()).join(' '));
    };
    const look = (next: (sight: Sight, page: Size) => Sight | undefined) => {
        if (!drawing) return;
        const wanted = next(current(drawing.page), drawing.page);
        sight = wanted && within(wanted, drawing.page);
        lay();
        moved();
    };
    const fromMiddle = ({ clientX, clientY }: MouseEvent): Spot => {
        const box = host.getBoundingClientRect();
        return { x: clientX - box.left - box.width / 2, y: clientY - box.top - box.height / 2 };
    };
    const zoomAt = (factor: number, around: Spot) =>
        look((now, page) => zoom(now, factor, around, page, screen()));

    new ResizeObserver(lay).observe(host);
    host.addEventListener(
        'wheel',
        (event) => {
            event.preventDefault();
            // A pinch arrives as a wheel with the control key.
            if (event.ctrlKey || event.metaKey) {
                zoomAt(Math.exp(-event.deltaY / 300), fromMiddle(event));
                return;
            }
            const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 20 : 1;
            const { deltaX, deltaY, shiftKey } = event;
            const [x, y] = shiftKey ? [deltaY, deltaX] : [deltaX, deltaY];
            look((now) => pan(now, { x: -x * lines, y: -y * lines }));
        },
        { passive: false },
    );
    followHand(host, (by) => look((now) => pan(now, by)));

    return {
        show(next, sameView) {
            const page = drawing;
            if (!sameView && !isFirst) sight = undefined;
            else if (sight && page?.water && next.water) sight = follow(sight, page.water, next.water);
            isFirst = false;
            drawing = next;
            lay();
            host.replaceChildren(next.svg);
        },
        zoomBy: (factor) => zoomAt(factor, { x: 0, y: 0 }),
        panBy: (by) => look((now) => pan(now, by)),
        fitAll: () => look(() => undefined),
        get sight() {
            return sight;
        },
    };
}

/** Drags; a click that was a drag does not count as one. */
function followHand(host: HTMLElement, move: (by: Spot) => void): void {
    let last: Spot | undefined;
    let way = 0;
    host.addEventListener('pointerdown', ({ button, clientX, clientY }) => {
        if (button !== 0) return;
        last = { x: clientX, y: clientY };
        way = 0;
    });
    host.addEventListener('pointermove', ({ clientX, clientY, pointerId, buttons }) => {
        if (!last || buttons === 0) return;
        const by = { x: clientX - last.x, y: clientY - last.y };
        way += Math.hypot(by.x, by.y);
        if (way <= shake) return;
        if (!host.hasPointerCapture(pointerId)) host.setPointerCapture(pointerId);
        host.classList.add('dragged');
        last = { x: clientX, y: clientY };
        move(by);
    });
    const end = () => {
        last = undefined;
        host.classList.remove('dragged');
    };
    host.addEventListener('pointerup', end);
    host.addEventListener('pointercancel', end);
    host.addEventListener(
        'click',
        (event) => {
            if (way > shake) event.stopPropagation();
        },
        { capture: true },
    );
}
