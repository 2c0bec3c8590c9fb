import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const onItsBack = today(`
    port short rigger { outfit medium-1  lure dart  back 29 m }
    //                                              ^^^^^^^^^ wave-face: Port short rigger runs on the back of wave 3 at 8 kn
`);

describe('wave-face', () => {
    test('names the part of the wave, and the nearest faces', async () => {
        await expectMarked(onItsBack, 'wave-face');
        const [message] = await messagesOf(onItsBack, 'wave-face');
        // 22.8 and 33.6 m on the centreline by linear theory; the crests bend back a little this far out.
        expect(message).toMatch(/Move it to 2[23](\.\d)? m \(wave 3\) or 3[34](\.\d)? m \(wave 4\)\.$/);
    });

    // By linear theory the waves that keep pace with 8 kn are 2π·(4.116 m/s)²/g = 10.85 m long, on the centreline with
    // crests half a wave, one and a half and so on behind the transom: Havelock, 1908, and Lamb, Hydrodynamics, § 256.
    const long = (2 * Math.PI * ((8 * 1852) / 3600) ** 2) / 9.80665;
    test.each([
        [1.5 * long, 'on the crest of wave 2'],
        [1.75 * long, 'on the back of wave 2'],
        [1.96 * long, 'in the trough at wave 3'],
        [2.5 * long, 'on the crest of wave 3'],
    ])('at %f m a lure down the middle runs %s', async (back, part) => {
        const text = today(`    shotgun { lure wisp  back ${back.toFixed(2)} m }`);
        expect((await messagesOf(text, 'wave-face'))[0]).toContain(`Shotgun runs ${part} at 8 kn.`);
    });

    test('leads to the two faces on either side of it, however near the boat it runs', async () => {
        const faces = async (back: string) => {
            const { findings } = await checkText(today(`    shotgun { lure wisp  back ${back} }`));
            const found = findings.find(({ rule }) => rule === 'wave-face');
            return found?.fixes.map(({ title }) => title.replace(/.* on /, ''));
        };
        expect(await faces('29 m')).toEqual(['wave 3', 'wave 4']);
        expect(await faces('20 m')).toEqual(['wave 2', 'wave 3']);
        expect(await faces('16.5 m')).toEqual(['wave 2', 'wave 3']);
    });

    test.each(['wave 2', 'wave 3', 'wave 4', 'wave 5', 'wave 6'])(
        'has nothing to say at back %s',
        async (back) => {
            await expectMarked(today(`    port long rigger { lure dart  back ${back} }`), 'wave-face');
        },
    );

    test('is mended by each of its fixes, in the unit of the author', async () => {
        const inFeet = onItsBack.replace('29 m', '95 ft');
        for (const fix of [0, 1]) {
            const after = await mended(inFeet, 'wave-face', fix);
            expect(after).toMatch(/back \d+ ft/);
            expect(await messagesOf(after, 'wave-face')).toEqual([]);
        }
    });

    test('is silent in a sea that hides the boat’s own waves', async () => {
        const rough = onItsBack.replace('speed 8 kn', 'speed 8 kn\n    sea 3 m');
        expect(await messagesOf(rough, 'wave-face')).toEqual([]);
    });

    test('is silent where the boat begins to plane, and without a speed', async () => {
        expect(await messagesOf(onItsBack.replace('8 kn', '16 kn'), 'wave-face')).toEqual([]);
        expect(await messagesOf(onItsBack.replace('speed 8 kn', ''), 'wave-face')).toEqual([]);
    });

    test('leaves divers, baits and teasers alone', async () => {
        const below = today(
            `
    port short rigger { lure deep  back 29 m }
    starboard short rigger { bait live "scad"  back 29 m }
    port squid chain { teaser chain  back 29 m  from bridge }`,
            'lure deep diver { }\nteaser chain { }',
        );
        await expectMarked(below, 'wave-face');
    });

    test('judges measured crests before theory', async () => {
        const measured = today(
            `
    boat seen
    port short corner { lure broad  back 11.9 m }
    //                              ^^^^^^^^^^^ wave-face: at 8 kn`,
            'boat seen like fulmar { first crest 9.2 m at 8 kn }',
        ).replace('    boat fulmar\n', '');
        await expectMarked(measured, 'wave-face');
    });
});
