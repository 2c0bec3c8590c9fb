import type { SceneElement } from './elements.ts';
import type { Palette } from './palette.ts';
import { circle, path } from './pen.ts';
import { lureOnPaper, type Sheet } from './sheet.ts';
import type { Group } from './svg-file.ts';
import { drawGearElement } from './svg-gear.ts';

/** Inks for what was: hollow, and in the voice of what is only for orientation. */
export function ghostPalette(palette: Palette): Palette {
    return { ...palette, ink: palette.soft };
}

/** What an earlier version of the plan had there, in broken lines; a ring says so of the lure without colour. */
export function drawGhost(element: SceneElement, sheet: Sheet, palette: Palette, group: Group): string {
    const { toPage } = sheet;
    const broken = { stroke: palette.soft, width: 2.5, dash: '5 8' };
    if (element.role === 'line') {
        return group(
            element.id,
            element.name,
            path([...element.air, ...element.water].map(toPage), broken),
            'ghost',
        );
    }
    if (element.role !== 'lure') return '';
    return group(
        element.id,
        element.name,
        drawGearElement(element, sheet, { ...palette, ink: palette.wash }) +
            circle(toPage(element.point), lureOnPaper(sheet) * 0.3, broken),
        'ghost',
    );
}
