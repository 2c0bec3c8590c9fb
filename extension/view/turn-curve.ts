import type { Palette } from '../../language/src/drawing/palette.ts';
import { circle, line, path, rectangle, text } from '../../language/src/drawing/pen.ts';
import { axisTo, plotIn } from '../../language/src/drawing/plot.ts';
import { svgFile } from '../../language/src/drawing/svg-file.ts';
import { drawCleanTurns } from '../../language/src/drawing/svg-turn-plots.ts';
import { inMetres } from '../../language/src/drawing/words.ts';
import type { TurnScene } from '../../language/src/editor/protocol.ts';
import type { Size } from './camera.ts';

const letter = 38;

/**
 * Distance of the closest pair over the time that the scrubber below it goes through.
 *
 * @param inset  from where to where the scrubber's thumb goes, from either edge
 */
export function drawCurve(scene: TurnScene, palette: Palette, size: Size, inset: number): string {
    const { nearest, times } = scene;
    const { ink, soft, accent, paper } = palette;
    const top = 52;
    const box = { x: inset, y: top, width: size.width - 2 * inset, height: size.height - top - 8 };
    const end = times.at(-1) ?? 1;
    const most = nearest ? Math.max(...nearest.distance, 2 * nearest.contact) : 1;
    const plot = plotIn(box, { ...axisTo(end, '', 10), to: end }, axisTo(most, '', 4));
    const body = nearest
        ? [
              line([box.x, box.y + box.height], [box.x + box.width, box.y + box.height], {
                  stroke: soft,
                  width: 2,
              }),
              line(plot.toPage(0, nearest.contact), plot.toPage(end, nearest.contact), {
                  stroke: ink,
                  width: 3,
                  dash: '14 9',
              }),
              text(
                  [box.x + 6, plot.toPage(0, nearest.contact)[1] - 8],
                  `touching, ${inMetres(nearest.contact)}`,
                  {
                      size: letter * 0.85,
                      fill: soft,
                      halo: paper,
                  },
              ),
              path(
                  times.map((time, index) => plot.toPage(time, nearest.distance[index]!)),
                  { stroke: ink, width: 6 },
              ),
              circle(plot.toPage(nearest.time, nearest.least), 16, { fill: paper, stroke: accent, width: 7 }),
              text(
                  [box.x, 34],
                  `Metres between ${nearest.positions.join(' and ')}, at least ${inMetres(nearest.least)}`,
                  {
                      size: letter,
                      fill: ink,
                  },
              ),
          ]
        : [text([box.x, 34], 'No two lines to tell apart.', { size: letter, fill: ink })];
    const mark = scene.trouble?.grave
        ? text([plot.toPage(scene.trouble.time, 0)[0], box.y + 34], '▲', {
              size: letter,
              weight: 'bold',
              fill: accent,
              anchor: 'middle',
              halo: paper,
          })
        : '';
    const words = nearest
        ? `Distance of ${nearest.positions.join(' and ')} through the turn.`
        : 'No two lines to tell apart.';
    return svgFile(
        size,
        [words],
        [rectangle([0, 0], size.width, size.height, { fill: paper }), ...body, mark],
        { live: false, facts: {} },
    );
}

/** The tightest clean turn each way as arcs to one scale. */
export function drawArcs(scene: TurnScene, palette: Palette): string {
    const size = { width: 660, height: 340 };
    const clean = { x: 10, y: 5, width: size.width - 20, height: size.height - 10 };
    const paper = rectangle([0, 0], size.width, size.height, { fill: palette.paper });
    const { port, starboard } = scene.clean;
    const words = `Tightest clean turns: ${port.words}; ${starboard.words}.`;
    return svgFile(size, [words], [paper, drawCleanTurns(scene, { clean }, palette)], {
        live: false,
        facts: {},
    });
}
