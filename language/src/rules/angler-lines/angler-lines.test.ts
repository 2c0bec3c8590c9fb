import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const club = 'rules club "Club" {\n    at most 2 lines per angler\n}\n';

describe('angler-lines', () => {
    test('so many lines for each angler, blamed on the first too many', async () => {
        await expectMarked(
            today(
                `
    event club
    port short corner { lure broad  angler "Ines" }
    starboard long corner { lure dart  angler "Ines" }
    port short rigger { lure gulp  angler "Tove" }
    port long rigger { lure wisp  angler "Ines" }
    //                                   ^^^^^^ angler-lines: Ines has 3 lines, and Club allows 2 for each angler
    shotgun { lure pin  angler "Tove" }`,
                club,
            ),
            'angler-lines',
        );
    });

    test('one angler is one however the name is written, and what names nobody is told', async () => {
        await expectMarked(
            today(
                `
    event club
    //    ^^^^ angler-lines: 2 lines name no angler, and Club allows 2 lines for each.
    port short corner { lure broad  angler "Ines" }
    starboard long corner { lure dart  angler "ines" }
    port short rigger { lure gulp }
    port long rigger { lure wisp  angler "Ines " }
    //                                   ^^^^^^^ angler-lines: Ines has 3 lines, and Club allows 2 for each angler
    shotgun { lure pin }`,
                club,
            ),
            'angler-lines',
        );
        const none = today('    event club\n    port short corner { lure broad }', club);
        expect(await messagesOf(none, 'angler-lines')).toEqual([
            '1 line names no angler, and Club allows 2 lines for each. What nobody is named for was not counted. Name the angler of each line: angler "Ines".',
        ]);
    });
});
