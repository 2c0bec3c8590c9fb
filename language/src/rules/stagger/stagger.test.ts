import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const corners = (port: string, starboard: string, more = '') =>
    today(`
    ${more}
    port short corner { lure broad  back ${port} }
    starboard long corner { lure dart  back ${starboard} }`);

describe('stagger', () => {
    test('equal distances touch, a wave of stagger does not', async () => {
        const level = await messagesOf(corners('23 m', '23 m'), 'stagger');
        expect(level).toHaveLength(1);
        // Lures 2.8 m apart on lines of 23.2 m, touching at 0.25 m: asin((2.8 - 0.25) / 2 / 23.2) = 3.15°.
        expect(level[0]).toMatch(
            /touch at 3\.[12] deg of sway, and this plan allows for 4 deg\. .* more stagger.* would clear them\.$/,
        );
        expect(await messagesOf(corners('12 m', '23 m'), 'stagger')).toEqual([]);
    });

    test('tells two angles apart that would read alike', async () => {
        const [level] = await messagesOf(corners('23 m', '23 m'), 'stagger');
        const margin = Number(/touch at ([\d.]+) deg/.exec(level!)![1]);
        const set = corners('23 m', '23 m', `rule stagger { sway ${(margin + 0.06).toFixed(2)} deg }`);
        const [, touch, allows] = /touch at ([\d.]+) deg of sway, and this plan allows for ([\d.]+) deg/.exec(
            (await messagesOf(set, 'stagger'))[0]!,
        )!;
        expect(touch).not.toBe(allows);
    });

    // Common practice, no source: a staggered diamond tangles less than pairs, and pairs less than all alike.
    test('a staggered diamond is clean, pairs and lines all alike are not', async () => {
        const four = (...back: string[]) =>
            today(`
    port short corner { lure broad  back ${back[0]} }
    starboard long corner { lure dart  back ${back[1]} }
    starboard short rigger { lure gulp  back ${back[2]} }
    port long rigger { lure wisp  back ${back[3]} }`);
        expect(await messagesOf(four('16 m', '24 m', '33 m', '44 m'), 'stagger')).toEqual([]);
        const pairs = await messagesOf(four('20 m', '20 m', '38 m', '38 m'), 'stagger');
        const alike = await messagesOf(four('30 m', '30 m', '30 m', '30 m'), 'stagger');
        expect(pairs.length).toBeGreaterThan(0);
        expect(alike.length).toBeGreaterThanOrEqual(pairs.length);
    });

    test('the sway that counts is the plan’s, or the lure’s own, or what the team asks for', async () => {
        expect(await messagesOf(corners('23 m', '23 m', 'sway 2 deg'), 'stagger')).toEqual([]);
        expect(await messagesOf(corners('23 m', '23 m', 'rule stagger { sway 2 deg }'), 'stagger')).toEqual(
            [],
        );
        const wild = corners('20 m', '23 m', 'sway 3 deg').replace(
            '\nspread',
            '\nlure wild { sway 6 deg }\nlure wilder like wild { }\nspread',
        );
        expect(await messagesOf(wild, 'stagger')).toEqual([]);
        const swinging = wild.replace('lure broad', 'lure wild').replace('lure dart', 'lure wilder');
        expect((await messagesOf(swinging, 'stagger'))[0]).toContain('this plan allows for 6 deg');
        const strict = corners('20 m', '23 m', 'rule stagger { sway 20 deg }');
        expect((await messagesOf(strict, 'stagger'))[0]).toContain('allows for 20 deg');
        // What would clear them was computed for the plan's own sway, and says nothing about another.
        const other = corners('23 m', '23 m', 'rule stagger { sway 5 deg }');
        expect((await messagesOf(other, 'stagger'))[0]).toMatch(
            /Give the two more stagger, height or width\.$/,
        );
        await expect(mended(other, 'stagger')).rejects.toThrow('offers no fix');
    });

    test('of two that sway differently the wilder one counts, a bait as well as a lure', async () => {
        const wild = 'lure wild { sway 6 deg }\nbait scad "Scad" { kind dead  sway 7 deg }';
        const one = corners('20 m', '23 m').replace('\nspread', `\n${wild}\nspread`);
        const lure = one.replace('lure dart', 'lure wild');
        expect((await messagesOf(lure, 'stagger'))[0]).toContain('this plan allows for 6 deg');
        expect((await messagesOf(one.replace('lure broad', 'bait scad'), 'stagger'))[0]).toContain(
            'this plan allows for 7 deg',
        );
    });

    test.each(['23 m', '75 ft'])('is mended by letting the longer line out: %s', async (back) => {
        const after = await mended(corners(back, back), 'stagger');
        expect(after).toMatch(back.includes('ft') ? /back \d+ ft/ : /back \d+(\.\d)? m/);
        expect(await messagesOf(after, 'stagger')).toEqual([]);
    });

    test('two with a distance on a wave have no number to write anew', async () => {
        const sheet = await expectMarked(
            today(`
    port short corner { lure broad  back wave 3 }
    starboard long corner { lure dart  back wave 3 }
    //                                 ^^^^^^^^^^^ stagger: touch at`),
            'stagger',
        );
        expect(sheet.findings.find(({ rule }) => rule === 'stagger')?.fixes).toEqual([]);
    });

    test('is silent where a tow point is not known', async () => {
        const bare = corners('23 m', '23 m').replace('boat fulmar\n', 'boat bare\n');
        await expectMarked(bare.replace('\nspread', '\nboat bare { beam 3 m }\nspread'), 'stagger');
    });
});
