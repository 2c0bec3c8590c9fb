import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

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
