import { STANDARD_GRAVITY } from '../constants.ts';
import { insideWedge } from './crest.ts';
import { boatWaveHeight, type Hull } from './wave-height.ts';

/** Why the wave train says nothing here, with the two figures that decide. */
export type Doubt =
    | { readonly reason: 'planing'; readonly froude: number; readonly limit: number }
    | { readonly reason: 'shallow'; readonly speed: number; readonly critical: number }
    | { readonly reason: 'rough'; readonly sea: number; readonly limit: number }
    | { readonly reason: 'outside wedge'; readonly lateral: number; readonly limit: number };

/** Above this Froude number on the waterline the diverging waves take over: estimate. */
export const PLANING_FROUDE = 0.55;

/** A sea higher than this share of the boat's own wave hides it: estimate. */
export const ROUGH_SHARE = 0.5;

/** The water that a boat runs in. */
export interface Conditions {
    /** Through the water, m/s, > 0. */
    readonly speed: number;
    /** m; Infinity for deep water. */
    readonly depth?: number;
    /** Significant wave height of the sea, m. */
    readonly sea?: number;
}

/**
 * What speaks against the wave train at a place behind a boat.
 *
 * @param hull  without a waterline length the tests that need it are left out
 * @param spot  m; left out, the tests are those of the whole train (the boat's wave is taken two lengths astern)
 * @returns every doubt, none where the train holds
 */
export function doubts(
    conditions: Conditions,
    hull: Partial<Hull>,
    spot?: { readonly astern: number; readonly lateral: number },
    gravity = STANDARD_GRAVITY,
): Doubt[] {
    const { speed, depth = Number.POSITIVE_INFINITY, sea = 0 } = conditions;
    const found: Doubt[] = [];
    const { waterline, beam } = hull;
    if (waterline !== undefined && waterline > 0) {
        const froude = speed / Math.sqrt(gravity * waterline);
        if (froude > PLANING_FROUDE) found.push({ reason: 'planing', froude, limit: PLANING_FROUDE });
    }
    const critical = Math.sqrt(gravity * depth);
    if (speed >= critical) found.push({ reason: 'shallow', speed, critical });
    if (sea > 0 && waterline !== undefined && beam !== undefined) {
        const astern = spot?.astern ?? (4 * Math.PI * speed * speed) / gravity;
        const own = boatWaveHeight({ ...hull, waterline, beam }, speed, astern, gravity);
        if (own !== undefined && sea > ROUGH_SHARE * own)
            found.push({ reason: 'rough', sea, limit: ROUGH_SHARE * own });
    }
    if (spot && !insideWedge(spot.astern, spot.lateral))
        found.push({
            reason: 'outside wedge',
            lateral: Math.abs(spot.lateral),
            limit: Math.max(0, spot.astern) / Math.sqrt(8),
        });
    return found;
}
