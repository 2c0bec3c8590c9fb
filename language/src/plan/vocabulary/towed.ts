import type { Property } from './property.ts';
import { NOTE } from './shared.ts';

/** Nothing that is towed wanders farther. */
const SWAY = Math.PI / 4;

const LURE: readonly Property[] = [
    {
        word: 'length',
        dimension: 'length',
        example: 'length 330 mm',
        says: 'Head to the end of the skirt.',
        sane: [0.03, 2],
    },
    {
        word: 'head',
        dimension: 'length',
        example: 'head 46 mm',
        says: "The head's diameter.",
        sane: [0.004, 0.3],
    },
    {
        word: 'weight',
        dimension: 'load',
        example: 'weight 290 g',
        says: 'In air, rigged.',
        sane: [0.01, 200],
    },
    {
        word: 'submerged',
        dimension: 'load',
        example: 'submerged 140 g',
        says: 'Weighed in water.',
        otherwise: 'half its weight in air (estimate)',
    },
    {
        word: 'displaces',
        dimension: 'volume',
        example: 'displaces 150 ml',
        says: 'The volume of water it displaces.',
    },
    {
        word: 'pull',
        dimension: 'load',
        example: 'pull 2.6 kg at 8 kn',
        says: 'Towing pull on a scale, and the speed it was read at.',
        otherwise: 'estimated from head, size and speed',
    },
    {
        word: 'runs',
        dimension: 'speed',
        example: 'runs 6 kn to 9 kn',
        says: 'The speeds through the water at which it works.',
        sane: [0, 30],
    },
    {
        word: 'sway',
        dimension: 'angle',
        example: 'sway 4 deg',
        says: 'How far it wanders to either side, seen from its tow point.',
        otherwise: '4 deg (estimate)',
        sane: [0, SWAY],
    },
    {
        word: 'colour',
        example: 'colour "blue and silver"',
        says: 'So that the crew takes the right one from the roll.',
    },
    { word: 'spares', dimension: 'count', example: 'spares 2', says: 'How many more of it are on board.' },
    { word: 'hooks', example: 'hooks single { gap 48 mm  length 92 mm  point up }', says: 'The hook rig.' },
    {
        word: 'leader',
        example: 'leader nylon { diameter 1.6 mm  breaks 113 kg  length 4.2 m }',
        says: 'The leader.',
    },
    NOTE,
];

/** The words of what is towed. */
export const towedWords = {
    lure: LURE,
    teaser: [
        ...LURE,
        {
            word: 'kind',
            choices: ['chain', 'dredge', 'bird', 'lure'],
            example: 'kind chain',
            says: 'What it is.',
        },
    ],
    bait: [
        {
            word: 'kind',
            choices: ['live', 'dead', 'strip'],
            example: 'kind live',
            says: 'How it is fished.',
        },
        { word: 'length', dimension: 'length', example: 'length 250 mm', says: 'Length of the bait.' },
        { word: 'weight', dimension: 'load', example: 'weight 400 g', says: 'In air.' },
        {
            word: 'pull',
            dimension: 'load',
            example: 'pull 1.2 kg at 5 kn',
            says: 'Towing pull on a scale, and the speed it was read at.',
        },
        {
            word: 'runs',
            dimension: 'speed',
            example: 'runs 2 kn to 5 kn',
            says: 'The speeds at which it works.',
            sane: [0, 30],
        },
        {
            word: 'sway',
            dimension: 'angle',
            example: 'sway 4 deg',
            says: 'How far it wanders to either side.',
            sane: [0, SWAY],
        },
        { word: 'hooks', example: 'hooks circle { gap 22 mm }', says: 'The hook rig.' },
        { word: 'leader', example: 'leader nylon { breaks 90 kg  length 4 m }', says: 'The leader.' },
        NOTE,
    ],
} as const satisfies Record<string, readonly Property[]>;
