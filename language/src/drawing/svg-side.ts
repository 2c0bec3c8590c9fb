import { margins } from './chart.ts';
import type { SideElement } from './elements-side.ts';
import { placeFoot, planFoot } from './foot.ts';
import { letters } from './labels.ts';
import { lureShapes } from './lure-shapes.ts';
import type { Palette } from './palette.ts';
import { palettes } from './palette.ts';
import { circle, line, path, rectangle, type Spot, short, text } from './pen.ts';
import { type SideScene, sideWords } from './scene-side.ts';
import { layOutSide, type SideSheet } from './sheet-side.ts';
import type { SvgWishes } from './svg.ts';
import { drawBlock, drawNotes } from './svg-block.ts';
import { grouper, svgFile } from './svg-file.ts';
import { drawLabel, drawLeader } from './svg-labels.ts';

/** The view from the side as an SVG file; wishes as for the view from above, but for the bow and the fans. */
export function svgOfSide(scene: SideScene, wishes: SvgWishes = {}): string {
    const chosen = wishes.palette ?? 'light';
    const palette = typeof chosen === 'string' ? palettes[chosen] : chosen;
    const sheet = layOutSide(scene, (wishes.paper?.width ?? 297) * 10);
    const plan =
        wishes.foot === false
            ? undefined
            : planFoot(scene, {
                  width: sheet.width - 2 * margins.page,
                  beside: true,
                  room: 700,
                  cells: [
                      { caption: 'Scale of lengths', value: `1 : ${sheet.denominator}` },
                      { caption: 'Heights', value: exaggerationWords(sheet.exaggeration) },
                  ],
              });
    const least = sheet.bottom + margins.page + (plan ? plan.height + margins.foot : 0);
    const height = Math.ceil(Math.max(least, (wishes.paper?.height ?? 0) * 10));
    const foot = plan && placeFoot(plan, margins.page, height - margins.page);
    const group = grouper(wishes.live ?? false);
    const size = { width: sheet.width, height };
    const body = [
        rectangle([0, 0], size.width, size.height, { fill: palette.paper }),
        ...sheet.labels.map((label) => drawLeader(label, palette)),
        ...scene.elements.map((element) =>
            group(
                element.id,
                element.name,
                drawElement(element, sheet, palette),
                element.role,
                element.position,
            ),
        ),
        drawRulers(scene, sheet, palette),
        ...sheet.labels.map((label) =>
            group(label.label.note.id, '', drawLabel(label, palette), 'note', label.label.note.position),
        ),
        foot ? drawNotes(foot, palette, (id, drawn) => group(id, '', drawn, 'finding')) : '',
        foot ? drawBlock(foot, palette) : '',
    ];
    return svgFile(size, sideWords(scene), body, {
        live: wishes.live ?? false,
        facts: {
            plan: scene.plan,
            view: 'side',
            'per-metre': short(10_000 / sheet.denominator),
            exaggeration: String(sheet.exaggeration),
        },
    });
}

function exaggerationWords(exaggeration: number): string {
    return exaggeration === 1 ? 'as lengths' : `${exaggeration} times lengths`;
}

function drawElement(element: SideElement, sheet: SideSheet, palette: Palette): string {
    const { toPage } = sheet;
    const { ink, soft, paper, water } = palette;
    switch (element.role) {
        case 'face':
            return (
                path(element.outline.map(toPage), { fill: palette.lower }, true) +
                waveNumber(element, sheet, palette)
            );
        case 'surface':
            return path(element.curve.map(toPage), { stroke: water, width: 3.5 });
        case 'hull':
            return path(
                element.outline.map(toPage),
                { stroke: soft, width: 3, fill: paper, dash: '14 7' },
                true,
            );
        case 'pole':
            return line(toPage(element.foot), toPage(element.tip), { stroke: ink, width: 7, cap: 'round' });
        case 'line': {
            const style =
                element.what === 'teaser' ? { stroke: soft, width: 2.5 } : { stroke: ink, width: 3.5 };
            return (
                path(element.rod.map(toPage), { stroke: soft, width: 2.5 }) +
                path(element.air.map(toPage), style) +
                path(element.water.map(toPage), { ...style, dash: '14 9' })
            );
        }
        case 'tow point':
            return circle(toPage(element.point), 9, { fill: ink });
        case 'lure':
            return drawLure(element, sheet, palette);
    }
}

/** Length of a lure on paper, whatever its size: from the side it only shows its kind. */
const lureLength = 70;

function drawLure(
    { shape, point }: Extract<SideElement, { role: 'lure' }>,
    { toPage }: SideSheet,
    { ink, paper }: Palette,
): string {
    const [x, y] = toPage(point);
    return lureShapes[shape]
        .map(({ as, points }) => {
            const spots = points.map(([along, out]): Spot => [x + along * lureLength, y - out * lureLength]);
            if (as === 'solid') return path(spots, { fill: ink, stroke: ink, width: 2 }, true);
            if (as === 'hollow') return path(spots, { fill: paper, stroke: ink, width: 3 }, true);
            if (as === 'dashed')
                return path(spots, { fill: paper, stroke: ink, width: 3, dash: '6 5' }, true);
            return path(spots, as === 'cut' ? { stroke: paper, width: 3 } : { stroke: ink, width: 1.6 });
        })
        .join('');
}

function waveNumber(
    { wave, crest }: Extract<SideElement, { role: 'face' }>,
    { toPage, waterline }: SideSheet,
    { ink, paper }: Palette,
): string {
    const [x] = toPage(crest);
    return text([x, waterline + 58], String(wave), {
        size: letters.small,
        weight: 'italic',
        anchor: 'middle',
        fill: ink,
        halo: paper,
    });
}

/** Still water, distances astern along it, heights at either end. */
function drawRulers({ rulers, extent }: SideScene, sheet: SideSheet, { ink, soft }: Palette): string {
    const { toPage, waterline, left, right, top } = sheet;
    const style = { size: letters.small, fill: ink } as const;
    let drawn =
        line([left, waterline], [right, waterline], { stroke: soft, width: 1.6, dash: '40 9 6 9' }) +
        line([left, top], [left, waterline], { stroke: ink, width: 2.5 }) +
        line([right, top], [right, waterline], { stroke: ink, width: 2.5 });
    for (let up = 0; up <= extent.up; up += rulers.up.step) {
        const y = toPage([0, up])[1];
        const words = up === 0 ? '0 m' : String(Math.round(up * 100) / 100);
        drawn +=
            line([left - 12, y], [left, y], { stroke: ink, width: 2.5 }) +
            line([right, y], [right + 12, y], { stroke: ink, width: 2.5 }) +
            text([left - 18, y + 11], words, { ...style, anchor: 'end' }) +
            text([right + 18, y + 11], words, style);
    }
    for (let astern = 0; astern <= extent.astern; astern += rulers.astern.step) {
        const [x] = toPage([-astern, 0]);
        drawn +=
            line([x, top - 14], [x, top], { stroke: ink, width: 2.5 }) +
            text([x, top - 22], astern === 0 ? '0 m astern' : String(astern), { ...style, anchor: 'middle' });
    }
    return drawn + line([left, top], [right, top], { stroke: ink, width: 2.5 });
}
