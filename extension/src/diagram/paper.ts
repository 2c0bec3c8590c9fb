import type { View } from './views.ts';

/** The room that a page has for a drawing, CSS px. */
export interface Room {
    readonly width: number;
    readonly height: number;
}

/** How large a millimetre of paper is shown, CSS px: the name of a position is 4.4 mm high then, and 13 px. */
const magnified = 2.9;

/** The least paper on which labels keep their words, mm, and the least height that a title block is worth. */
const least = {
    up: { width: 150, height: 95, withFoot: 215 },
    right: { width: 190, height: 95, withFoot: 190 },
    side: { width: 200, height: 60, withFoot: 150 },
} as const;

/**
 * The paper that fills a panel, of such a size that the drawing's words can be read on the screen.
 *
 * @returns nothing before the room is known: the drawing then has its usual sheet
 */
export function paperFor(room: Room | undefined, view: View, bow: 'up' | 'right') {
    if (!room) return {};
    const bound = least[view === 'side' ? 'side' : bow];
    const [width, height] = [room.width / magnified, room.height / magnified];
    // A panel too small for that shows the same, smaller.
    const grown = Math.max(1, bound.width / width, bound.height / height);
    const whole = { width: Math.round(width * grown), height: Math.round(height * grown) };
    return {
        // From the side a sheet is as high as it needs to be: a higher one would only pull it apart.
        paper: view === 'side' ? { ...whole, height: 0 } : whole,
        foot: height * grown >= bound.withFoot,
    };
}
