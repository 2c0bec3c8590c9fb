import type { Property } from './property.ts';
import { DRAGS, NOTE } from './shared.ts';

const KNOT: Property = {
    word: 'knot',
    dimension: 'load',
    orShare: true,
    example: 'knot "Bimini" 95 %',
    says: 'How much the knot holds: a load, or a share of the line.',
    many: true,
};

const CRIMP: Property = {
    word: 'crimp',
    dimension: 'load',
    orShare: true,
    example: 'crimp 90 %',
    says: 'How much the crimp holds: a load, or a share of the leader.',
    many: true,
};

const SWIVEL: Property = {
    word: 'swivel',
    dimension: 'load',
    orShare: true,
    example: 'swivel 180 kg',
    says: "The snap swivel's rated strength.",
    many: true,
};

const LINE: readonly Property[] = [
    {
        word: 'material',
        choices: ['nylon', 'fluorocarbon', 'polyester', 'braid', 'wire'],
        example: 'material nylon',
        says: 'What the line is made of.',
    },
    {
        word: 'diameter',
        dimension: 'length',
        example: 'diameter 0.71 mm',
        says: 'As measured; makers differ.',
        sane: [0.00005, 0.01],
    },
    {
        word: 'class',
        dimension: 'load',
        example: 'class 24 kg',
        says: 'Line class: the load under which the line must break. Customary pounds (50 lb) name the class too.',
    },
    {
        word: 'breaks',
        dimension: 'load',
        example: 'breaks 22.6 kg',
        says: 'The load at which it breaks, from the label or a test.',
    },
    {
        word: 'length',
        dimension: 'length',
        example: 'length 4.2 m',
        says: 'Length, the lure included for a leader.',
    },
    {
        word: 'stretch',
        dimension: 'share',
        example: 'stretch 18 %',
        says: 'How much longer it is just before it breaks.',
        sane: [0, 1],
    },
    KNOT,
    CRIMP,
    SWIVEL,
    { word: 'fitted', example: 'fitted 2026-01-20', says: 'The day it was put on.' },
    NOTE,
];

/** The words of rods, reels, lines, leaders, hooks and outfits. */
export const tackleWords = {
    rod: [
        {
            word: 'length',
            dimension: 'length',
            example: 'length 1.75 m',
            says: 'Length over all.',
            sane: [0.4, 6],
        },
        {
            word: 'tip',
            dimension: 'length',
            example: 'tip 1.30 m',
            says: "From the reel's centre to the tip.",
            sane: [0.2, 5],
        },
        {
            word: 'butt',
            dimension: 'length',
            example: 'butt 0.45 m',
            says: "From the reel's centre to the butt's end.",
            sane: [0.05, 2],
        },
        { word: 'fitted', example: 'fitted 2025-09-01', says: 'The day it was last serviced.' },
        NOTE,
    ],
    reel: [
        { word: 'spool', example: 'spool { full 100 mm  arbor 48 mm }', says: 'Diameters of the spool.' },
        {
            word: 'capacity',
            dimension: 'length',
            example: 'capacity 800 m of 0.71 mm',
            says: 'How much line it holds, and of what diameter.',
        },
        NOTE,
    ],
    spool: [
        {
            word: 'full',
            dimension: 'length',
            example: 'full 100 mm',
            says: 'Diameter over a full spool.',
            sane: [0.01, 0.6],
        },
        {
            word: 'arbor',
            dimension: 'length',
            example: 'arbor 48 mm',
            says: 'Diameter of the bare spool.',
            sane: [0.005, 0.5],
        },
        { word: 'width', dimension: 'length', example: 'width 60 mm', says: 'Between the flanges.' },
    ],
    line: LINE,
    leader: [
        ...LINE,
        {
            word: 'inspected',
            example: 'inspected 2026-02-10',
            says: 'The day it was last gone over for nicks.',
        },
    ],
    hooks: [
        { word: 'count', dimension: 'count', example: 'count 2', says: 'How many hooks.' },
        {
            word: 'kind',
            choices: ['J', 'circle', 'treble', 'double'],
            example: 'kind J',
            says: 'The kind of hook.',
        },
        {
            word: 'gap',
            dimension: 'length',
            example: 'gap 48 mm',
            says: 'Point to shank, as measured; hook numbers differ between makers.',
            sane: [0.002, 0.2],
        },
        {
            word: 'length',
            dimension: 'length',
            example: 'length 92 mm',
            says: 'Eye to bend.',
            sane: [0.005, 0.4],
        },
        {
            word: 'spacing',
            dimension: 'length',
            example: 'spacing 180 mm',
            says: 'Between the eyes of two hooks.',
        },
        {
            word: 'angle',
            dimension: 'angle',
            example: 'angle 180 deg',
            says: 'Between the points of two hooks, seen from behind.',
        },
        {
            word: 'point',
            choices: ['up', 'down', 'side'],
            example: 'point up',
            says: 'Where the point stands when the lure runs.',
        },
        {
            word: 'overhang',
            dimension: 'length',
            example: 'overhang 20 mm',
            says: 'How far the trailing hook stands beyond the skirt.',
        },
        { word: 'offset', example: 'offset', says: 'The point is bent out of the plane of the shank.' },
        { word: 'linked', example: 'linked', says: "One hook's point passes through the other's eye." },
        { word: 'dangling', example: 'dangling', says: 'A hook hangs free of the bait.' },
        {
            word: 'inspected',
            example: 'inspected 2026-02-10',
            says: 'The day they were last checked and sharpened.',
        },
        NOTE,
    ],
    outfit: [
        { word: 'rod', example: 'rod bent-butt-24', says: 'The rod, by name or described here.' },
        { word: 'reel', example: 'reel lever-50', says: 'The reel, by name or described here.' },
        {
            word: 'line',
            example: 'line nylon { diameter 0.71 mm  class 24 kg  breaks 22.6 kg }',
            says: 'The line on it.',
        },
        { word: 'double', example: 'double { length 4 m }', says: 'The doubled line ahead of the leader.' },
        {
            word: 'drag',
            example: 'drag { set 2.4 kg  hooked 6 kg  full 10 kg }',
            says: 'The drags that it is set up for.',
        },
        {
            word: 'tested',
            example: 'tested 2026-02-11 by "K."',
            says: 'The last scale test of the drag, and who did it.',
        },
        {
            word: 'run',
            dimension: 'length',
            example: 'run 400 m',
            says: 'How much line a fish is expected to take.',
            otherwise: '400 m (estimate)',
        },
        {
            word: 'marks',
            dimension: 'length',
            example: 'marks every 10 m',
            says: 'Marks on the line, for the distance out.',
        },
        { word: 'counter', example: 'counter', says: 'The reel counts the line out.' },
        KNOT,
        CRIMP,
        SWIVEL,
        NOTE,
    ],
    double: [
        { word: 'length', dimension: 'length', example: 'length 4 m', says: 'Length of the double.' },
        KNOT,
        CRIMP,
        SWIVEL,
    ],
    drag: DRAGS,
} as const satisfies Record<string, readonly Property[]>;
