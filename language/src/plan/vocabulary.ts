import type { Dimension } from '../units/unit.ts';

/** A block of the language: what a definition, a part or a braced group of properties may hold. */
export type Context = keyof typeof vocabulary;

/** What one word means in one block. The grammar knows its shape; everything else about it is said here. */
export interface Property {
    readonly word: string;
    /** As it would be written, on one line. */
    readonly example: string;
    /** One sentence for hovers, completion and the language reference. */
    readonly says: string;
    /** Of its number or numbers. */
    readonly dimension?: Dimension;
    /** A load may also be a share of the line class or of the line's strength. */
    readonly orShare?: boolean;
    /** The words that it may be, where the list is closed. */
    readonly choices?: readonly string[];
    /** What stands in its place when it is left out. */
    readonly otherwise?: string;
    /** May stand more than once in a block. */
    readonly many?: boolean;
    /** The smallest and largest number that makes sense, SI; outside is surely a slip. */
    readonly sane?: readonly [number, number];
}

const POINT: readonly Property[] = [
    { word: 'ahead', dimension: 'length', example: 'ahead 3.1 m', says: 'Forward of the transom.' },
    { word: 'out', dimension: 'length', example: 'out 1.7 m', says: 'Out from the centreline.' },
    { word: 'up', dimension: 'length', example: 'up 2.3 m', says: 'Above the still waterline.' },
];

const NOTE: Property = {
    word: 'note',
    example: 'note "spare in the port locker"',
    says: 'A remark, printed as it is.',
    many: true,
};

const STEP: Property = {
    word: 'step',
    example: 'step "lever at set drag, ratchet on"',
    says: 'A step of setting the line, in the order written.',
    many: true,
};

const DRAGS: readonly Property[] = [
    {
        word: 'set',
        dimension: 'load',
        orShare: true,
        example: 'set 2.4 kg',
        says: 'Drag while trolling.',
        sane: [0, 600],
    },
    {
        word: 'hooked',
        dimension: 'load',
        orShare: true,
        example: 'hooked 6 kg',
        says: 'Drag once the fish is on.',
        sane: [0, 600],
    },
    {
        word: 'full',
        dimension: 'load',
        orShare: true,
        example: 'full 10 kg',
        says: "Drag at the end of the lever's travel.",
        sane: [0, 600],
    },
];

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
    },
    {
        word: 'sway',
        dimension: 'angle',
        example: 'sway 4 deg',
        says: 'How far it wanders to either side, seen from its tow point.',
        otherwise: '4 deg (estimate)',
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

const BOAT_RANGE: Property = {
    word: 'speed',
    dimension: 'speed',
    example: 'speed 6 kn to 10 kn',
    says: 'The speeds through the water that it suits.',
};

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
    { word: 'rise', dimension: 'angle', example: 'rise 45 deg', says: 'Angle of the pole above horizontal.' },
    {
        word: 'sweep',
        dimension: 'angle',
        example: 'sweep 70 deg',
        says: 'Angle outboard of dead ahead, seen from above.',
    },
    {
        word: 'halyards',
        dimension: 'length',
        example: 'halyards 3.4 m, 6.0 m',
        says: 'Clips along the pole, measured from its foot, the inner one first.',
    },
];

const HOOK_LIMIT: readonly Property[] = [
    { word: 'count', dimension: 'count', example: 'count 2', says: 'At most so many hooks.' },
    {
        word: 'spacing',
        dimension: 'length',
        example: 'spacing 30.48 cm',
        says: 'At most so far between the eyes.',
    },
];

