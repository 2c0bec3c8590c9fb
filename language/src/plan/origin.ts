/** A stretch of text in one file: what an editor underlines and what a fix replaces. */
export interface Place {
    readonly uri: string;
    /** Offsets in UTF-16 code units, end exclusive. */
    readonly start: number;
    readonly end: number;
    /** The same, zero-based, as the language server protocol counts. */
    readonly range: {
        readonly start: { readonly line: number; readonly character: number };
        readonly end: { readonly line: number; readonly character: number };
    };
}

/** How far a figure can be trusted. The weakest input decides for what is computed from it. */
export type Standing = 'measured' | 'written' | 'computed' | 'estimated';

/** Who had the last word on a value; ordered from the weakest voice to the strongest. */
export type Voice =
    | 'default'
    | 'species'
    | 'boat'
    | 'outfit'
    | 'lure'
    | 'bait'
    | 'teaser'
    | 'method'
    | 'rules'
    | 'spread'
    | 'position';

/**
 * Where a value comes from.
 *
 * `place` is the value itself (`8 kn`), `property` the whole property with its word (`speed 8 kn`), so that
 * a fix can replace the one or remove the other. A default has neither: it points at what it applies to.
 */
export interface Origin {
    readonly place: Place;
    readonly property: Place;
    readonly voice: Voice;
    /** The definition that holds the property: `four-in-the-blue`, `fifty-1`. */
    readonly definition?: string;
    /** True where the definition was reached through `like`. */
    readonly inherited?: boolean;
}

/** A value together with where it was said. */
export interface Said<T> {
    readonly value: T;
    readonly origin: Origin;
}
