import type { Property } from './property.ts';
import { NOTE } from './shared.ts';

/** The words of a log. */
export const logWords = {
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
