import type { Property } from './property.ts';
import { BOAT_RANGE, NOTE } from './shared.ts';

const DEGREE = Math.PI / 180;

const POINT: readonly Property[] = [
    {
        word: 'ahead',
        dimension: 'length',
        example: 'ahead 3.1 m',
        says: 'Forward of the transom.',
        sane: [-10, 120],
    },
    {
        word: 'out',
        dimension: 'length',
        example: 'out 1.7 m',
        says: 'Out from the centreline.',
        sane: [0, 30],
    },
    {
        word: 'up',
        dimension: 'length',
        example: 'up 2.3 m',
        says: 'Above the still waterline.',
        sane: [-2, 40],
    },
];

const RIGGER: readonly Property[] = [
    {
        word: 'length',
        dimension: 'length',
        example: 'length 6.4 m',
        says: 'Length of the pole.',
        sane: [0.5, 30],
    },
    {
        word: 'foot',
        example: 'foot { ahead 3.1 m  out 1.7 m  up 2.3 m }',
        says: 'Where the pole stands on the boat.',
    },
    {
        word: 'rise',
        dimension: 'angle',
        example: 'rise 45 deg',
        says: 'Angle of the pole above horizontal.',
        sane: [0, 90 * DEGREE],
    },
    {
        word: 'sweep',
        dimension: 'angle',
        example: 'sweep 70 deg',
        says: 'Angle outboard of dead ahead, seen from above.',
        sane: [0, 180 * DEGREE],
    },
    {
        word: 'halyards',
        dimension: 'length',
        example: 'halyards 3.4 m, 6.0 m',
        says: 'Clips along the pole, measured from its foot, the inner one first.',
        sane: [0, 30],
    },
];

/** The words of a boat and of what stands on it. */
export const boatWords = {
    boat: [
        {
            word: 'length',
            dimension: 'length',
            example: 'length 10.8 m',
            says: 'Length over all.',
            sane: [2, 120],
        },
        {
            word: 'waterline',
            dimension: 'length',
            example: 'waterline 9.7 m',
            says: 'Length on the waterline.',
            sane: [2, 120],
        },
        {
            word: 'beam',
            dimension: 'length',
            example: 'beam 3.6 m',
            says: 'Greatest width.',
            sane: [0.5, 40],
        },
        BOAT_RANGE,
        {
            word: 'first',
            dimension: 'length',
            example: 'first crest 6.5 m at 8 kn',
            says: 'The first crest astern of the transom, measured at one speed through the water; scaled to others.',
            sane: [0.1, 200],
            otherwise: 'half a wavelength (common practice)',
        },
        {
            word: 'crests',
            dimension: 'length',
            example: 'crests 6.5 m, 17.4 m, 28.1 m at 8 kn',
            says: 'Several measured crests, the first one first; first crest and spacing are fitted to them.',
            sane: [0.1, 500],
        },
        {
            word: 'waves',
            dimension: 'length',
            example: 'waves up to 0.9 m',
            says: "The height of sea up to which the crew can still read this boat's own waves.",
            otherwise: "half the height of the boat's own waves (rough estimate)",
            sane: [0, 10],
        },
        {
            word: 'wash',
            example: 'wash { near 1.1 m  far 0.5 m  length 10 m }',
            says: 'The propeller wash: half its width at the transom and at its end, and how far it reaches.',
            otherwise: '0.30 and 0.15 of the beam, 10 m long (estimate)',
        },
        {
            word: 'outriggers',
            example: 'outriggers { length 6.4 m  rise 45 deg  sweep 70 deg }',
            says: 'The pair of poles; both sides alike.',
        },
        {
            word: 'centre',
            example: 'centre rigger { length 5 m  rise 60 deg }',
            says: 'The pole on the centreline.',
        },
        {
            word: 'flat',
            example: 'flat clip { ahead 0.2 m  out 1.3 m  up 1.1 m }',
            says: 'The clips of the corner lines, one each side.',
        },
        {
            word: 'holder',
            example: 'holder port corner { ahead 0.4 m  out 1.5 m  up 1.0 m  lean 15 deg }',
            says: "A rod holder; with the rod's length it gives the height of the tip.",
            many: true,
        },
        {
            word: 'point',
            example: 'point bridge { ahead 3 m  out 1.2 m  up 4.2 m }',
            says: 'A further tow point, by name.',
            many: true,
        },
        {
            word: 'position',
            example: 'position tower "Tower line" { ahead 4 m  out 0.5 m  up 6 m }',
            says: 'A further position of this boat.',
            many: true,
        },
        NOTE,
    ],
    wash: [
        {
            word: 'near',
            dimension: 'length',
            example: 'near 1.1 m',
            says: 'Half the width at the transom.',
            sane: [0, 20],
        },
        {
            word: 'far',
            dimension: 'length',
            example: 'far 0.5 m',
            says: 'Half the width at its end.',
            sane: [0, 20],
        },
        {
            word: 'length',
            dimension: 'length',
            example: 'length 10 m',
            says: 'How far astern it reaches.',
            sane: [0, 200],
        },
    ],
    outriggers: RIGGER,
    'centre rigger': RIGGER,
    foot: POINT,
    flat: POINT,
    point: POINT,
    'extra position': POINT,
    holder: [
        ...POINT,
        {
            word: 'lean',
            dimension: 'angle',
            example: 'lean 15 deg',
            says: 'Of the rod, aft of vertical.',
            sane: [-90 * DEGREE, 90 * DEGREE],
        },
        {
            word: 'splay',
            dimension: 'angle',
            example: 'splay 20 deg',
            says: 'Of the rod, outboard of straight aft, seen from above.',
            sane: [-180 * DEGREE, 180 * DEGREE],
        },
    ],
} as const satisfies Record<string, readonly Property[]>;
