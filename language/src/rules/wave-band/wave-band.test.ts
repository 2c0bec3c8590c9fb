import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const outer = '    port long rigger { lure wisp  back wave 5 }';

describe('wave-band', () => {
    test('says nothing until the team says how far its speed strays', async () => {
        await expectMarked(today(outer), 'wave-band');
    });

    test('names the band and the speeds that leave it', async () => {
        const loose = today(`
    rule wave-band { wander 0.3 kn }
    port long rigger { lure wisp  back wave 5 }
    //                            ^^^^^^^^^^^ wave-band: Port long rigger stays on wave 5 at 7.6 kn to 8.1 kn, and the boat may run 7.7 kn to 8.3 kn`);
        await expectMarked(loose, 'wave-band');
    });

    test('says which way to move: back where the boat may run too fast, in where it may run too slow', async () => {
        const fast = today(`    rule wave-band { wander 0.3 kn }\n${outer}`);
        expect((await messagesOf(fast, 'wave-band'))[0]).toMatch(/let it back a little\.$/);
        const slow = today(`
    rule wave-band { wander 0.3 kn }
    port long rigger { lure wisp  back 48 m }`);
        expect((await messagesOf(slow, 'wave-band'))[0]).toMatch(/bring it in a little\.$/);
    });

    test('the speeds of the plan itself need no setting, and are put right by keeping to the band', async () => {
        const own = today(`
    speeds 7.8 kn to 8.4 kn
    port short corner { lure broad  back 12.5 m }
    port long rigger { lure wisp  back wave 5 }
    //                            ^^^^^^^^^^^ wave-band: stays on wave 5 at 7.6 kn to 8.1 kn, and the boat may run 7.8 kn to 8.4 kn`);
        await expectMarked(own, 'wave-band');
        const after = await mended(own, 'wave-band');
        expect(after).toContain('speeds 7.8 kn to 8.1 kn');
        expect(await messagesOf(after, 'wave-band')).toEqual([]);
    });

    test('speeds that throw several lures off are the one cause: said once, with the band that suits them all', async () => {
        const wide = today(`
    speeds 7.4 kn to 8.5 kn
//  ^^^^^^^^^^^^^^^^^^^^^^^ wave-band: Port long rigger and starboard short rigger leave their wave faces within 7.4 kn to 8.5 kn
    port long rigger { lure wisp  back wave 5 }
    starboard short rigger { lure gulp  back wave 4 }`);
        const { findings } = await expectMarked(wide, 'wave-band');
        const [finding] = findings.filter(({ rule }) => rule === 'wave-band');
        expect(finding?.related.map(({ what }) => what)).toEqual([
            'Port long rigger stays on wave 5 at 7.6 kn to 8.1 kn.',
            'Starboard short rigger stays on wave 4 at 7.5 kn to 8.1 kn.',
        ]);
        expect(await messagesOf(await mended(wide, 'wave-band'), 'wave-band')).toEqual([]);
    });

    test('the plan’s own speeds come before the team’s wander', async () => {
        const both = today(
            `    speeds 7.9 kn to 8.0 kn\n    rule wave-band { wander 1 kn }\n    port short corner { lure broad  back wave 2 }`,
        );
        expect(await messagesOf(both, 'wave-band')).toEqual([]);
        expect(await messagesOf(both.replace('    speeds 7.9 kn to 8.0 kn\n', ''), 'wave-band')).toHaveLength(
            1,
        );
    });

    test('the band narrows from wave to wave', async () => {
        const wander = '    rule wave-band { wander 0.2 kn }\n';
        const quiet = today(`${wander}    port short corner { lure broad  back wave 2 }`);
        expect(await messagesOf(quiet, 'wave-band')).toEqual([]);
        expect(await messagesOf(today(wander + outer), 'wave-band')).toHaveLength(1);
    });

    test('is silent where the waves are in doubt', async () => {
        const rough = today(`    sea 3 m\n    rule wave-band { wander 0.5 kn }\n${outer}`);
        await expectMarked(rough, 'wave-band');
    });
});
