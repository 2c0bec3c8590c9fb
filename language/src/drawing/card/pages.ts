import { planFoot } from '../foot.ts';
import { allInOurLetters, drawingInOurLetters, hasStrangeLetters, inOurLetters } from '../letters.ts';
import { palettes } from '../palette.ts';
import { escapeText, rectangle, type Spot, short } from '../pen.ts';
import { type Scene, sceneWords } from '../scene.ts';
import { svgOf } from '../svg.ts';
import { drawBlock } from '../svg-block.ts';
import { svgFile } from '../svg-file.ts';
import { cutToWidth } from '../text-width.ts';
import { clearingColumns, helmCells, workingColumns } from './columns.ts';
import type { CardContents } from './contents.ts';
import { type PaperName, type Setting, settingOn, sizes } from './paper.ts';
import { evenRoom, fill, fillColumns, heightOf, type Piece, stack } from './piece.ts';
import { footOf, headingOf, proseOf } from './prose.ts';
import { clearingRows, clearingTitle, sectionsOf } from './sections.ts';
import { columnGap, type PlacedTable, tablesFor } from './table.ts';

export interface CardWishes {
    readonly paper?: PaperName;
}

const shortCaution =
    'Planning aids: scale, measured crest and skipper first; law and event’s rules before this card.';
const footCaution = 'Planning aids: scale, crest, skipper, law and event’s rules first.';

/** The card as SVG files, one a page: the picture, the table, then everything else in columns. */
export function cardPages(card: CardContents, scene: Scene, { paper = 'a4' }: CardWishes = {}): string[] {
    return printed(card, scene, settingOn(paper));
}

/** The card as one SVG file, as long as it needs to be. */
export function cardSheet(card: CardContents, scene: Scene, { paper = 'a4' }: CardWishes = {}): string {
    return printed(card, scene, settingOn(paper, true))[0]!;
}

function printed(whole: CardContents, scene: Scene, setting: Setting): string[] {
    const card = lettered(whole);
    const { height, margin } = setting;
    const width = setting.width - 2 * margin;
    const footRoom = sizes.footLine + 20;
    const bottom = height - margin - footRoom;
    const pages: { drawn: string; end: number }[] = [{ drawn: '', end: margin }];
    const page = () => pages.at(-1)!;
    const put = (drawn: string, end: number) => {
        page().drawn += drawn;
        page().end = end;
    };
    const turn = () => pages.push({ drawn: '', end: margin });
    const putPiece = (piece: Piece, after = 0) => {
        if (page().end > margin && page().end + piece.height > bottom) turn();
        put(piece.draw([margin, page().end]), page().end + piece.height + after);
    };

    putPiece(titleBlock(card, width), 20);
    putPiece(pictureOf(scene, setting), 10);
    const hand = { page, put, turn, margin, bottom };
    for (const table of tablesFor(workingColumns(card.rows), card.rows, width)) putTable(table, hand);
    const clearings = clearingRows(card);
    const heading = headingOf({ id: 'clearing', title: clearingTitle }, width);
    const tables = tablesFor(clearingColumns(clearings), clearings, width, columnGap.words);
    for (const [index, table] of tables.entries()) putTable(table, hand, index === 0 ? heading : undefined);
    let rest = sectionsOf(card, tables.length > 0).flatMap((section) =>
        proseOf(section, columnWidth(setting)),
    );
    while (rest.length > 0) {
        const top = page().end;
        const endless = !Number.isFinite(height);
        const room = Math.min(evenRoom(rest, setting.columns), endless ? Infinity : bottom - top);
        if (room < 200 && !endless && top > margin) {
            turn();
            continue;
        }
        const [columns, left] = fillColumns(rest, setting.columns, room);
        if (left.length === rest.length) {
            if (top > margin) {
                turn();
                continue;
            }
            // Taller than a page: better over its edge than never.
            put(stack(rest.slice(0, 1), [margin, top]), top);
            rest = rest.slice(1);
            continue;
        }
        const drawn = columns.map((pieces, index) =>
            stack(pieces, [margin + index * (columnWidth(setting) + setting.gap), top]),
        );
        put(drawn.join(''), top + room);
        rest = left;
        if (rest.length > 0) turn();
    }
    return pages.map(({ drawn, end }, index) => {
        const tall = Number.isFinite(height) ? height : Math.ceil(end + margin + footRoom);
        const words = `${cutToWidth(card.title, width / 2, sizes.foot)} · ${card.fingerprint} · ${footCaution}`;
        const foot = footOf(words, `page ${index + 1} of ${pages.length}`, width);
        const size = { width: setting.width, height: tall };
        return svgFile(
            size,
            [`Deck card: ${card.title}`, `Page ${index + 1} of ${pages.length}.`],
            [
                rectangle([0, 0], size.width, size.height, { fill: palettes.light.paper }),
                drawn,
                foot.draw([margin, tall - margin - footRoom + 20]),
            ],
            { live: false, facts: { plan: card.plan, fingerprint: card.fingerprint } },
        );
    });
}

