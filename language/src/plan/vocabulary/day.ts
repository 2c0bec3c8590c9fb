import type { Property } from './property.ts';
import { NOTE } from './shared.ts';

/** What a crew calls the light. */
export const lights = ['dawn', 'bright', 'overcast', 'dusk', 'dark'] as const;

/** The words of a day. */
export const dayWords = {
    day: [
        { word: 'date', example: 'date 2026-02-14', says: 'The day that it is for.' },
        {
            word: 'from',
            example: 'from 06:30 fish first-light',
            says: 'The spread from then on. The first hour that is written begins the day.',
            many: true,
        },
        {
            word: 'when',
            example: 'when sea over 1.5 m fish rough-day',
            says: 'The spread under a sea, a wind or a light. The first that holds goes before the hour.',
            choices: lights,
            many: true,
        },
        { word: 'until', example: 'until 16:30', says: 'When the lines are in for good.' },
        NOTE,
    ],
} as const satisfies Record<string, readonly Property[]>;
