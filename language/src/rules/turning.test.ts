import { expect, test } from 'vitest';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import type { Origin } from '../plan/origin.ts';
import { parseQuantity } from '../units/parse.ts';
import { cleanInWords, cleanSomewhere, type JudgedTurn, judgedTurn, widen } from './turning.ts';

const place = { uri: 'plan.spread', start: 12, end: 16 };
const asked = {
    si: 20,
    quantity: parseQuantity('20 m'),
    origin: { place, property: place, voice: 'spread' } as unknown as Origin,
} as unknown as Measure;

/** From which radius on turns are without fouls, and every lure works: to port, to starboard. */
const turn = (noFoul: readonly (number | undefined)[], allWorking: readonly (number | undefined)[]) =>
    ({
        asked,
        sides: ['port', 'starboard'].map((side, index) => ({
            side,
            figures: { noFoul: { radius: noFoul[index] }, allWorking: { radius: allWorking[index] } },
        })),
    }) as unknown as JudgedTurn;

test('the radii from which on turns are clean are said to either side, in whole metres up', () => {
    const clean = turn([30.2, 35], [41, 52.01]);
    expect(cleanInWords(clean, 'noFoul')).toBe(
        'Turn wider: nothing fouls or falls slack from 31 m to port and 35 m to starboard.',
    );
    expect(cleanInWords(clean, 'noFoul', 'allWorking')).toBe(
        'Turn wider: nothing fouls or falls slack from 31 m to port and 35 m to starboard; every lure works from 41 m to port and 53 m to starboard.',
    );
});

// 87 m is 285.4 ft: at 285 ft a lure still slows.
test('in feet the radius is rounded up as well, as the quick fix rounds it', () => {
    const feet = { ...asked, si: 60.96, quantity: parseQuantity('200 ft') } as unknown as Measure;
    const clean = { ...turn([30, 30], [86.9, 60]), asked: feet };
    expect(cleanInWords(clean, 'allWorking')).toBe(
        'Turn wider: every lure works from 286 ft to port and 197 ft to starboard.',
    );
    expect(widen(clean, 'allWorking')?.title).toBe('Turn no tighter than 286 ft');
});

test('where a side never comes clean, that is said instead, with what would help', () => {
    for (const radii of [
        [undefined, 35],
        [30, undefined],
        [undefined, undefined],
    ]) {
        expect(cleanInWords(turn(radii, [41, 52]), 'noFoul', 'allWorking')).toMatch(
            /^No turn that was looked at is free of fouls and slack: /,
        );
        expect(cleanInWords(turn([30, 35], radii), 'noFoul', 'allWorking')).toMatch(
            /^No turn that was looked at keeps it working: /,
        );
        expect(cleanSomewhere(turn([30, 35], radii))).toEqual(['noFoul']);
        expect(widen(turn([30, 35], radii), 'noFoul', 'allWorking')).toBeUndefined();
        expect(widen(turn(radii, [41, 52]), 'noFoul')).toBeUndefined();
    }
    expect(cleanSomewhere(turn([30, 35], [41, 52]))).toEqual(['noFoul', 'allWorking']);
});

test('a wider turn is clean to both sides, in each of the ways', () => {
    const clean = turn([30.2, 35], [41, 52.01]);
    expect(widen(clean, 'noFoul')).toMatchObject({
        title: 'Turn no tighter than 35 m',
        edits: [{ at: place, text: '35 m' }],
    });
    expect(widen(clean, 'noFoul', 'allWorking')?.title).toBe('Turn no tighter than 53 m');
});

test('a turn is judged once it is computed, of a plan that says how tightly it turns', () => {
    const [port, starboard] = [{ pairs: [] }, { pairs: [1] }];
    const known = { turns: { known: true, value: { asked, port, starboard } } } as unknown as AnalysedPlan;
    expect(judgedTurn(known)).toEqual({
        asked,
        sides: [
            { side: 'port', figures: port },
            { side: 'starboard', figures: starboard },
        ],
    });
    for (const turns of [undefined, { known: false }, { known: true, value: { port, starboard } }])
        expect(judgedTurn({ turns } as unknown as AnalysedPlan)).toBeUndefined();
});
