import type { SceneElement } from './elements.ts';
import { type Palette, type PaletteName, palettes } from './palette.ts';
import { circle, rectangle, short } from './pen.ts';
import { type Scene, sceneWords } from './scene.ts';
import { type CompareScene, compareWords } from './scene-compare.ts';
import { layOut, lureOnPaper, type Sheet, type SheetWishes } from './sheet.ts';
import { drawBlock, drawNotes } from './svg-block.ts';
import { type Group, grouper, svgFile } from './svg-file.ts';
import { drawFrame, drawScaleBar, drawTrack } from './svg-frame.ts';
import { drawGearElement } from './svg-gear.ts';
import { drawGhost, ghostPalette } from './svg-ghosts.ts';
import { drawLabel, drawLeader } from './svg-labels.ts';
import { drawWaterElement, drawWaveNumbers } from './svg-water.ts';

export interface SvgWishes extends SheetWishes {
    /** `light` by default, whatever the screen that it is asked from looks like. */
    readonly palette?: PaletteName | Palette;
    /** Also draw how far each line wanders. */
    readonly fans?: boolean;
    /** For a view that people move about in: every element can be reached by keyboard and has its own name. */
    readonly live?: boolean;
}

/**
 * The scene as an SVG file of its own: plain text and shapes, colours resolved, in tenths of a millimetre; no
 * script, style, link or foreign content, so that drawing programs, offices and browsers show the same.
 * Elements carry `data-id`, the scene's; the root says how the page relates to the water.
 */
export function svgOf(scene: Scene, wishes: SvgWishes = {}): string {
    return drawSheet(scene, wishes, sceneWords(scene), () => []);
}

/** Two versions of a plan on one sheet, the earlier one in broken lines below the later. */
export function svgOfChanges(scene: CompareScene, wishes: SvgWishes = {}): string {
    const above: Scene = { ...scene, view: 'above' };
    return drawSheet(above, wishes, compareWords(scene), (sheet, palette, group) => {
        const ghostly = ghostPalette(palette);
        return scene.ghosts.map((ghost) => drawGhost(ghost, sheet, ghostly, group));
    });
}

function drawSheet(
    scene: Scene,
    wishes: SvgWishes,
    words: readonly string[],
    drawBelow: (sheet: Sheet, palette: Palette, group: Group) => readonly string[],
): string {
    const sheet = layOut(scene, wishes);
    const chosen = wishes.palette ?? 'light';
    const palette = typeof chosen === 'string' ? palettes[chosen] : chosen;
    const group = grouper(wishes.live ?? false);
    const shown = scene.elements.filter(({ role }) => role !== 'fan' || wishes.fans);
    const isWater = (role: SceneElement['role']) => ['face', 'wash', 'crest', 'wedge'].includes(role);
    const draw = (element: SceneElement) =>
        group(
            element.id,
            element.name,
            drawWaterElement(element, sheet, palette) + drawGearElement(element, sheet, palette),
            element.role,
        );
    const body = [
        rectangle([0, 0], sheet.width, sheet.height, { fill: palette.paper }),
        ...shown.filter(({ role }) => isWater(role)).map(draw),
        drawTrack(scene, sheet, palette),
        drawWaveNumbers(scene, sheet, palette),
        ...sheet.labels.map((label) => drawLeader(label, palette)),
        drawFrame(scene, sheet, palette),
        ...drawBelow(sheet, palette, group),
        ...drawRings(scene, sheet, palette),
        ...shown.filter(({ role }) => !isWater(role)).map(draw),
        ...sheet.labels.map((label) =>
            group(label.label.note.id, '', drawLabel(label, palette), 'note', label.label.note.position),
        ),
        drawScaleBar(scene, sheet, palette),
        sheet.foot ? drawNotes(sheet.foot, palette, (id, drawn) => group(id, '', drawn, 'finding')) : '',
        sheet.foot ? drawBlock(sheet.foot, palette) : '',
    ];
    const { water, perMetre, bow } = sheet;
    const [ox, oy] = sheet.toPage([0, 0]);
    return svgFile(sheet, words, body, {
        live: wishes.live ?? false,
        facts: {
            plan: scene.plan,
            bow,
            'per-metre': String(perMetre),
            transom: `${short(ox)} ${short(oy)}`,
            water: [water.x, water.y, water.width, water.height].map(short).join(' '),
        },
    });
}

/** A broken ring around what a finding concerns; its number stands at the label. */
function drawRings(scene: Scene, sheet: Sheet, palette: Palette): string[] {
    const marked = new Set(scene.marks.flatMap(({ positions }) => positions));
    return scene.elements.flatMap((element) => {
        if (element.role !== 'lure' || !marked.has(element.position!)) return [];
        return circle(sheet.toPage(element.point), lureOnPaper(sheet) * 0.4, {
            stroke: palette.accent,
            width: 4,
            dash: '9 6',
        });
    });
}
