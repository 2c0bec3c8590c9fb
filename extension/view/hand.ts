import type { LureMove } from '../../language/src/editor/protocol.ts';
import { nextFace, snap } from '../src/diagram/snap.ts';
import type { Spot } from './camera.ts';
import { asternOn, type Course, type Drawing } from './drawing.ts';

/** A lure in the hand, and where it is held, m astern of the transom. */
export interface Held {
    readonly position: string;
    readonly astern: number;
    /** By the pointer or by the arrow keys. */
    readonly by: 'pointer' | 'keys';
}

/** Takes lures along their lines: with the pointer, or with the arrow keys at a lure. */
export interface Hand {
    readonly held: Held | undefined;
    /** Takes over a drawing that was just put up, with the lures in it that can be moved. */
    over(drawing: Drawing, moves: readonly LureMove[]): void;
    /** Holds nothing any more; whoever calls puts up what was there before. */
    letGo(): void;
}

export interface HandMoves {
    /** It is held at another place than before. */
    tried(held: Held): void;
    /** It was let go at another place than it came from. */
    put(held: Held): void;
    /** It is back where it came from, or was given up. */
    left(): void;
}

/** How far a hand may shake, px, and still mean a click. */
const shake = 4;

/** A small step for an author who measures, m. */
const STEP = 0.5;

export function handOn(host: HTMLElement, { tried, put, left }: HandMoves): Hand {
    let course: Course | undefined;
    let moves = new Map<string, LureMove>();
    let held: Held | undefined;
    /** Where it came from: the text says so, whatever is tried. */
    let home: LureMove | undefined;
    let grip: { readonly at: number; readonly spot: Spot; readonly pointer: number } | undefined;

    const moveAt = (target: EventTarget | null): LureMove | undefined => {
        const lure = (target as Element | null)?.closest<SVGGElement>('g[data-role="lure"]');
        return lure ? moves.get(positionOf(lure)) : undefined;
    };
    const onPage = ({ clientX, clientY }: PointerEvent): Spot | undefined => {
        const svg = host.querySelector('svg');
        const matrix = svg?.getScreenCTM()?.inverse();
        return matrix && new DOMPoint(clientX, clientY).matrixTransform(matrix);
    };
    /** Until the picture of it arrives the lure itself is where the hand is. */
    const shift = () => {
        const lure = held && host.querySelector<SVGGElement>(lureSelector(held.position));
        const shown = held && moves.get(held.position);
        if (!lure || !shown || !course || !held) return;
        const way = (held.astern - shown.astern) * course.perMetre;
        lure.style.translate = `${way * course.astern.x}px ${way * course.astern.y}px`;
    };
    const hold = (next: Held) => {
        if (held && held.position === next.position && Math.abs(held.astern - next.astern) < 1e-6) return;
        held = next;
        shift();
        tried(next);
    };
    let hasMoved = false;
    const end = () => {
        const last = held;
        const from = home;
        held = home = grip = undefined;
        host.classList.remove('moving');
        return last && from && Math.abs(last.astern - from.astern) > 1e-6 ? last : undefined;
    };
    const finish = () => {
        const moved = end();
        if (moved) put(moved);
        else left();
    };

    const giveUp = () => {
        end();
        left();
    };

    host.addEventListener(
        'pointerdown',
        (event) => {
            hasMoved = false;
            const move = moveAt(event.target);
            const spot = onPage(event);
            if (event.button !== 0 || !move || !course || !spot || held) return;
            // What takes the lure does not take the paper along.
            event.stopPropagation();
            home = move;
            grip = {
                at: asternOn(course, spot),
                spot: { x: event.clientX, y: event.clientY },
                pointer: event.pointerId,
            };
        },
        { capture: true },
    );
    host.addEventListener('pointermove', (event) => {
        if (!grip || !home || !course || event.pointerId !== grip.pointer) return;
        if (event.buttons === 0) {
            finish();
            return;
        }
        const way = Math.hypot(event.clientX - grip.spot.x, event.clientY - grip.spot.y);
        const spot = onPage(event);
        if ((!held && way <= shake) || !spot) return;
        if (!host.hasPointerCapture(grip.pointer)) host.setPointerCapture(grip.pointer);
        host.classList.add('moving');
        const astern = snap(home, home.astern + asternOn(course, spot) - grip.at, event.altKey);
        hold({ position: home.position, astern, by: 'pointer' });
    });
    host.addEventListener('pointerup', () => {
        hasMoved = held?.by === 'pointer';
        if (hasMoved) finish();
        else if (grip) grip = home = undefined;
    });
    host.addEventListener('pointercancel', () => {
        if (held?.by === 'pointer') giveUp();
    });
    host.addEventListener(
        'click',
        (event) => {
            // The click that ends a move goes nowhere.
            if (hasMoved) event.stopPropagation();
            hasMoved = false;
        },
        { capture: true },
    );
    host.addEventListener(
        'keydown',
        (event) => {
            if (event.key === 'Escape' && held) {
                event.preventDefault();
                event.stopPropagation();
                giveUp();
                return;
            }
            if (event.ctrlKey || event.metaKey || event.shiftKey || !course) return;
            if (event.key === 'Enter' && held?.by === 'keys') {
                event.preventDefault();
                event.stopPropagation();
                finish();
                return;
            }
            const move = moveAt(document.activeElement);
            const way = wayOf(event.key, course);
            if (!move || way === 0) return;
            event.preventDefault();
            event.stopPropagation();
            if (held && held.position !== move.position) giveUp();
            home ??= move;
            const at = held?.astern ?? move.astern;
            const to =
                event.altKey && home.counts === 'distance'
                    ? Math.max(STEP, at + way * STEP)
                    : nextFace(home, at, way);
            if (to === at && !held) home = undefined;
            else hold({ position: move.position, astern: to, by: 'keys' });
        },
        { capture: true },
    );

    return {
        get held() {
            return held;
        },
        over(drawing, next) {
            course = drawing.course;
            moves = new Map(next.map((move) => [move.position, move]));
            for (const lure of host.querySelectorAll<SVGGElement>('g[data-role="lure"]'))
                if (course && moves.has(positionOf(lure))) lendGrip(lure);
            for (const each of host.querySelectorAll<SVGGElement>('g[data-id]'))
                offerMenu(each, (position) => course !== undefined && moves.has(position));
            shift();
        },
        letGo: () => void end(),
    };
}

