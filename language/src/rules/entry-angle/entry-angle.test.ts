import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const towed = (head: string, back: string, more = '') =>
    today(
        `    ${more}\n    port long rigger { outfit medium-1  lure mine  back ${back} }`,
        `lure mine "Mine" ${head} { length 250 mm  weight 200 g  pull 2 kg at 8 kn  leader nylon { diameter 1.4 mm  length 4 m } }`,
    );

// The outer halyard is 6.9 m up and 4 m ahead of the transom: 12 m back, the straight line falls by atan(6.9 / 16).
describe('entry-angle', () => {
    test('too steep for a bullet, and where it is decided', async () => {
        await expectMarked(
            today(
                `
    port long rigger { outfit medium-1  lure mine  back 12 m }
    //                                             ^^^^^^^^^ entry-angle: The line of port long rigger meets the water at 23 deg, and a bullet head works at 1 deg to 15 deg.
    starboard long rigger { outfit medium-2  lure mine  back 12 m  from halyard 2 }
    //                                                             ^^^^^^^^^^^^^^ entry-angle: Lower its clip, or let it back.`,
                'lure mine "Mine" bullet { weight 200 g  pull 2 kg at 8 kn  spares 1 }',
            ),
            'entry-angle',
        );
    });

    test('what is too steep for one head suits another', async () => {
        const steep = Math.round((Math.atan2(6.9, 24) * 180) / Math.PI);
        expect((await messagesOf(towed('jet', '20 m'), 'entry-angle'))[0]).toContain(`at ${steep} deg`);
        expect(await messagesOf(towed('chugger', '20 m'), 'entry-angle')).toEqual([]);
    });

    test('too flat', async () => {
        const flat = today(
            '    port short corner { outfit medium-1  lure mine  back 60 m }',
            'lure mine "Mine" plunger { weight 200 g  pull 2 kg at 8 kn }',
        );
        expect((await messagesOf(flat, 'entry-angle'))[0]).toMatch(
            /^The line of port short corner meets the water at 0\.\d+ deg, .* Raise its clip, or bring it in\.$/,
        );
    });

    test('a team knows its own degrees', async () => {
        const own = towed('jet', '20 m', 'rule entry-angle { steepest 25 deg }');
        expect(await messagesOf(own, 'entry-angle')).toEqual([]);
        const strict = towed('chugger', '20 m', 'rule entry-angle { flattest 18 deg }');
        expect((await messagesOf(strict, 'entry-angle'))[0]).toContain('works at 18 deg to 22 deg');
    });

    test('is silent about divers, which go where they like, and where nothing is known of the line', async () => {
        expect(await messagesOf(towed('diver', '12 m'), 'entry-angle')).toEqual([]);
        expect(await messagesOf(towed('jet', '12 m').replace('weight 200 g', ''), 'entry-angle')).toEqual([]);
    });
});
