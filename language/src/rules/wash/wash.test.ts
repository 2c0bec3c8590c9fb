import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

describe('wash', () => {
    test('a lure close in on the centreline is in the foam, in its author’s feet', async () => {
        await expectMarked(
            today(`
    shotgun { lure wisp  back 30 ft }
    //                   ^^^^^^^^^^ wash: Shotgun runs 30 ft back, inside the propeller wash, which reaches 33 ft`),
            'wash',
        );
    });

    test('the same distance is clear out to the side', async () => {
        await expectMarked(today('    port short corner { lure wisp  back 9 m }'), 'wash');
    });

    test('the boat’s own wash comes before the estimate', async () => {
        const own = 'boat tidy like fulmar { wash { near 1 m  far 0.4 m  length 6 m } }';
        const text = today('    shotgun { lure wisp  back 9 m }', own).replace(
            'boat fulmar\n    speed',
            'boat tidy\n    speed',
        );
        expect(text).toContain('boat tidy\n');
        expect(await messagesOf(text, 'wash')).toEqual([]);
    });

    test('a boat without a beam has no wash that anybody knows', async () => {
        const bare =
            'boat bare { centre rigger { length 5 m  foot { ahead 1 m  up 3 m }  rise 70 deg  halyards 4 m } }';
        const text = today('    shotgun { lure wisp  back 9 m }', bare).replace(
            'boat fulmar\n    speed',
            'boat bare\n    speed',
        );
        expect(await messagesOf(text, 'wash')).toEqual([]);
    });
});
