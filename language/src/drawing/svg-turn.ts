import { margins } from './chart.ts';
import { placeFoot, planFoot } from './foot.ts';
import { letters } from './labels.ts';
import { palettes } from './palette.ts';
import { rectangle, short, text } from './pen.ts';
import { type TurnScene, turnWords } from './scene-turn.ts';
import { layOutTurn } from './sheet-turn.ts';
import type { SvgWishes } from './svg.ts';
import { drawBlock, drawNotes } from './svg-block.ts';
import { grouper, svgFile } from './svg-file.ts';
import { drawCleanTurns, drawMoments, drawNearest } from './svg-turn-plots.ts';
import { drawDetail, drawTrack } from './svg-turn-water.ts';

/** A turn as an SVG file; wishes as for the view from above, but for the bow and the fans. */
export function svgOfTurn(scene: TurnScene, wishes: SvgWishes = {}): string {
    const chosen = wishes.palette ?? 'light';
    const palette = typeof chosen === 'string' ? palettes[chosen] : chosen;
    const sheet = layOutTurn(scene, (wishes.paper?.width ?? 210) * 10);
    const plan =
        wishes.foot === false
            ? undefined
            : planFoot(scene, {
                  width: sheet.width - 2 * margins.page,
                  beside: false,
                  room: 420,
                  cells: sheet.water
                      ? [
                            { caption: 'Scale of the turn', value: `1 : ${sheet.water.denominator}` },
                            { caption: 'Scale of the moment', value: `1 : ${sheet.detail!.denominator}` },
                        ]
                      : [],
              });
    const least = sheet.bottom + margins.page + (plan ? plan.height + margins.foot : 0);
    const height = Math.ceil(Math.max(least, (wishes.paper?.height ?? 0) * 10));
    const foot = plan && placeFoot(plan, margins.page, height - margins.page);
    const live = wishes.live ?? false;
    const group = grouper(live);
    const body = [
        rectangle([0, 0], sheet.width, height, { fill: palette.paper }),
        ...sheet.heading.map((words, index) =>
            text([margins.page, margins.page + 40 + 52 * index], words, {
                size: letters.name,
                weight: 'bold',
                fill: palette.ink,
            }),
        ),
        drawTrack(scene, sheet, palette, group),
        drawDetail(scene, sheet, palette, group),
        drawNearest(scene, sheet, palette),
        drawCleanTurns(scene, sheet, palette),
        drawMoments(scene, sheet, palette),
        foot ? drawNotes(foot, palette, (id, drawn) => group(id, '', drawn, 'finding')) : '',
        foot ? drawBlock(foot, palette) : '',
    ];
    return svgFile({ width: sheet.width, height }, turnWords(scene), body, {
        live,
        facts: {
            plan: scene.plan,
            view: 'turn',
            ...(sheet.water && { 'per-metre': short(10_000 / sheet.water.denominator) }),
        },
    });
}
