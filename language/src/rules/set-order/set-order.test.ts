import { describe, expect, test } from 'vitest';
import { crossedRods, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const four = `
    port short corner { outfit medium-1  lure broad  back wave 2 }
    starboard long corner { outfit medium-2  lure dart  back wave 3 }
    starboard short rigger { outfit medium-3  lure gulp  back wave 4 }
    port long rigger { outfit medium-4  lure wisp  back wave 5 }`;

describe('set-order', () => {
    test('a rigger line that goes out across a corner line', async () => {
        await expectMarked(
            today(`${four}
    order set starboard short rigger, starboard long corner, port short corner, port long rigger
    //                                                                          ^^^^^^^^^^^^^^^^ set-order: Port long rigger goes out after port short corner, and crosses it as it is paid out.
`),
            'set-order',
        );
    });

    // Common practice, no source: flat lines come in before rigger lines.
    test('and one that comes in across it', async () => {
        await expectMarked(
            today(`${four}
    order clear port long rigger, port short corner
    //          ^^^^^^^^^^^^^^^^ set-order: Port long rigger comes in before port short corner, and crosses it as it is taken in. A line taken across one that is set hooks it. Take in port short corner first
`),
            'set-order',
        );
    });

    test.each(['set port short corner, port long rigger', 'clear port long rigger, port short corner'])(
        'is mended by the computed order: %s',
        async (order) => {
            const after = await mended(today(`${four}\n    order ${order}`), 'set-order');
            const [what, ...names] = order.split(/ (?=port)|, /);
            expect(after).toContain(`order ${what} ${names.reverse().join(', ')}`);
            expect(await messagesOf(after, 'set-order')).toEqual([]);
        },
    );

    test('a sound order, a reason, or lines that do not meet: nothing to say', async () => {
        await expectMarked(
            today(`${four}\n    order set port long rigger, starboard short rigger, port short corner`),
            'set-order',
        );
        await expectMarked(
            today(`${four}\n    order set port short corner, port long rigger because "the rod sticks"`),
            'set-order',
        );
        await expectMarked(
            today(`${four}\n    order set port short corner, starboard long corner`),
            'set-order',
        );
    });

    test('lines that no order keeps apart', async () => {
        expect(await messagesOf(crossedRods(), 'set-order')).toEqual([
            'No order sets port inner and port outer clear of one another. Whichever goes first, the next one is taken across it. Put one of the rods in another holder, or tow its line from elsewhere.',
        ]);
    });

    test('lines that touch as they run have that as the cause', async () => {
        const level = today(`
    port short rigger { outfit medium-3  lure gulp  back 34 m }
    port long rigger { outfit medium-4  lure wisp  back 34 m }`);
        expect(await messagesOf(level, 'stagger')).toHaveLength(1);
        expect(await messagesOf(level, 'set-order')).toEqual([]);
    });

    test('is silent where nobody knows where the rods stand', async () => {
        await expectMarked(
            today(
                '    port short corner { lure broad  back wave 2 }\n    port long rigger { lure wisp  back wave 5 }\n    order set port short corner, port long rigger',
            ),
            'set-order',
        );
    });
});
