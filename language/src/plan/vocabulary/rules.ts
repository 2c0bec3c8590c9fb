import type { Property } from './property.ts';
import { NOTE } from './shared.ts';

const HOOK_LIMIT: readonly Property[] = [
    { word: 'count', dimension: 'count', example: 'count 2', says: 'At most so many hooks.' },
    {
        word: 'spacing',
        dimension: 'length',
        example: 'spacing 30.48 cm',
        says: 'At most so far between the eyes.',
    },
];

/** The words of rule packs. */
export const rulesWords = {
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
} as const satisfies Record<string, readonly Property[]>;
