import { expect, test } from 'vitest';
import type { Spread, SpreadLine } from '../plan/model.ts';
import type { Origin, Place } from '../plan/origin.ts';
import { placeInPlan } from './placing.ts';

const place = (uri: string, start: number): Place => ({
    uri,
    start,
    end: start + 4,
    range: { start: { line: 0, character: start }, end: { line: 0, character: start + 4 } },
});
const origin = (voice: Origin['voice'], uri: string, start: number, more: Partial<Origin> = {}): Origin => ({
    place: place(uri, start),
    property: place(uri, start),
    voice,
    ...more,
});
const here = (start: number, voice: Origin['voice'] = 'position') => origin(voice, 'plan.spread', start);
const away = (voice: Origin['voice']) => origin(voice, 'tackle.spread', 900);
const word = (start: number) => ({ origin: here(start) });

const plan = {
    origin: here(1, 'spread'),
    boat: word(10),
    target: word(20),
    event: word(30),
    method: word(40),
} as unknown as Spread;
const line = (more: object = {}) => ({ origin: here(100), ...more }) as unknown as SpreadLine;
const shown = (origins: readonly Origin[], ...lines: readonly SpreadLine[]) =>
    placeInPlan(origins, plan, lines).start;

test('what the plan says itself is shown where it says so, the most exact first', () => {
    expect(shown([here(55), here(66)], line())).toBe(55);
    expect(shown([away('outfit'), here(66)], line())).toBe(66);
});

test('what was said elsewhere is shown at the word that the plan took it over by', () => {
    const full = line({
        outfit: word(110),
        lure: word(120),
        bait: word(130),
        teaser: word(140),
        method: word(150),
    });
    expect(shown([away('outfit')], full)).toBe(110);
    // A leader of its own speaks as a lure, whatever it is rigged to.
    for (const voice of ['lure', 'bait', 'teaser'] as const) {
        expect(shown([away(voice)], full)).toBe(120);
        expect(shown([away(voice)], line({ bait: word(130), teaser: word(140) }))).toBe(130);
        expect(shown([away(voice)], line({ teaser: word(140) }))).toBe(140);
        expect(shown([away(voice)], line())).toBe(100);
    }
    expect(shown([away('method')], full)).toBe(150);
    expect(shown([away('method')], line())).toBe(40);
    expect(shown([away('boat')], full)).toBe(10);
    expect(shown([away('species')], full)).toBe(20);
    expect(shown([away('rules')], full)).toBe(30);
});

test('where no word takes it over, the line to blame is shown, and without a line the plan', () => {
    expect(shown([away('outfit')], line(), line({ outfit: word(110) }))).toBe(100);
    for (const voice of ['outfit', 'lure', 'bait', 'teaser'] as const) expect(shown([away(voice)])).toBe(1);
    const bare = { origin: here(1, 'spread') } as unknown as Spread;
    for (const voice of ['boat', 'species', 'rules', 'method'] as const)
        expect(placeInPlan([away(voice)], bare, []).start).toBe(1);
});

test('what a plan has from another that it is like stands in that one, though it be the same file', () => {
    for (const voice of ['spread', 'position', 'default'] as const)
        expect(shown([origin(voice, 'plan.spread', 55, { inherited: true })], line())).toBe(100);
    // A lure that both use is no plan's own.
    expect(shown([origin('lure', 'plan.spread', 55, { inherited: true })], line())).toBe(55);
    expect(shown([here(55)], line())).toBe(55);
});
