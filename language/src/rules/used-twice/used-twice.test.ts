import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

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

    test('rod tips and named points may be shared', async () => {
        await expectMarked(
            today(`
    port bridge teaser { back 10 m  from bridge }
    port squid chain { back 12 m  from bridge }`),
            'used-twice',
        );
    });
});