/** Every word of every block. A test holds this table and the grammar to each other. */
export const vocabulary = {
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
            otherwise: 'half a wavelength (common practice)',
        },
        {
            word: 'crests',
            dimension: 'length',
            example: 'crests 6.5 m, 17.4 m, 28.1 m at 8 kn',
            says: 'Several measured crests, the first one first; first crest and spacing are fitted to them.',
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
        { word: 'near', dimension: 'length', example: 'near 1.1 m', says: 'Half the width at the transom.' },
        { word: 'far', dimension: 'length', example: 'far 0.5 m', says: 'Half the width at its end.' },
        { word: 'length', dimension: 'length', example: 'length 10 m', says: 'How far astern it reaches.' },
    ],
    outriggers: RIGGER,
    'centre rigger': RIGGER,
    foot: POINT,
    flat: POINT,
    point: POINT,
    'extra position': POINT,
    holder: [
        ...POINT,
        { word: 'lean', dimension: 'angle', example: 'lean 15 deg', says: 'Of the rod, aft of vertical.' },
        {
            word: 'splay',
            dimension: 'angle',
            example: 'splay 20 deg',
            says: 'Of the rod, outboard of straight aft, seen from above.',
        },
    ],
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
        },
        {
            word: 'sway',
            dimension: 'angle',
            example: 'sway 4 deg',
            says: 'How far it wanders to either side.',
        },
        { word: 'hooks', example: 'hooks circle { gap 22 mm }', says: 'The hook rig.' },
        { word: 'leader', example: 'leader nylon { breaks 90 kg  length 4 m }', says: 'The leader.' },
        NOTE,
    ],
    method: [
        {
            word: 'style',
            choices: ['direct', 'drop-back'],
            example: 'style drop-back',
            says: 'Whether the hook is driven at the bite or after a drop-back.',
        },
        ...DRAGS,
        {
            word: 'loop',
            dimension: 'length',
            example: 'loop 1.2 m',
            says: 'Slack left below the clip.',
            sane: [0, 30],
        },
        {
            word: 'wait',
            dimension: 'time',
            example: 'wait 4 s',
            says: 'From the bite to hooked drag.',
            sane: [0, 600],
        },
        {
            word: 'clip',
            dimension: 'load',
            example: 'clip 3.4 kg',
            says: 'The load at which the clip opens.',
            sane: [0, 600],
        },
        { word: 'wraps', dimension: 'count', example: 'wraps 12', says: 'Turns of the band on the line.' },
        {
            word: 'opens',
            dimension: 'load',
            example: 'opens 5 kg',
            says: 'The most that a fish should need to pull to open the clip.',
        },
        BOAT_RANGE,
        NOTE,
    ],
    species: [
        BOAT_RANGE,
        {
            word: 'weight',
            dimension: 'load',
            example: 'weight 30 kg to 90 kg',
            says: 'What is expected here.',
        },
        NOTE,
    ],
    spread: [
        { word: 'boat', example: 'boat sandpiper', says: 'The boat that fishes it.' },
        { word: 'target', example: 'target white-marlin', says: 'The fish it is meant for.' },
        {
            word: 'method',
            example: 'method soft-strike',
            says: 'The strike method, for every line that names none.',
        },
        { word: 'event', example: 'event winter-series', says: "The event's rules." },
        {
            word: 'date',
            example: 'date 2026-02-14',
            says: 'The day it is for; tests and waivers are judged on it.',
        },
        { word: 'author', example: 'author "Rhea"', says: 'Who answers for it.' },
        { word: 'edition', example: 'edition "3"', says: 'Its version, printed on the card.' },
        {
            word: 'weather',
            example: 'weather "home when it blows over 20 kn"',
            says: "The skipper's own limit, printed on the card.",
        },
        {
            word: 'speed',
            dimension: 'speed',
            example: 'speed 8 kn',
            says: 'Through the water, not over ground.',
            sane: [0.2, 15],
        },
        {
            word: 'sea',
            dimension: 'length',
            example: 'sea 0.7 m',
            says: 'Height of the sea, trough to crest.',
            sane: [0, 20],
        },
        {
            word: 'depth',
            dimension: 'length',
            example: 'depth 200 m',
            says: 'Of the water, where it is shallow.',
            otherwise: 'deep',
        },
        {
            word: 'heading',
            dimension: 'angle',
            example: 'heading 45 deg',
            says: 'Of the sea against the bow: 0 is a head sea, positive to starboard.',
        },
        {
            word: 'wind',
            dimension: 'speed',
            example: 'wind 12 kn from 40 deg',
            says: 'Wind and where it comes from, from the bow, positive to starboard.',
        },
        {
            word: 'crew',
            dimension: 'count',
            example: 'crew 3',
            says: 'Everyone on board but the one at the helm.',
            sane: [0, 40],
        },
        {
            word: 'turn',
            dimension: 'length',
            example: 'turn within 90 m',
            says: 'The tightest turn that the helm plans to make, by its radius.',
            sane: [3, 5000],
        },
        {
            word: 'sway',
            dimension: 'angle',
            example: 'sway 4 deg',
            says: 'The sway that every pair of lines must bear.',
            otherwise: '4 deg (estimate)',
        },
        { word: 'hold', example: 'hold', says: 'Hold speed and course after a strike, for a second bite.' },
        {
            word: 'without',
            example: 'without centre standby',
            says: 'Takes out a position that the preset has.',
            many: true,
        },
        {
            word: 'swap',
            example: 'swap port long rigger with starboard long rigger',
            says: 'Changes two positions over.',
            many: true,
        },
        {
            word: 'waive',
            example:
                'waive drag-untested on port short corner because "tested on the morning" until 2026-02-15',
            says: 'Accepts a finding, with a reason.',
            many: true,
        },
        {
            word: 'order',
            example: 'order set port long rigger, port short corner because "the clip sticks"',
            says: 'The order of setting or clearing, where the team wants another than the computed one.',
            many: true,
        },
        { word: 'roles', example: 'roles { helm "Ana"  gaff "Ben" }', says: 'Who does what.' },
        {
            word: 'fallback',
            example: 'fallback "a hand short" { drop centre shotgun }',
            says: 'What changes when something fails.',
            many: true,
        },
        {
            word: 'spare',
            example: 'spare fifty-5',
            says: 'An outfit, lure or teaser kept ready.',
            many: true,
        },
        {
            word: 'rule',
            example: 'rule stagger { severity error  sway 5 deg }',
            says: 'A rule set for this plan.',
            many: true,
        },
        STEP,
        NOTE,
    ],
    position: [
        { word: 'outfit', example: 'outfit fifty-1', says: 'Rod, reel and line.' },
        { word: 'lure', example: 'lure ink-pusher', says: 'The lure.' },
        { word: 'teaser', example: 'teaser pink-chain', says: 'The hookless teaser.' },
        { word: 'bait', example: 'bait live "scad"', says: 'The bait.' },
        {
            word: 'leader',
            example: 'leader nylon { breaks 113 kg  length 4.2 m }',
            says: "The leader here, instead of the lure's.",
        },
        {
            word: 'hooks',
            example: 'hooks single { gap 48 mm }',
            says: "The hook rig here, instead of the lure's.",
        },
        { word: 'method', example: 'method direct', says: 'The strike method on this line.' },
        {
            word: 'back',
            dimension: 'length',
            example: 'back wave 3',
            says: 'How far astern the lure runs: a wave, or a distance (`back 13 m`).',
            sane: [0.5, 400],
        },
        {
            word: 'from',
            dimension: 'count',
            example: 'from halyard 2',
            says: 'Where it is towed from: `flat clip`, `halyard 2`, `rod tip`, or a named point of the boat.',
        },
        {
            word: 'clip',
            dimension: 'load',
            example: 'clip 3.4 kg',
            says: 'The load at which the clip or band opens.',
            sane: [0, 600],
        },
        {
            word: 'loop',
            dimension: 'length',
            example: 'loop 1.2 m',
            says: 'Slack left below the clip.',
            sane: [0, 30],
        },
        {
            word: 'wait',
            dimension: 'time',
            example: 'wait 4 s',
            says: 'From the bite to hooked drag.',
            sane: [0, 600],
        },
        { word: 'wraps', dimension: 'count', example: 'wraps 12', says: 'Turns of the band on the line.' },
        { word: 'drag', example: 'drag { hooked 5.5 kg }', says: 'The drags on this line.' },
        { word: 'angler', example: 'angler "Noor"', says: 'Who takes this rod.' },
        STEP,
        NOTE,
    ],
    roles: [
        { word: 'helm', example: 'helm "Ana"', says: 'At the helm.' },
        { word: 'leader', example: 'leader "Kit"', says: 'Takes the leader.' },
        { word: 'gaff', example: 'gaff "Ben"', says: 'Takes the gaff.' },
    ],
    fallback: [
        { word: 'drop', example: 'drop centre shotgun', says: 'The line to leave out.', many: true },
        { word: 'say', example: 'say "move long rigger to wave 6"', says: 'What else to do.', many: true },
    ],
    rules: [
        { word: 'written', example: 'written saltwater', says: 'The written pack that applies.', many: true },
        {
            word: 'at',
            dimension: 'count',
            example: 'at most 6 lines',
            says: 'The most lines; `per angler` where it is counted so.',
            many: true,
        },
        {
            word: 'class',
            dimension: 'load',
            example: 'class among 15 kg, 24 kg, 37 kg',
            says: 'The line classes allowed.',
            many: true,
        },
        {
            word: 'hooks',
            choices: ['circle', 'J', 'any'],
            example: 'hooks circle with natural bait',
            says: 'The hook that natural bait must have.',
        },
        {
            word: 'teasers',
            choices: ['hookless', 'any'],
            example: 'teasers hookless',
            says: 'Whether teasers may carry hooks.',
        },
        {
            word: 'rule',
            example: 'rule stagger { severity error  sway 5 deg }',
            says: 'Severity and settings of a rule, for the team.',
            many: true,
        },
        {
            word: 'stretch',
            dimension: 'length',
            example: 'stretch margin 15 cm',
            says: 'How far under a length limit to stay, since leaders stretch.',
        },
        {
            word: 'lines',
            example: 'lines in 08:00',
            says: 'When lines may go in, and when they must be out.',
            many: true,
        },
        {
            word: 'call',
            example: 'call in "boat, angler, fish, time, on channel 72"',
            says: 'How a fish is called in.',
        },
        {
            word: 'limits',
            example: 'limits up to 10 kg { double 4.57 m  leader 4.57 m  combined 6.10 m }',
            says: 'Lengths allowed, by class.',
            many: true,
        },
        { word: 'rod', example: 'rod { tip 101.6 cm  butt 68.58 cm }', says: 'Least tip and greatest butt.' },
        {
            word: 'gaff',
            example: 'gaff { length 2.44 m  rope 9.14 m }',
            says: 'Greatest length of gaff and rope.',
        },
        {
            word: 'skirted',
            example: 'skirted { count 2  spacing 30.48 cm }',
            says: 'Hooks allowed in a skirted lure.',
        },
        {
            word: 'natural',
            example: 'natural { count 2  spacing 45.72 cm }',
            says: 'Hooks allowed in a natural bait.',
        },
        { word: 'plug', example: 'plug { count 3 }', says: 'Hooks allowed on a plug.' },
        { word: 'main', example: 'main { length 5 m }', says: 'The length of line that sets the class.' },
        {
            word: 'wire',
            choices: ['forbidden', 'allowed'],
            example: 'wire forbidden',
            says: 'Whether the main line may be wire.',
        },
        {
            word: 'edition',
            example: 'edition "2021-10-27"',
            says: 'The edition that the figures were read in.',
        },
        NOTE,
    ],
    limits: [
        { word: 'double', dimension: 'length', example: 'double 4.57 m', says: 'The longest double.' },
        {
            word: 'leader',
            dimension: 'length',
            example: 'leader 4.57 m',
            says: 'The longest leader, lure included.',
        },
        {
            word: 'combined',
            dimension: 'length',
            example: 'combined 6.10 m',
            says: 'The longest double and leader together.',
        },
    ],
    'rod limits': [
        { word: 'length', dimension: 'length', example: 'length 2 m', says: 'Greatest length.' },
        {
            word: 'tip',
            dimension: 'length',
            example: 'tip 101.6 cm',
            says: "Least distance from the reel's centre to the tip.",
        },
        { word: 'butt', dimension: 'length', example: 'butt 68.58 cm', says: 'Greatest length of the butt.' },
    ],
    gaff: [
        { word: 'length', dimension: 'length', example: 'length 2.44 m', says: 'Greatest length of a gaff.' },
        {
            word: 'rope',
            dimension: 'length',
            example: 'rope 9.14 m',
            says: "Greatest length of a flying gaff's rope.",
        },
    ],
    skirted: HOOK_LIMIT,
    natural: HOOK_LIMIT,
    plug: HOOK_LIMIT,
    main: [
        {
            word: 'length',
            dimension: 'length',
            example: 'length 5 m',
            says: 'The first metres, which set the class.',
        },
    ],
    log: [
        {
            word: 'using',
            example: 'using four-in-the-blue from 07:00',
            says: 'The plan that was fished, and from when.',
            many: true,
        },
        { word: 'zone', example: 'zone "+10:00"', says: 'The time zone of every time in this log.' },
        {
            word: 'at',
            example: 'at 07:42 bite port long rigger hooked released white-marlin 28 kg',
            says: 'What happened.',
            many: true,
        },
        NOTE,
    ],
    event: [
        { word: 'raise', example: 'raise', says: 'A fish showed.' },
        { word: 'bite', example: 'bite', says: 'A fish took hold.' },
        { word: 'hooked', example: 'hooked', says: 'It was on.' },
        { word: 'released', example: 'released white-marlin 28 kg', says: 'Let go at the boat.' },
        { word: 'tagged', example: 'tagged', says: 'Tagged and let go.' },
        { word: 'landed', example: 'landed', says: 'Brought aboard.' },
        { word: 'lost', example: 'lost "hook pulled"', says: 'Lost, and how.' },
        { word: 'lure', example: 'lure ink-pusher', says: "The lure, where it was not the plan's." },
        { word: 'species', example: 'species white-marlin', says: 'The fish.' },
        { word: 'by', example: 'by "Noor"', says: 'The angler.' },
        { word: 'fought', dimension: 'time', example: 'fought 22 min', says: 'How long the fight took.' },
        { word: 'speed', dimension: 'speed', example: 'speed 7.5 kn', says: 'Boat speed then.' },
        { word: 'sea', dimension: 'length', example: 'sea 1.2 m', says: 'Sea then.' },
        { word: 'water', dimension: 'temperature', example: 'water 24 C', says: 'Water temperature then.' },
        { word: 'colour', example: 'colour "blue"', says: 'Colour of the water.' },
        {
            word: 'place',
            example: 'place "south of the bank"',
            says: 'Private: left out of everything unless asked for by name.',
        },
        { word: 'note', example: 'note "second fish behind it"', says: 'A remark.' },
    ],
} as const satisfies Record<string, readonly Property[]>;

/** What a word means in a block; both spellings of colour and centre are one word. */
export function propertyOf(context: Context, word: string): Property | undefined {
    const spelled =
        word === 'color' ? 'colour' : word === 'center' ? 'centre' : word === 'halyard' ? 'halyards' : word;
    return (vocabulary[context] as readonly Property[]).find((property) => property.word === spelled);
}

/** The blocks that know a word. */
export function contextsKnowing(word: string): Context[] {
    return (Object.keys(vocabulary) as Context[]).filter((context) => propertyOf(context, word));
}

/** An example for a word, from a spread if it has the word, else wherever it is known first. */
export function exampleOf(word: string): string | undefined {
    const contexts = contextsKnowing(word);
    const context = contexts.find((each) => each === 'spread' || each === 'position') ?? contexts[0];
    return context && propertyOf(context, word)?.example;
}
