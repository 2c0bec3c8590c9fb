import type { Place } from '../plan/origin.ts';
import type { LureShape } from './elements.ts';

/** A point of the view from the side, m: ahead of the transom, above the still waterline. */
export type XZ = readonly [x: number, z: number];

interface Drawn {
    /** The same as in the view from above. */
    readonly id: string;
    readonly name: string;
    readonly at?: Place;
    readonly position?: string;
}

export type SideElement =
    | (Drawn & { readonly role: 'hull'; readonly outline: readonly XZ[] })
    | (Drawn & { readonly role: 'pole'; readonly foot: XZ; readonly tip: XZ })
    | (Drawn & { readonly role: 'surface'; readonly curve: readonly XZ[] })
    | (Drawn & {
          readonly role: 'face';
          readonly wave: number;
          readonly outline: readonly XZ[];
          readonly crest: XZ;
      })
    | (Drawn & {
          readonly role: 'line';
          readonly what: 'fished' | 'teaser';
          readonly rod: readonly XZ[];
          readonly air: readonly XZ[];
          readonly water: readonly XZ[];
          /** Between the line and the water where it goes in, were it straight, radians. */
          readonly angle: number;
      })
    | (Drawn & { readonly role: 'tow point'; readonly point: XZ })
    | (Drawn & {
          readonly role: 'lure';
          readonly shape: LureShape;
          readonly length?: number;
          readonly point: XZ;
      });
