import { expect, test } from 'vitest';
import { checkText, today } from '../../../tests/language/marked.ts';
import { fishedPairs, nearFirst, neighboursOutward, tackledLines } from './neighbours.ts';

const analysed = async (...lines: string[]) => (await checkText(today(lines.join('\n')))).plans[0]!;
const namesOf = (pair: readonly { readonly line: { readonly position: { readonly name: string } } }[]) =>
    pair.map(({ line }) => line.position.name);
const outward = async (...lines: string[]) => {
    const pairs = [...neighboursOutward(await analysed(...lines))].map(namesOf);
    return pairs.map((pair) => pair.join(' < ')).sort();
};

test('a crew compares who run side by side seen from astern, and who follow each other on one side', async () => {
    // From port to starboard: long rigger, short corner, shotgun, long corner.
    expect(
        await outward(
            '    port long rigger { lure wisp  back 45 m }',
            '    shotgun { lure pin  back 60 m }',
            '    starboard long corner { lure dart  back 20 m }',
            '    port short corner { lure broad  back 12 m }',
        ),
    ).toEqual([
        'port short corner < port long rigger',
        'port short corner < shotgun',
        'starboard long corner < shotgun',
    ]);
});

test('on one side only the next line in is followed, and across the boat only the neighbour', async () => {
    // From port to starboard: long rigger, short rigger, short corner; then starboard: long corner, long rigger.
    expect(
        await outward(
            '    port long rigger { lure wisp  back 45 m }',
            '    port short corner { lure broad  back 12 m }',
            '    starboard long corner { lure dart  back 20 m }',
            '    starboard long rigger { lure pin  back 50 m }',
            '    port short rigger { lure gulp  back 30 m }',
        ),
    ).toEqual([
        'port short corner < port short rigger',
        'port short corner < starboard long corner',
        'port short rigger < port long rigger',
        'starboard long corner < starboard long rigger',
    ]);
});

test('who follows on one side is compared also where another line runs between the two', async () => {
    // From port to starboard: the long rigger at 30 m, the short one at 45 m, the corner at 12 m.
    expect(
        await outward(
            '    port short rigger { lure gulp  back 45 m }',
            '    port long rigger { lure wisp  back 30 m }',
            '    port short corner { lure broad  back 12 m }',
        ),
    ).toEqual([
        'port long rigger < port short rigger',
        'port short corner < port long rigger',
        'port short corner < port short rigger',
    ]);
});

test('lines at one distance, teasers, gear that stands by and lines without a distance have no order', async () => {
    expect(
        await outward(
            '    port long rigger { lure wisp  back 45 m }',
            '    starboard long rigger { lure pin  back 45 m }',
            '    port squid chain { back 8 m  from bridge }',
            '    centre standby { bait live "scad" }',
            '    port short corner { lure broad }',
        ),
    ).toEqual([]);
});

test('pairs of fished lines leave teasers out, and the one that runs nearer comes first', async () => {
    const plan = await analysed(
        '    port squid chain { back 8 m  from bridge }',
        '    port long rigger { lure wisp  back 45 m }',
        '    starboard short corner { lure broad  back 12 m }',
        '    starboard bridge teaser { back 9 m  from bridge }',
    );
    expect(plan.pairs.length).toBeGreaterThan(1);
    const [pair, ...more] = fishedPairs(plan);
    expect(more).toEqual([]);
    expect(namesOf(nearFirst(pair!))).toEqual(['starboard short corner', 'port long rigger']);
    expect(namesOf(nearFirst({ ...pair!, a: pair!.b, b: pair!.a }))).toEqual([
        'starboard short corner',
        'port long rigger',
    ]);
    const unknown = { ...pair!.b, astern: { known: false, reason: 'Not said.' } as const };
    expect(namesOf(nearFirst({ ...pair!, b: unknown }))).toEqual(namesOf([pair!.a, pair!.b]));
    expect(namesOf(nearFirst({ ...pair!, a: unknown, b: pair!.a }))).toEqual(namesOf([unknown, pair!.a]));
});

test('a fish may take what is fished and what stands by, and no teaser', async () => {
    const plan = await analysed(
        '    port squid chain { back 8 m  from bridge }',
        '    port short corner { lure broad  back 12 m }',
        '    centre standby { bait live "scad" }',
    );
    expect(namesOf(tackledLines(plan))).toEqual(['port short corner', 'centre standby']);
});
