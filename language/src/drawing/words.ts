import type { WavePart } from '../plan/figures.ts';
import type { From, Position, Side, SpreadLine } from '../plan/model.ts';
import { capital } from '../plan/wording.ts';
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

/** `2.4 m to port`, `on the centreline`. */
export function sideways(lateral: number): string {
    if (Math.abs(lateral) < 0.05) return 'on the centreline';
    return `${inMetres(Math.abs(lateral))} to ${lateral > 0 ? 'port' : 'starboard'}`;
}

/** `Port short corner, port long rigger and centre shotgun`. */
export function andList(titles: readonly string[]): string {
    const words = titles.map((title, i) =>
        i === 0 ? title : title.charAt(0).toLowerCase() + title.slice(1),
    );
    return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
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

/**
 * Text that came from a file, fit to be shown: without control characters, halves of characters, and the marks
 * that turn the direction of writing, by which a name could pretend to be something else.
 */
export function plainText(text: string): string {
    // Nearly every text is fit as it is, and a picture asks for hundreds.
    if (/^[ -~\u00a1-\u02ff\u2010-\u2026]*$/.test(text)) return text;
    return text.replace(/[\t\n\r]/g, ' ').replace(unfit, '');
}

const unfit =
    /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
