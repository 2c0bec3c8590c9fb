import type { WavePart } from '../plan/figures.ts';
import type { From, Position, Side, SpreadLine } from '../plan/model.ts';
import { print } from '../units/print.ts';
import type { Quantity } from '../units/quantity.ts';
import { units } from '../units/unit.ts';

/** A length as it is spoken on deck: `11.9 m`. */
export function inMetres(metres: number): string {
    return print(metres, units.m);
}

/** A length in its author's unit and form, in metres where no author chose one. */
export function asWritten(metres: number, quantity: Quantity | undefined): string {
    return print(metres, quantity?.unit.dimension === 'length' ? quantity : units.m);
}

/** A lure's length: millimetres, as lures are sold, unless its author says otherwise. */
export function lureLength(metres: number, quantity: Quantity | undefined): string {
    return print(metres, quantity?.unit.dimension === 'length' ? quantity : units.mm);
}

export function sideWord(side: Side): string {
    return { port: 'Port', starboard: 'Starboard', centre: 'Centre' }[side];
}

/** `Port short corner`: the position's name as it opens a sentence. */
export function titleOf(position: Position): string {
    return capital(position.name);
}

export function capital(words: string): string {
    return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `2.4 m to port`, `on the centreline`. */
export function sideways(lateral: number): string {
    if (Math.abs(lateral) < 0.05) return 'on the centreline';
    return `${inMetres(Math.abs(lateral))} to ${lateral > 0 ? 'port' : 'starboard'}`;
}

const parts: Readonly<Record<WavePart, string>> = {
    'front lower': 'front face, lower third',
    'front middle': 'front face, middle third',
    'front upper': 'front face, upper third',
    crest: 'on the crest',
    back: 'back face',
    trough: 'in the trough',
};

export function partWords(part: WavePart): string {
    return parts[part];
}

export function fromWords(from: From | undefined): string | undefined {
    if (!from) return undefined;
    if (from.kind === 'halyard') return `halyard ${from.number}`;
    return from.kind === 'point' ? from.name : from.kind;
}

/** What hangs at the end of the line: `Ink, slant, 330 mm`. */
export function gearWords(line: SpreadLine): string | undefined {
    const { lure, teaser, bait } = line;
    const gear = lure ?? teaser ?? bait;
    if (!gear) return undefined;
    const { title, kind, length } = gear.value;
    const size = length && lureLength(length.si, length.quantity);
    const what = bait ? `bait${kind ? `, ${kind.value}` : ''}` : kind?.value;
    return [title, what, size].filter(Boolean).join(', ');
}
