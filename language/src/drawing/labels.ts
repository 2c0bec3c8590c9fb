import type { Mark } from './marks.ts';
import type { Note } from './notes.ts';
import { cutToWidth, textWidth, type Weight, wrap } from './text-width.ts';

/** A line of a label; with marks, their shapes stand before the words. Sizes in tenths of a millimetre. */
export interface LabelLine {
    readonly words: string;
    readonly size: number;
    readonly weight: Weight;
    readonly soft?: boolean;
    readonly marks?: readonly Mark[];
}

export interface Label {
    readonly note: Note;
    readonly lines: readonly LabelLine[];
    readonly width: number;
    readonly height: number;
}

/** How much a label says: everything, or what a crowded sheet has room for. */
export type Fullness = 'full' | 'brief';

/** Letter heights, tenths of a millimetre: the first two are to be read at arm's length. */
export const letters = { name: 44, figure: 42, gear: 34, small: 30, caption: 24 } as const;

/** Baseline to baseline, in letter heights. */
export const leading = 1.2;

/** Diameter of a mark, and the room that it takes in a line of text. */
export const markSize = 46;
export const markRoom = 56;

export function labelOf(note: Note, fullness: Fullness, maxWidth: number): Label {
    return labelOfLines(note, fullness === 'full' ? fullLines(note, maxWidth) : briefLines(note, maxWidth));
}

export function labelOfLines(note: Note, lines: readonly LabelLine[]): Label {
    return {
        note,
        lines,
        width: Math.max(...lines.map(lineWidth)),
        height: lines.reduce((height, line) => height + lineHeight(line), 0),
    };
}

function lineWidth({ words, size, weight, marks = [] }: LabelLine): number {
    return marks.length * markRoom + textWidth(words, size, weight);
}

export function lineHeight({ size, marks }: LabelLine): number {
    return Math.max(size * leading, marks ? markSize + 6 : 0);
}

function fullLines(note: Note, maxWidth: number): LabelLine[] {
    const { gear, marks, part, onFace } = note;
    const offFace = onFace === false && part;
    const spoken = marks.slice(0, 3);
    const rest = marks.length - spoken.length;
    return [
        ...nameLines(note, maxWidth, 2),
        ...setTogether(figureWords(note), letters.figure, maxWidth),
        ...changeLines(note, maxWidth),
        ...(offFace ? setWords(part, letters.gear, 'italic', maxWidth, 1) : []),
        ...(gear ? setWords(gear, letters.gear, 'regular', maxWidth, 2).map(soften) : []),
        ...spoken.map((mark): LabelLine => {
            const words = mark.rule.replaceAll('-', ' ');
            const room = maxWidth - markRoom;
            const size = letters.gear;
            return { words: cutToWidth(words, room, size, 'bold'), size, weight: 'bold', marks: [mark] };
        }),
        ...(rest > 0 ? setWords(`and ${rest} more`, letters.gear, 'regular', maxWidth, 1) : []),
    ];
}

function briefLines(note: Note, maxWidth: number): LabelLine[] {
    const marks = note.marks.slice(0, Math.max(1, Math.floor(maxWidth / markRoom)));
    return [
        ...nameLines(note, maxWidth, 1),
        ...setTogether(figureWords(note), letters.figure, maxWidth),
        ...changeLines(note, maxWidth).slice(0, 2),
        ...(marks.length > 0 ? [{ words: '', size: letters.gear, weight: 'bold', marks } as const] : []),
    ];
}

/** What changed: bold, and led in by a mark, so that it is found without colour. */
function changeLines({ changes = [] }: Note, maxWidth: number): LabelLine[] {
    return changes.flatMap((words) => setWords(`» ${words}`, letters.gear, 'bold', maxWidth, 3));
}

/** `11.9 m · wave 2`, or what is missing. */
function figureWords({ distance, wave, what, point, towPoint }: Note): string[] {
    if (what === 'standby') return ['standing by'];
    if (!distance) return [towPoint ? 'distance not known' : 'not placed'];
    return [point ? distance : `${distance}, side not known`, ...(wave ? [wave] : [])];
}

/** On one line where there is room for both, else one below the other. */
export function setTogether(words: readonly string[], size: number, width: number): LabelLine[] {
    const together = words.join(' · ');
    const lines = textWidth(together, size) <= width ? [together] : words;
    return lines.flatMap((line) => setWords(line, size, 'regular', width, 1));
}

function nameLines({ title }: Note, maxWidth: number, most: number): LabelLine[] {
    return setWords(title, letters.name, 'bold', maxWidth, most);
}

/** Words in at most so many lines, the last one cut where they are more. */
export function setWords(
    words: string,
    size: number,
    weight: Weight,
    width: number,
    most: number,
): LabelLine[] {
    const lines = wrap(words, width, size, weight);
    const shown = lines.slice(0, most);
    if (lines.length > most) {
        shown[most - 1] = cutToWidth(lines.slice(most - 1).join(' '), width, size, weight);
    }
    return shown.map((line) => ({ words: line, size, weight }));
}

function soften(line: LabelLine): LabelLine {
    return { ...line, soft: true };
}

/**
 * Places along an axis for things that must not overlap, each as near as can be to where it wants to be: the
 * least sum of squared moves that keeps their order.
 *
 * @param wanted  where each wants its middle, ascending, with its size
 * @returns the middles, or `undefined` where the stretch is too short for them all
 */
export function place(
    wanted: readonly { readonly at: number; readonly size: number }[],
    from: number,
    to: number,
    gap: number,
): number[] | undefined {
    const first = wanted[0];
    const last = wanted.at(-1);
    if (!first || !last) return [];
    // In coordinates that squeeze out sizes and gaps, "no overlap" is "not descending".
    const squeezed: number[] = [0];
    for (let i = 1; i < wanted.length; i++) {
        squeezed.push(squeezed[i - 1]! + (wanted[i - 1]!.size + wanted[i]!.size) / 2 + gap);
    }
    const least = from + first.size / 2;
    const most = to - last.size / 2 - squeezed.at(-1)!;
    if (most < least - 1e-9) return undefined;
    const blocks: { sum: number; count: number }[] = [];
    for (const [i, { at }] of wanted.entries()) {
        let block = { sum: at - squeezed[i]!, count: 1 };
        for (let before = blocks.at(-1); before && mean(before) > mean(block); before = blocks.at(-1)) {
            blocks.pop();
            block = { sum: block.sum + before.sum, count: block.count + before.count };
        }
        blocks.push(block);
    }
    return blocks
        .flatMap((block) => Array<number>(block.count).fill(Math.min(most, Math.max(least, mean(block)))))
        .map((middle, i) => middle + squeezed[i]!);
}

function mean({ sum, count }: { sum: number; count: number }): number {
    return sum / count;
}
