import type { XY } from '../../language/src/drawing/elements.ts';
import { type Palette, palettes } from '../../language/src/drawing/palette.ts';
import type { Spot } from '../../language/src/drawing/pen.ts';
import type { TurnScene } from '../../language/src/editor/protocol.ts';
import type { Choice, ShowTurn } from '../src/diagram/scene-messages.ts';
import { radii } from '../src/diagram/scene-messages.ts';
import { type Drawing, readDrawing } from './drawing.ts';
import { button, element, labelled, select } from './element.ts';
import { drawArcs, drawCurve } from './turn-curve.ts';
import { distanceAt, drawNoTurn, drawWater, moveTo } from './turn-water.ts';

/** A turn that can be played, stepped through and scrubbed. */
export interface Player {
    /** Draws the water for the stage, and what stands around it. */
    show(message: ShowTurn): Drawing | undefined;
    /** Stands still, and is not seen. */
    leave(): void;
    /** s from the helm going over */
    readonly time: number;
}

/** Seconds of the turn that pass in one of the watcher's. */
const HASTE = 4;

/** One step, s. */
const STEP = 1;

/** Tenths of a millimetre of the drawing in one CSS pixel: the letters are those of the other views then. */
const perPixel = 1 / 0.29;

/** Half the thumb of a scrubber, px: so far from either edge its way ends. */
const thumb = 8;

/**
 * @param choose  asks for another turn
 */
