import type { HeadKind, Side } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';

/** A point of the view from above, m: ahead of the transom, to port of the centreline. */
export type XY = readonly [x: number, y: number];

/** What every element of a scene has. Two scenes of one plan give one thing the same `id`. */
interface Drawn {
    readonly id: string;
    /** In plain words, for whoever hears the picture instead of seeing it. */
    readonly name: string;
    /** What it stands for in the text: the use, not the definition. Absent where no text says it. */
    readonly at?: Place;
    /** The spread's position that it belongs to. */
    readonly position?: string;
}

export interface Hull extends Drawn {
    readonly role: 'hull';
    /** Closed. Length and beam are the boat's, the shape between them is only a boat's. */
    readonly outline: readonly XY[];
    /** The same drawn inside the first, where a deck's edge would be. */
    readonly deck: readonly XY[];
}

/** What stands for a hull whose beam or length is not known: the transom, and the keel as far as known. */
export interface Transom extends Drawn {
    readonly role: 'transom';
    readonly across: readonly [XY, XY];
    readonly keel?: readonly [XY, XY];
}

export interface Pole extends Drawn {
    readonly role: 'pole';
    readonly side: Side;
    readonly foot: XY;
    readonly tip: XY;
    readonly halyards: readonly XY[];
}

export interface Wedge extends Drawn {
    readonly role: 'wedge';
    readonly arms: readonly (readonly [XY, XY])[];
}

export interface Wash extends Drawn {
    readonly role: 'wash';
    readonly outline: readonly XY[];
}

/** The side of a wave that looks at the boat, where lures run. */
export interface Face extends Drawn {
    readonly role: 'face';
    readonly wave: number;
    readonly outline: readonly XY[];
    /** Its lower third by height. */
    readonly lower: readonly XY[];
}

export interface Crest extends Drawn {
    readonly role: 'crest';
    readonly wave: number;
    readonly curve: readonly XY[];
    /** Astern of the transom on the centreline, m. */
    readonly astern: number;
    /** The model should not be trusted here. */
    readonly doubtful: boolean;
}

export interface Fan extends Drawn {
    readonly role: 'fan';
    readonly outline: readonly XY[];
}

export interface TowedLine extends Drawn {
    readonly role: 'line';
    readonly what: 'fished' | 'teaser';
    /** From the rod's tip to the clip that holds the line; empty where there is no such stretch. */
    readonly rod: readonly XY[];
    readonly air: readonly XY[];
    readonly water: readonly XY[];
}

export interface TowPoint extends Drawn {
    readonly role: 'tow point';
    readonly kind: 'halyard' | 'flat clip' | 'rod tip' | 'point';
    readonly point: XY;
}

export type LureShape = HeadKind | 'bait' | 'bridge teaser' | 'squid chain' | 'dredge' | 'teaser' | 'unknown';

export interface DrawnLure extends Drawn {
    readonly role: 'lure';
    readonly shape: LureShape;
    /** m; absent where the plan does not say. */
    readonly length?: number;
    /** The nose, where the line ends. */
    readonly point: XY;
    /** Where the nose looks, radians from dead ahead, positive to port. */
    readonly heading: number;
}

/** Gear kept ready on board. */
export interface Standby extends Drawn {
    readonly role: 'standby';
    readonly point: XY;
}

export type SceneElement =
    | Hull
    | Transom
    | Pole
    | Wedge
    | Wash
    | Face
    | Crest
    | Fan
    | TowedLine
    | TowPoint
    | DrawnLure
    | Standby;

export type Role = SceneElement['role'];
