import { svgOfStrike } from '../../language/src/drawing/svg-strike.ts';
import type { Choice, ShowStrike } from '../src/diagram/scene-messages.ts';
import { type Drawing, readDrawing } from './drawing.ts';
import { element, labelled, select } from './element.ts';

/** CSS px of a millimetre of the drawing, and the least width on which its words do not touch, mm. */
const perMillimetre = 2.9;
const least = 185;

/** A bite as its plots, with what can be asked for above them. */
export function showStrike(
    { stage, choices }: { readonly stage: HTMLElement; readonly choices: HTMLElement },
    { scene, palette }: ShowStrike,
    choose: (strike: NonNullable<Choice['strike']>) => void,
): Drawing | undefined {
    const focused = document.activeElement?.id;
    const style = scene.strike?.style ?? 'direct';
    const line = select(
        scene.positions.map((position) => [position, position] as const),
        scene.position,
        (value) => choose({ line: value }),
    );
    line.id = 'line';
    const styles = select(
        [
            ['direct', 'Hooked directly'],
            ['drop-back', 'With a drop-back'],
        ],
        style,
        (value) => choose({ line: scene.position, style: value as 'direct' | 'drop-back' }),
    );
    styles.id = 'style';
    const unknown = scene.unknown.map((words) => element('span', words));
    choices.setAttribute('aria-label', 'Which bite');
    choices.replaceChildren(labelled('A bite on', line), labelled('Fished', styles), ...unknown);
    choices.hidden = false;
    if (focused) document.getElementById(focused)?.focus();
    const width = Math.max(least, stage.clientWidth / perMillimetre);
    return readDrawing(svgOfStrike(scene, { palette, live: true, foot: false, paper: { width, height: 0 } }));
}
