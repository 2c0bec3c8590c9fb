import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

function rigged(overhang: string): string {
    return today(
        '    event harbour-cup\n    port short corner { lure own  back wave 2 }',
        `lure own "Own" pusher {\n    hooks single { length 90 mm  overhang ${overhang} }\n}`,
    );
}

// IGFA: the trailing hook at most one hook length beyond the skirt.
describe('hook-overhang', () => {
    test('the trailing hook may stand its own length beyond the skirt', async () => {
        expect(await messagesOf(rigged('90 mm'), 'hook-overhang')).toEqual([]);
        expect(await messagesOf(rigged('95 mm'), 'hook-overhang')).toEqual([
            'The trailing hook of Own stands 95 mm beyond the skirt, and IGFA saltwater allows its own length, 90 mm. A fish on it does not count. Rig it further forward.',
        ]);
    });

    test('outside an event there is no rule', async () => {
        await expectMarked(rigged('120 mm').replace('    event harbour-cup\n', ''), 'hook-overhang');
    });
});
