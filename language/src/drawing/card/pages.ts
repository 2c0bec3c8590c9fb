import { planFoot } from '../foot.ts';
import { palettes } from '../palette.ts';
import { escapeText, rectangle, type Spot, short } from '../pen.ts';
import { type Scene, sceneWords } from '../scene.ts';
import { svgOf } from '../svg.ts';
import { drawBlock } from '../svg-block.ts';
import { svgFile } from '../svg-file.ts';
import type { CardContents } from './contents.ts';
import { type PaperName, type Setting, settingOn, sizes } from './paper.ts';
import { evenRoom, fill, fillColumns, type Piece, stack } from './piece.ts';
import { footOf, proseOf } from './prose.ts';
import { sectionsOf } from './sections.ts';
import { tablesFor } from './table.ts';

export interface CardWishes {
    readonly paper?: PaperName;
}

const shortCaution =
    'Planning aids: scale, measured crest and skipper first; law and event’s rules before this card.';

/** The card as SVG files, one a page: the picture, the table, then everything else in columns. */
export function cardPages(card: CardContents, scene: Scene, { paper = 'a4' }: CardWishes = {}): string[] {
    return printed(card, scene, settingOn(paper));
}

/** The card as one SVG file, as long as it needs to be. */
export function cardSheet(card: CardContents, scene: Scene, { paper = 'a4' }: CardWishes = {}): string {
    return printed(card, scene, settingOn(paper, true))[0]!;
}

function printed(card: CardContents, scene: Scene, setting: Setting): string[] {
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
    putPiece(pictureOf(scene, setting), 20);
    for (const { head, rows } of tablesFor(card.rows, width)) {
        putTable(head, rows, { page, put, turn, margin, bottom });
        page().end += 24;
    }
    let rest = sectionsOf(card).flatMap((section) => proseOf(section, columnWidth(setting)));
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
        const words = `${card.title} · ${card.fingerprint} · ${shortCaution}`;
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

interface Hand {
    readonly page: () => { readonly end: number };
    readonly put: (drawn: string, end: number) => void;
    readonly turn: () => void;
    readonly margin: number;
    readonly bottom: number;
}

function putTable(head: Piece, rows: readonly Piece[], { page, put, turn, margin, bottom }: Hand): void {
    let rest = [...rows];
    while (rest.length > 0) {
        const room = bottom - page().end - head.height;
        const [some, left] = fill(rest, room);
        if (some.length === 0 && page().end > margin) {
            turn();
            continue;
        }
        const shown = some.length === 0 ? rest.slice(0, 1) : some;
        const height = head.height + shown.reduce((sum, each) => sum + each.height, 0);
        const drawn = stack([head, ...shown], [margin, page().end]);
        put(`<g data-tag="Table">${drawn}</g>`, page().end + height);
        rest = some.length === 0 ? rest.slice(1) : left;
        if (rest.length > 0) turn();
    }
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
        { width, beside: false, room: 0, cells: [{ caption: 'Fingerprint', value: card.fingerprint }] },
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

/** The plan from above, as it is drawn anywhere else, made to fit between the sheet's edges. */
function pictureOf(scene: Scene, { width, picture }: Setting): Piece {
    const svg = svgOf(scene, {
        bow: 'right',
        paper: { width: width / 10, height: picture / 10 },
        foot: false,
    });
    const [, wide, high] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!.map(Number);
    const inner = svg.slice(svg.indexOf('<g font-family'), svg.lastIndexOf('</svg>'));
    const scale = Math.min(1, width / wide!);
    const alt = sceneWords(scene)
        .slice(0, 1 + scene.notes.length)
        .join(' ');
    return {
        height: high! * scale,
        draw: ([, y]: Spot) =>
            `<g data-tag="Figure" data-mark="From above" data-alt="${escapeText(alt)}" transform="translate(${short((width - wide! * scale) / 2)} ${short(y)}) scale(${scale.toFixed(5)})">${inner}</g>`,
    };
}
