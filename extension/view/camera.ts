/*
 * Where one looks at a page, and how large. Sizes of the page are tenths of a millimetre, those of the screen CSS
 * pixels; nothing here knows of either.
 */

export interface Size {
    readonly width: number;
    readonly height: number;
}

/** A point, on the page or on the screen. */
export interface Spot {
    readonly x: number;
    readonly y: number;
}

/** What of the page is in sight. */
export interface Sight {
    /** Screen per page. */
    readonly scale: number;
    /** The point of the page in the middle of the screen. */
    readonly middle: Spot;
}

/** How a page lies over the water that it shows: its scale, and where the middle of the transom is on it. */
export interface Water {
    readonly perMetre: number;
    readonly transom: Spot;
}

/** All of a page, in the middle of the screen. */
export function wholeOf(page: Size, screen: Size): Sight {
    return {
        scale: Math.min(screen.width / page.width, screen.height / page.height),
        middle: { x: page.width / 2, y: page.height / 2 },
    };
}

/** The part of the page that is in sight, as SVG counts it. */
export function viewBox({ scale, middle }: Sight, screen: Size): readonly [number, number, number, number] {
    const [width, height] = [screen.width / scale, screen.height / scale];
    return [middle.x - width / 2, middle.y - height / 2, width, height];
}

/** Moves what is in sight along with a hand on the screen. */
export function pan({ scale, middle }: Sight, by: Spot): Sight {
    return { scale, middle: { x: middle.x - by.x / scale, y: middle.y - by.y / scale } };
}

/** From half of what fits to forty times that: a lure's head then is as wide as a hand. */
const bounds = { least: 0.5, most: 40 };

/**
 * Makes everything larger or smaller around one point, which stays where it is.
 *
 * @param around  on the screen, from its middle
 */
export function zoom(sight: Sight, factor: number, around: Spot, page: Size, screen: Size): Sight {
    const whole = wholeOf(page, screen).scale;
    const scale = Math.min(bounds.most * whole, Math.max(bounds.least * whole, sight.scale * factor));
    return {
        scale,
        middle: {
            x: sight.middle.x + around.x / sight.scale - around.x / scale,
            y: sight.middle.y + around.y / sight.scale - around.y / scale,
        },
    };
}

/** The same sight of the same water on another page, which may show it at another scale and place. */
export function follow(sight: Sight, before: Water, after: Water): Sight {
    const ratio = after.perMetre / before.perMetre;
    return {
        scale: sight.scale / ratio,
        middle: {
            x: after.transom.x + (sight.middle.x - before.transom.x) * ratio,
            y: after.transom.y + (sight.middle.y - before.transom.y) * ratio,
        },
    };
}

/** Keeps some of the page in sight, however far somebody drags it. */
export function within(sight: Sight, page: Size): Sight {
    const between = (value: number, most: number) => Math.min(most, Math.max(0, value));
    return {
        scale: sight.scale,
        middle: { x: between(sight.middle.x, page.width), y: between(sight.middle.y, page.height) },
    };
}
