import type { Origin, Place } from '../origin.ts';

/** The first of these that was said in this file and not taken over from a preset: whoever said it can mend it. */
export function ownPlace(uri: string, ...origins: readonly (Origin | undefined)[]): Place | undefined {
    return origins.find((origin) => origin && !origin.inherited && origin.place.uri === uri)?.place;
}
