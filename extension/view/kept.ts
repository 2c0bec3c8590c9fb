import { type Kept as KeptByPanel, keptFrom, type ShowPicture, toPage } from '../src/diagram/messages.ts';
import type { Sight } from './camera.ts';

/** What outlives a reload of the page, and of the window. */
export interface Kept extends KeptByPanel {
    /** The last picture, so that there is one before the server has read everything again. */
    readonly picture?: ShowPicture;
    readonly sight?: Sight;
    readonly asTable?: boolean;
    /** How far a turn was followed, s. */
    readonly time?: number;
}

/** What was kept, as far as this version of the page can make sense of it. */
export function fromKept(state: unknown): Kept {
    if (typeof state !== 'object' || state === null) return {};
    const { picture, sight, asTable, time } = state as Record<string, unknown>;
    const message = toPage(picture);
    return {
        ...keptFrom(state),
        ...(message?.kind === 'picture' && { picture: message }),
        ...(isSight(sight) && { sight }),
        ...(typeof time === 'number' && time >= 0 && Number.isFinite(time) && { time }),
        asTable: asTable === true,
    };
}

function isSight(value: unknown): value is Sight {
    if (typeof value !== 'object' || value === null) return false;
    const { scale, middle } = value as Partial<Sight>;
    const numbers = [scale, middle?.x, middle?.y];
    return numbers.every((number) => Number.isFinite(number)) && scale! > 0;
}