function lureSelector(position: string): string {
    return `g[data-id="${CSS.escape(`lure:${position}`)}"]`;
}

function positionOf({ dataset }: SVGGElement): string {
    return (dataset.id ?? '').replace(/^lure:/, '');
}

/** Tells the editor what a right click, or the menu key, is meant for. */
function offerMenu(element: SVGGElement, isMovable: (position: string) => boolean): void {
    const [, position] = /^(?:lure|note|standby):(.+)$/.exec(element.dataset.id ?? '') ?? [];
    if (position === undefined) return;
    element.dataset.vscodeContext = JSON.stringify({
        laybackPosition: position,
        laybackMovable: isMovable(position),
        laybackSided: /^(port|starboard) /.test(position),
        preventDefaultContextMenuItems: true,
    });
}

/** A lure to scale is a few pixels long: what one takes it by is as large as a finger at every zoom. */
function lendGrip(lure: SVGGElement): void {
    const grip = lure.querySelector('path, polygon, circle')?.cloneNode() as SVGElement | undefined;
    if (!grip) return;
    grip.classList.add('grip');
    lure.append(grip);
    lure.classList.add('movable');
}

/** Which way an arrow key takes a lure: 1 is away from the boat. */
function wayOf(key: string, { astern }: Course): -1 | 0 | 1 {
    const step = {
        ArrowDown: { x: 0, y: 1 },
        ArrowUp: { x: 0, y: -1 },
        ArrowRight: { x: 1, y: 0 },
        ArrowLeft: { x: -1, y: 0 },
    }[key];
    if (!step) return 0;
    return Math.sign(step.x * astern.x + step.y * astern.y) as -1 | 0 | 1;
}
