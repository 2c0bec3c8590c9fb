import { palettes } from '../palette.ts';
import { escapeText, line, text } from '../pen.ts';
import { cutToWidth, textWidth, type Weight } from '../text-width.ts';
import { bound } from './breaking.ts';
import { sizes } from './paper.ts';
import type { Piece } from './piece.ts';
import type { Item, Section } from './sections.ts';

const { ink, soft } = palettes.light;

/** A run of words in one weight on one line. */
interface Run {
    readonly words: string;
    readonly weight: Weight;
    readonly x: number;
}

/** The heading of a section and its items, for a column of this width. */
export function proseOf(section: Section, width: number): Piece[] {
    const again = againOf(section, width);
    const [first, ...others] = section.items.flatMap((item) => itemPieces(item, width));
    return [
        headingOf(section, width),
        ...(first ? [first] : []),
        ...others.map((piece) => ({ ...piece, again })),
        spacer,
    ];
}

/** Kept with what follows it; a bookmark of its own. */
export function headingOf({ id, title }: Pick<Section, 'id' | 'title'>, width: number): Piece {
    return {
        height: sizes.headingLine,
        keep: true,
        draw: ([x, y]) =>
            `<g data-tag="H2" data-mark="${escapeText(title)}" data-id="${id}">` +
            text([x, y + 44], title, { size: sizes.heading, weight: 'bold', fill: ink }) +
            '</g>' +
            line([x, y + 56], [x + width, y + 56], { stroke: ink, width: 3 }),
    };
}

/** Where a section goes on: for the eye alone, since whoever hears it read comes from its beginning. */
function againOf({ title }: Section, width: number): Piece {
    return {
        height: sizes.headingLine,
        keep: true,
        draw: ([x, y]) =>
            '<g data-tag="Artifact">' +
            text([x, y + 44], `${title}, continued`, { size: sizes.text, weight: 'italic', fill: soft }) +
            '</g>' +
            line([x, y + 56], [x + width, y + 56], { stroke: ink, width: 1.5 }),
    };
}

const spacer: Piece = { height: 14, blank: true, draw: () => '' };

/** So many lines of one item stay together. */
const together = 10;

function itemPieces(item: Item, width: number): Piece[] {
    const indent = item.number === undefined ? 0 : 56;
    const lines = runsOf(item, width - indent);
    const pieces: Piece[] = [];
    for (let from = 0; from < lines.length; from += together) {
        const some = lines.slice(from, from + together);
        const last = from + together >= lines.length;
        pieces.push({
            height: some.length * sizes.line + (last ? sizes.between : 0),
            draw: ([x, y]) => {
                const number =
                    item.number !== undefined && from === 0
                        ? text([x, y + sizes.text], `${item.number}`, {
                              size: sizes.text,
                              weight: 'bold',
                              fill: ink,
                          })
                        : '';
                const words = some
                    .map((runs, row) =>
                        runs
                            .map((run) =>
                                text([x + indent + run.x, y + row * sizes.line + sizes.text], run.words, {
                                    size: sizes.text,
                                    weight: run.weight,
                                    fill: ink,
                                }),
                            )
                            .join(''),
                    )
                    .join('');
                return `<g data-tag="P">${number}${words}</g>`;
            },
        });
    }
    return pieces;
}

/** Words broken between blanks, the lead in bold before the rest. */
function runsOf({ lead, words }: Item, width: number): Run[][] {
    const tokens = [
        ...(lead ? bound(`${lead}:`).map((word) => ({ word, weight: 'bold' as Weight })) : []),
        ...bound(words).map((word) => ({ word, weight: 'regular' as Weight })),
    ].filter(({ word }) => word);
    const blank = textWidth(' ', sizes.text);
    const lines: Run[][] = [[]];
    let used = 0;
    for (const { word, weight } of tokens) {
        const shown = cutToWidth(word, width, sizes.text, weight);
        const wide = textWidth(shown, sizes.text, weight);
        if (used > 0 && used + blank + wide > width) {
            lines.push([]);
            used = 0;
        }
        const runs = lines.at(-1)!;
        const last = runs.at(-1);
        const x = used > 0 ? used + blank : 0;
        if (last?.weight === weight) runs[runs.length - 1] = { ...last, words: `${last.words} ${shown}` };
        else runs.push({ words: shown, weight, x });
        used = x + wide;
    }
    return lines;
}

/** At the foot of every page: what the sheet is, and who has the last word. */
export function footOf(words: string, page: string, width: number): Piece {
    return {
        height: sizes.footLine + 10,
        draw: ([x, y]) =>
            line([x, y], [x + width, y], { stroke: ink, width: 2 }) +
            '<g data-tag="Artifact">' +
            text([x, y + sizes.footLine], cutToWidth(words, width - 240, sizes.foot, 'italic'), {
                size: sizes.foot,
                weight: 'italic',
                fill: soft,
            }) +
            text([x + width, y + sizes.footLine], page, { size: sizes.foot, fill: soft, anchor: 'end' }) +
            '</g>',
    };
}
