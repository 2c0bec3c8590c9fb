import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('used-twice', () => {
    test('an outfit is in one holder, also when it stands by', async () => {
        await expectMarked(
            today(`
    port short corner { outfit medium-1  lure broad  back wave 2 }
    centre standby { outfit medium-1  bait live "scad" }
    //                      ^^^^^^^^ used-twice: Medium one is already in use at port short corner`),
            'used-twice',
        );
    });

    test('a lure may run as often as there are of it on board', async () => {
        const above = 'lure twin-sister "Twin sister" jet { spares 1 }';
        await expectMarked(
            today(
                `
    port short corner { lure twin-sister  back wave 2 }
    starboard long corner { lure twin-sister  back wave 3 }
    port long rigger { lure twin-sister  back wave 5 }
    //                      ^^^^^^^^^^^ used-twice: Twin sister already runs at port short corner`,
                above,
            ),
            'used-twice',
        );
    });

    test('a halyard holds one line, and so does a flat clip of one side', async () => {
        await expectMarked(
            today(`
    port short rigger { lure dart  back wave 4 }
    port long rigger { lure wisp  back wave 5  from halyard 1 }
    //                                         ^^^^^^^^^^^^^^ used-twice: Port long rigger hangs on the same halyard as port short rigger
    starboard short rigger { lure gulp  back wave 4  from halyard 1 }
    port short corner { lure broad  back wave 2 }
    port long corner { lure pin  back wave 3 }
//  ^^^^^^^^^^^^^^^^ used-twice: Port long corner hangs on the same flat clip as port short corner
    starboard long corner { back wave 3 }`),
            'used-twice',
        );
    });

    test('says of a clip that it holds one line, and of gear that stands by nothing: it hangs nowhere', async () => {
        const text = today(`
    port short corner { lure broad  back 23 m }
    port long corner { lure dart  back 30 m }`);
        expect(await messagesOf(text, 'used-twice')).toEqual([
            'Port long corner hangs on the same flat clip as port short corner. A clip holds one line. Say for each of the two where it is towed from.',
        ]);
        const standing = text.replace(
            'port long corner { lure dart  back 30 m }',
            'port standby { lure dart  from flat clip }',
        );
        expect(await messagesOf(standing, 'used-twice')).toEqual([]);
    });

    test('two lines on one clip are one finding: no stagger cures that', async () => {
        const text = today(`
    port short corner { lure broad  back 23 m  from flat clip }
    port long corner { lure dart  back 23 m  from flat clip }`);
        expect(await messagesOf(text, 'used-twice')).toHaveLength(1);
        expect(await messagesOf(text, 'stagger')).toEqual([]);
        const apart = text.replace('port long', 'starboard long');
        expect(await messagesOf(apart, 'used-twice')).toEqual([]);
        expect(await messagesOf(apart, 'stagger')).toHaveLength(1);
    });

    test('a named point holds one line in its clip, on each side, and any number of cords', async () => {
        const eye = 'boat eyed like fulmar { point arch { ahead 1 m  out 1.2 m  up 2.4 m } }';
        await expectMarked(
            today(
                `
    port bridge teaser { back 10 m  from bridge }
    port squid chain { back 12 m  from bridge }
    port short corner { lure broad  back wave 2  from arch  clip 3 kg }
    starboard short corner { lure gulp  back wave 2  from arch  clip 3 kg }
    port long corner { lure dart  back wave 3  from arch  clip 3 kg }
    //                                              ^^^^ used-twice: Port long corner hangs on the same clip, arch, as port short corner.`,
                eye,
            ).replace('boat fulmar\n    speed', 'boat eyed\n    speed'),
            'used-twice',
            'stagger',
            'set-order',
        );
    });

    test('two cords through one eye hold nothing of each other, whatever holder their rods share', async () => {
        const eye = 'boat eyed like fulmar { point arch { ahead 1 m  out 1.2 m  up 2.4 m } }';
        const cords = today(
            '    port short corner { lure broad  back 20 m  from arch }\n    port long corner { lure dart  back 30 m  from arch }',
            eye,
        ).replace('boat fulmar\n    speed', 'boat eyed\n    speed');
        expect(await messagesOf(cords, 'used-twice')).toEqual([]);
        const { findings } = await checkText(cords.replaceAll('from arch', 'from rod tip'));
        expect(findings.find(({ rule }) => rule === 'used-twice')).toMatchObject({
            severity: 'warning',
            what: 'Port long corner is towed from the same rod holder as port short corner.',
            why: 'A holder takes one rod.',
            remedy: 'Write down the holder of each (holder port long corner { ... } in the boat), or tow one of the two from elsewhere.',
        });
    });

    test('a rod holder takes one rod, also where the boat has one for both lengths', async () => {
        const two = today(`
    port short corner { outfit medium-1  lure broad  back wave 2  from rod tip }
    port long corner { outfit medium-2  lure dart  back wave 3  from rod tip }
    //                                                          ^^^^^^^^^^^^ used-twice: Port long corner is towed from the same rod holder as port short corner.`);
        await expectMarked(two, 'used-twice', 'stagger', 'set-order', 'lateral-gap');
        const own =
            'boat split like fulmar {\n    holder port long corner { ahead 0.5 m  out 0.6 m  up 1.0 m  lean 20 deg }\n}';
        const apart = two
            .replace('spread today', `${own}\nspread today`)
            .replace('boat fulmar\n    speed', 'boat split\n    speed');
        expect(await messagesOf(apart, 'used-twice')).toEqual([]);
    });

    test('a rod tip of a boat that says no holders is nobody’s', async () => {
        const bare = 'boat bare "Bare" { length 8 m }';
        await expectMarked(
            today(
                '    port short corner { lure broad  from rod tip }\n    port long corner { lure dart  from rod tip }',
                bare,
            ).replace('boat fulmar\n    speed', 'boat bare\n    speed'),
            'used-twice',
        );
    });
});