/** The card in letters that can be printed, and a note where that took some away. */
function lettered(card: CardContents): CardContents {
    if (!isCurtailed(card)) return card;
    return { ...allInOurLetters(card), notes: [...allInOurLetters(card.notes), curtailed] };
}

/** Whether a printed card cannot show every letter of it. */
export function isCurtailed(card: CardContents): boolean {
    return hasStrangeLetters(JSON.stringify(card));
}

const curtailed =
    'There is no face for some letters of the plan in print: they are counted, as in [5 letters]. ' +
    'The page for a telephone and the brief have them.';

interface Hand {
    readonly page: () => { readonly end: number };
    readonly put: (drawn: string, end: number) => void;
    readonly turn: () => void;
    readonly margin: number;
    readonly bottom: number;
}

/** Fewer are not worth a table's head at the foot of a page. */
const fewestRows = 2;

function putTable(
    { head, rows }: PlacedTable,
    { page, put, turn, margin, bottom }: Hand,
    title?: Piece,
): void {
    let rest = [...rows];
    let above = title;
    while (rest.length > 0) {
        const room = bottom - page().end - head.height - (above?.height ?? 0);
        const [some, left] = fill(rest, room);
        if (some.length < Math.min(fewestRows, rest.length) && page().end > margin) {
            turn();
            continue;
        }
        // A row that is taller than a page is better over its edge than never.
        const shown = some.length === 0 ? rest.slice(0, 1) : some;
        if (above) put(above.draw([margin, page().end]), page().end + above.height);
        above = undefined;
        const drawn = stack([head, ...shown], [margin, page().end]);
        put(`<g data-tag="Table">${drawn}</g>`, page().end + heightOf([head, ...shown]));
        rest = some.length === 0 ? rest.slice(1) : left;
        if (rest.length > 0) turn();
    }
    put('', page().end + 30);
}

function columnWidth({ width, margin, columns, gap }: Setting): number {
    return (width - 2 * margin - gap * (columns - 1)) / columns;
}

/** Title, facts and fingerprint, ruled as on an engineering drawing. */
function titleBlock(card: CardContents, width: number): Piece {
    const { title, doc, facts } = card;
    const { foot } = planFoot(
        {
            title: { title, ...(doc && { doc }), cells: facts, caution: shortCaution },
            marks: [],
            unknown: [],
            remarks: [],
        },
        {
            width,
            beside: false,
            room: 0,
            cells: [...helmCells(card), { caption: 'Fingerprint', value: card.fingerprint }],
        },
    );
    const height = foot.blockHeight;
    return {
        height,
        draw: ([x, y]) =>
            `<g data-tag="H1" data-mark="${escapeText(title)}">${drawBlock(
                { foot, notes: [x, y], block: { x, y, width, height } },
                palettes.light,
            )}</g>`,
    };
}

/** What the picture leaves blank above its labels and below its scale bar. */
const blank = { above: 60, below: 70 };

/** The plan from above, as it is drawn anywhere else, made to fit between the sheet's edges; the table names gear. */
function pictureOf(scene: Scene, { width, picture }: Setting): Piece {
    const notes = scene.notes.map(({ gear: _, ...note }) => note);
    const svg = svgOf(
        { ...scene, notes },
        { bow: 'right', paper: { width: picture.width / 10, height: picture.height / 10 }, foot: false },
    );
    const [, wide, high] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!.map(Number);
    // Without the picture's own paper: it would lie over the title block.
    const inner = svg
        .slice(svg.indexOf('<g font-family'), svg.lastIndexOf('</svg>'))
        .replace(/<rect [^>]*>/, '');
    const scale = Math.min(1, width / wide!);
    const alt = inOurLetters(
        sceneWords(scene)
            .slice(0, 1 + scene.notes.length)
            .join(' '),
    );
    return {
        height: (high! - blank.above - blank.below) * scale,
        draw: ([, y]: Spot) => {
            const [left, top] = [(width - wide! * scale) / 2, y - blank.above * scale].map(short);
            const words = escapeText(alt);
            return `<g data-tag="Figure" data-mark="From above" data-alt="${words}" transform="translate(${left} ${top}) scale(${scale.toFixed(5)})">${drawingInOurLetters(inner)}</g>`;
        },
    };
}
