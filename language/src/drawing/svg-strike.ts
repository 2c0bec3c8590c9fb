import { margins } from './chart.ts';
import { placeFoot, planFoot } from './foot.ts';
import { letters, markRoom } from './labels.ts';
import { palettes } from './palette.ts';
import { rectangle, text } from './pen.ts';
import { type StrikeScene, strikeWords } from './scene-strike.ts';
import { layOutStrike } from './sheet-strike.ts';
import type { SvgWishes } from './svg.ts';
import { drawBlock, drawNotes } from './svg-block.ts';
import { grouper, svgFile } from './svg-file.ts';
import { drawMark } from './svg-marks.ts';
import { drawRunOff, drawSpool, drawTension } from './svg-strike-plots.ts';
import { textWidth } from './text-width.ts';

/** A strike as an SVG file; wishes as for the view from above, but for the bow and the fans. */
export function svgOfStrike(scene: StrikeScene, wishes: SvgWishes = {}): string {
    const chosen = wishes.palette ?? 'light';
    const palette = typeof chosen === 'string' ? palettes[chosen] : chosen;
    const sheet = layOutStrike(scene, (wishes.paper?.width ?? 210) * 10);
    const plan =
        wishes.foot === false
            ? undefined
            : planFoot(scene, { width: sheet.width - 2 * margins.page, beside: false, room: 420, cells: [] });
    const least = sheet.bottom + margins.page + (plan ? plan.height + margins.foot : 0);
    const height = Math.ceil(Math.max(least, (wishes.paper?.height ?? 0) * 10));
    const foot = plan && placeFoot(plan, margins.page, height - margins.page);
    const live = wishes.live ?? false;
    const group = grouper(live);
    const headed = { size: letters.name, weight: 'bold' } as const;
    const beside = margins.page + textWidth(scene.heading, letters.name, 'bold') + 40;
    const body = [
        rectangle([0, 0], sheet.width, height, { fill: palette.paper }),
        text([margins.page, margins.page + 40], scene.heading, { ...headed, fill: palette.ink }),
        ...scene.marks
            .slice(0, Math.max(0, Math.floor((sheet.width - margins.page - beside) / markRoom)))
            .map((mark, index) => drawMark([beside + index * markRoom, margins.page + 26], mark, palette)),
        group('tension', 'Tension at the hook against time.', drawTension(scene, sheet, palette), 'plot'),
        group('run', 'Line run off against time.', drawRunOff(scene, sheet, palette), 'plot'),
        group('spool', 'Drag against line off the spool.', drawSpool(scene, sheet, palette), 'plot'),
        foot ? drawNotes(foot, palette, (id, drawn) => group(id, '', drawn, 'finding')) : '',
        foot ? drawBlock(foot, palette) : '',
    ];
    return svgFile({ width: sheet.width, height }, strikeWords(scene), body, {
        live,
        facts: { plan: scene.plan, view: 'strike', position: scene.position },
    });
}