export function playerIn(
    hosts: { readonly stage: HTMLElement; readonly choices: HTMLElement; readonly player: HTMLElement },
    choose: (turn: NonNullable<Choice['turn']>) => void,
    time = 0,
): Player {
    let shown:
        | { readonly scene: TurnScene; readonly svg: SVGSVGElement; readonly toPage: (at: XY) => Spot }
        | undefined;
    let playing: number | undefined;
    let cursor: HTMLElement | undefined;
    const scrubber = element('input');
    scrubber.type = 'range';
    scrubber.id = 'scrubber';
    scrubber.min = '0';
    scrubber.step = '0.1';
    scrubber.setAttribute('aria-label', 'Moment of the turn');
    const said = element('output');
    said.id = 'moment';

    const end = () => shown?.scene.times.at(-1) ?? 0;
    const go = (to: number) => {
        time = Math.min(end(), Math.max(0, to));
        if (!shown) return;
        moveTo(shown.svg, shown.scene, time, shown.toPage);
        const words = wordsAt(shown.scene, time);
        scrubber.value = String(time);
        scrubber.setAttribute('aria-valuetext', words);
        said.textContent = words;
        if (cursor)
            cursor.style.insetInlineStart = `calc(${thumb}px + (100% - ${2 * thumb}px) * ${time / (end() || 1)})`;
    };
    const play = button('Play', () => (playing === undefined ? start() : stop()));
    play.id = 'play';
    const stop = () => {
        if (playing !== undefined) cancelAnimationFrame(playing);
        playing = undefined;
        play.textContent = 'Play';
    };
    const start = () => {
        if (time >= end()) go(0);
        play.textContent = 'Pause';
        let last = performance.now();
        const next = (now: number) => {
            go(time + ((now - last) / 1000) * HASTE);
            last = now;
            if (time >= end()) stop();
            else playing = requestAnimationFrame(next);
        };
        playing = requestAnimationFrame(next);
    };
    const step = (by: number) => {
        stop();
        go(time + by);
    };
    scrubber.addEventListener('input', () => {
        stop();
        go(Number(scrubber.value));
    });

    const choicesOf = ({ side, radius, heading, unit }: TurnScene) => {
        const wide = element('input');
        wide.type = 'number';
        wide.id = 'radius';
        wide.min = String(Math.ceil(radii.least / unit.metres));
        wide.max = String(Math.floor(radii.most / unit.metres));
        wide.step = 'any';
        const written = radius === undefined ? '' : String(Math.round((radius / unit.metres) * 10) / 10);
        wide.value = written;
        wide.addEventListener('change', () => {
            if (!wide.reportValidity()) return;
            const isOther = wide.value !== '' && wide.value !== written;
            choose({ side, ...(isOther && { radius: wide.valueAsNumber * unit.metres }) });
        });
        const sides = select(
            [
                ['port', 'To port'],
                ['starboard', 'To starboard'],
            ],
            side,
            (value) => choose({ side: value as 'port' | 'starboard' }),
        );
        sides.id = 'side';
        const told = element('span', heading);
        told.className = 'heading';
        return [labelled('Turn', sides), labelled(`Radius, ${unit.symbol}`, wide), told];
    };

    const controlsOf = (scene: TurnScene, palette: Palette): HTMLElement[] => {
        if (scene.times.length === 0) return [];
        const row = element('div');
        row.className = 'row';
        // Whoever wants less to move on the screen goes through it step by step.
        if (!isStill()) row.append(play);
        const back = button('−1 s', () => step(-STEP));
        back.setAttribute('aria-label', '−1 s, one second back');
        const on = button('+1 s', () => step(STEP));
        on.setAttribute('aria-label', '+1 s, one second on');
        for (const each of [play, back, on]) each.classList.add('step');
        row.append(back, on, said);
        const curve = element('div');
        curve.className = 'curve';
        const width = Math.max(200, hosts.player.clientWidth - 16);
        const drawn = readDrawing(
            drawCurve(scene, palette, { width: width * perPixel, height: 84 * perPixel }, thumb * perPixel),
        );
        cursor = element('div');
        cursor.className = 'cursor';
        drawn?.svg.classList.add('plot');
        if (drawn) curve.append(drawn.svg, cursor);
        scrubber.max = String(scene.times.at(-1));
        return [row, scrubber, curve, aroundIt(scene, palette)];
    };
    const aroundIt = (scene: TurnScene, palette: Palette): HTMLElement => {
        const around = element('div');
        around.className = 'around';
        const arcs = readDrawing(drawArcs(scene, palette))?.svg;
        arcs?.classList.add('arcs');
        const moments = element('ol');
        for (const { time: at, words, grave } of scene.moments) {
            const item = element('li');
            const leads = button(`${grave ? '▲ ' : ''}${seconds(at)}: ${words}`, () => {
                stop();
                go(at);
            });
            leads.className = 'goto';
            item.append(leads);
            moments.append(item);
        }
        const limits = [scene.clean.port.limit, scene.clean.starboard.limit].flatMap((words) =>
            words ? [element('p', words)] : [],
        );
        const words = element('div');
        words.append(
            element('p', `Tightest clean turns: ${scene.clean.port.words}; ${scene.clean.starboard.words}.`),
            ...limits,
        );
        around.append(words, ...(arcs ? [arcs] : []), moments);
        return around;
    };

    return {
        show({ scene, palette: name }) {
            stop();
            const { stage, choices, player } = hosts;
            const focused = document.activeElement?.id;
            const palette = palettes[name];
            choices.setAttribute('aria-label', 'Which turn');
            choices.replaceChildren(...choicesOf(scene));
            choices.hidden = false;
            player.hidden = scene.times.length === 0;
            player.replaceChildren(...controlsOf(scene, palette));
            // Last: what stands around it takes its room first.
            const size = {
                width: Math.max(300, stage.clientWidth) * perPixel,
                height: Math.max(160, stage.clientHeight) * perPixel,
            };
            if (scene.times.length === 0) {
                shown = undefined;
                return readDrawing(drawNoTurn(scene, palette, size));
            }
            const { svg, toPage } = drawWater(scene, palette, size);
            const drawing = readDrawing(svg);
            shown = drawing && { scene, svg: drawing.svg, toPage };
            go(time);
            if (focused) document.getElementById(focused)?.focus();
            return drawing;
        },
        leave() {
            stop();
            shown = undefined;
            hosts.player.hidden = true;
            hosts.player.replaceChildren();
        },
        get time() {
            return time;
        },
    };
}

function isStill(): boolean {
    return (
        document.body.classList.contains('vscode-reduce-motion') ||
        window.matchMedia('(prefers-reduced-motion: reduce)').matches
    );
}

export function seconds(time: number): string {
    return `${time.toFixed(1)} s`;
}

/** A moment, as it is heard at the scrubber. */
function wordsAt(scene: TurnScene, time: number): string {
    const apart = distanceAt(scene, time);
    const { nearest } = scene;
    if (apart === undefined || !nearest) return `${seconds(time)} after the helm goes over`;
    const touching = apart <= nearest.contact ? ', touching' : '';
    return `${seconds(time)} after the helm goes over: ${nearest.positions.join(' and ')} ${apart.toFixed(1)} m apart${touching}`;
}
