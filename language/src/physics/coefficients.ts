/** How far a figure can be trusted: read in a publication, weighed or measured, worked out, or nobody's measurement. */
export type Standing = 'measured' | 'written' | 'computed' | 'estimated';

/** A figure of nature with the range that it may lie in, and where it was found. */
export interface Coefficient {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly standing: Standing;
    readonly source: string;
}

/**
 * Drag coefficient of a smooth cylinder across the flow, on the area diameter × length.
 *
 * @param reynolds  speed across the line × diameter / kinematic viscosity; held to 0.02 … 2e5, where the fit is
 *                  valid (no line comes near the drag crisis above it). Not a number: the textbook's 1.2.
 *
 * N.-S. Cheng, "Calculation of drag coefficient for arrays of emergent circular cylinders with pseudofluid model",
 * J. Hydraulic Eng. 139 (2013), doi 10.1061/(ASCE)HY.1943-7900.0000722; title and author from memory of the
 * reference, formula read where the open structural solver ONSAS cites it.
 * A free line that strums has more, × 1.2 to 1.7 (from memory of the literature on cable strumming).
 */
export function crossFlowDrag(reynolds: number): number {
    if (Number.isNaN(reynolds)) return CROSS_FLOW_DRAG.value;
    const re = Math.min(Math.max(reynolds, 0.02), 2e5);
    return 11 * re ** -0.75 + 0.9 * (1 - Math.exp(-1000 / re)) + 1.2 * (1 - Math.exp(-((re / 4500) ** 0.7)));
}

/** Of a long cylinder across the flow where no Reynolds number is known, on diameter × length. */
export const CROSS_FLOW_DRAG: Coefficient = {
    value: 1.2,
    low: 0.9,
    high: 1.6,
    standing: 'written',
    source:
        'C. Matthews, Aeronautical Engineer’s Data Book (2002), Fig. 5.13; ' +
        'from memory of the literature up to 1.6 for a line that strums',
};

/**
 * Skin friction of a line drawn lengthwise, on the wetted area π × diameter × length: the force on a metre is
 * ½·ρ·π·d·c·|v|·v. Sources that refer it to diameter × length print a coefficient π times as large.
 */
export const TANGENTIAL_DRAG: Coefficient = {
    value: 0.005,
    low: 0.004,
    high: 0.007,
    standing: 'computed',
    source:
        'Twice to three times the flat plate at the same length Reynolds number, as measured on cylinders of 0.89 and ' +
        '2.5 mm, 30 to 150 m long, at 2.4 to 17.4 m/s (K. M. Cipolla and W. L. Keith, ASME FEDSM 2002); ' +
        'Schlichting’s plate gives 0.0042 to 0.0065 at 30 to 50 m',
};

/** The same for line that is nicked, aged or fouled by weed. */
export const WORN_TANGENTIAL_DRAG = 0.01;

/** Friction of wet nylon on a guide or a clip. From memory: 0.05 to 0.15 on ceramic. */
export const GUIDE_FRICTION: Coefficient = {
    value: 0.1,
    low: 0.05,
    high: 0.15,
    standing: 'estimated',
    source: 'From memory, nylon on ceramic guides',
};

/** What a line or leader is made of. */
export interface Material {
    /** kg/m³ */
    readonly density: Coefficient;
    /** Young’s modulus at working load, Pa. */
    readonly modulus: Coefficient;
}

export const MATERIALS = {
    nylon: {
        density: written(
            1140,
            1130,
            1150,
            'US FWS “Net materials” and fibre makers’ tables: specific gravity 1.14',
        ),
        modulus: recalled(
            2.5e9,
            1.9e9,
            3.0e9,
            'Secant to break of 0.9 mm line of 37 kg class, 20 to 30 % elongation',
        ),
    },
    fluorocarbon: {
        density: recalled(1780, 1760, 1800, 'From memory, PVDF'),
        modulus: recalled(2.5e9, 1.5e9, 3.5e9, 'Estimate: taken as nylon’s'),
    },
    braid: {
        density: written(
            960,
            940,
            970,
            'Tension Technology International, table of fibres: gel-spun polyethylene',
        ),
        modulus: recalled(
            50e9,
            35e9,
            71e9,
            'From memory, 30 to 60 % of the fibre’s 118 GPa for air and packing',
        ),
    },
    dacron: {
        density: recalled(1380, 1370, 1390, 'From memory, polyester'),
        modulus: recalled(8e9, 5e9, 12e9, 'Estimate: braided polyester'),
    },
    wire: {
        density: recalled(7800, 7700, 8000, 'From memory, steel'),
        modulus: recalled(200e9, 190e9, 210e9, 'From memory, steel'),
    },
} as const satisfies Record<string, Material>;

export type MaterialName = keyof typeof MATERIALS;

/** Share of its dry strength that nylon loses when wet: 0.10 to 0.15. US FWS “Net materials”; TTI, table 1. */
export const NYLON_WET_LOSS: Coefficient = written(0.125, 0.1, 0.15, 'US FWS “Net materials”; TTI, table 1');

const POUND_FORCE = 4.4482216152605;

/**
 * Diameter of ordinary nylon of a strength, m: 0.1 mm × √pounds. Common practice, no source; premium line is
 * thinner, so a measured diameter goes before this one.
 *
 * @param strength  at which it breaks, N, ≥ 0; `undefined` otherwise
 */
export function usualNylonDiameter(strength: number): number | undefined {
    return strength >= 0 && Number.isFinite(strength) ? 1e-4 * Math.sqrt(strength / POUND_FORCE) : undefined;
}

/** Stiffness of a line, N: modulus × cross-section. */
export function stiffness(diameter: number, modulus: number): number {
    return (modulus * Math.PI * diameter ** 2) / 4;
}

function written(value: number, low: number, high: number, source: string): Coefficient {
    return { value, low, high, standing: 'written', source };
}

function recalled(value: number, low: number, high: number, source: string): Coefficient {
    return { value, low, high, standing: 'estimated', source };
}
