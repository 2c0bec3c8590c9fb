import type { Extent } from './extent.ts';

/** Distances that a picture is graduated in, m. */
export interface Ruler {
    /** Between numbers. */
    readonly step: number;
    /** Between the black and white bars, a half or a fifth of the step. */
    readonly bar: number;
    /** From, to: astern of the transom, or to port of the centreline. */
    readonly from: number;
    readonly to: number;
}

/** A bar of known length, in both units that boats speak. */
export interface ScaleBar {
    readonly metres: number;
    readonly feet: number;
}

export interface Rulers {
    readonly astern: Ruler;
    readonly sideways: Ruler;
    readonly scaleBar: ScaleBar;
}

export function rulersOf({ ahead, astern, half }: Extent): Rulers {
    const asternStep = roundStep(astern / 7);
    const sidewaysStep = roundStep(half / 3);
    const bar = roundStep(astern / 10);
    return {
        astern: { step: asternStep, bar: asternStep / 2, from: -ahead, to: astern },
        sideways: { step: sidewaysStep, bar: sidewaysStep / 2, from: -half, to: half },
        scaleBar: { metres: bar, feet: roundStep(0.7 * (bar / 0.3048)) },
    };
}

/** The nearest length of 1, 2 or 5 times a power of ten that is not under the one asked. */
export function roundStep(least: number): number {
    const power = 10 ** Math.floor(Math.log10(least));
    return ([1, 2, 5].find((digit) => digit * power >= least - 1e-9 * power) ?? 10) * power;
}
