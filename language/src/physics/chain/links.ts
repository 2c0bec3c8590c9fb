import { MATERIALS, TANGENTIAL_DRAG } from '../coefficients.ts';
import { AIR_DENSITY, SEA_WATER_DENSITY, STANDARD_GRAVITY } from '../constants.ts';
import type { Section, Tow } from '../towed.ts';

/**
 * A line cut into straight, elastic links; figures of link j, which joins node j (nearer the lure) to node j + 1.
 *
 * Masses and loads sit at the nodes, half a link's at either end. A transversely moved link takes its own volume of
 * water along (added mass 1.0, along it 0): the usual convention of lumped-mass mooring codes.
 */
export interface Links {
    readonly count: number;
    /** Unstretched, m. */
    readonly length: Float64Array;
    readonly diameter: Float64Array;
    /** kg */
    readonly mass: Float64Array;
    /** Of the water that it displaces, kg. */
    readonly displaced: Float64Array;
    /** Tension for unit strain, N. */
    readonly rate: Float64Array;
    /** Drag of the whole link at 1 m/s with a coefficient of 1 across, and as it is along; N. In water, in air. */
    readonly across: readonly [Float64Array, Float64Array];
    readonly along: readonly [Float64Array, Float64Array];
}

/**
 * Cuts a line into links, of one length each or ever longer from the lure up.
 *
 * A link that holds the joint of two pieces has their mean mass and drag, and their stretch one after the other.
 *
 * @param lineOut  m, > 0
 * @param count    ≥ 1
 * @param growth   last link ÷ first; a line mostly in air bends where it is wet, near the lure
 */
export function linksOf(tow: Tow, lineOut: number, count: number, growth = 1): Links {
    const array = () => new Float64Array(count);
    const links: Links = {
        count,
        length: lengthsOf(lineOut, count, growth),
        diameter: array(),
        mass: array(),
        displaced: array(),
        rate: array(),
        across: [array(), array()],
        along: [array(), array()],
    };
    const friction = tow.tangentialDrag ?? TANGENTIAL_DRAG.value;
    const fluids = [SEA_WATER_DENSITY, tow.airDrag === false ? 0 : AIR_DENSITY];
    let to = 0;
    for (let j = 0; j < count; j++) {
        let stretch = 0;
        const from = to;
        to += links.length[j]!;
        for (const { section, length } of piecesBetween(tow.sections, from, to)) {
            const { diameter, density, modulus = MATERIALS.nylon.modulus.value } = section;
            const area = (Math.PI / 4) * diameter ** 2;
            links.diameter[j]! += (diameter * length) / (to - from);
            links.mass[j]! += density * area * length;
            links.displaced[j]! += SEA_WATER_DENSITY * area * length;
            stretch += length / (modulus * area);
        }
        links.rate[j] = (to - from) / stretch;
        fluids.forEach((density, fluid) => {
            const side = 0.5 * density * links.diameter[j]! * (to - from);
            links.across[fluid as 0 | 1][j] = side;
            links.along[fluid as 0 | 1][j] = side * Math.PI * friction;
        });
    }
    return links;
}

function lengthsOf(lineOut: number, count: number, growth: number): Float64Array {
    const shares = Float64Array.from(
        { length: count },
        (_, j) => growth ** (count > 1 ? j / (count - 1) : 0),
    );
    const whole = shares.reduce((sum, share) => sum + share, 0);
    return shares.map((share) => (share / whole) * lineOut);
}

/** Weight of a link in air, N. */
export function weightOf(links: Links, j: number): number {
    return links.mass[j]! * STANDARD_GRAVITY;
}

function* piecesBetween(sections: readonly Section[], from: number, to: number) {
    let start = 0;
    for (const [index, section] of sections.entries()) {
        const end = index === sections.length - 1 ? Number.POSITIVE_INFINITY : start + section.length;
        const length = Math.min(end, to) - Math.max(start, from);
        if (length > 0) yield { section, length };
        start = end;
    }
}
