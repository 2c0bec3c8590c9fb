import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf } from '../../../../tests/language/marked.ts';

describe('version', () => {
    test('a file for a newer language is refused in so many words', async () => {
        const newer = 'layback 3\nspread today { speed 8 kn }\n';
        expect(await messagesOf(newer, 'version')).toEqual([
            'This file needs layback 3, and this tool reads layback 1. What it does not know it would leave out, and the plan would look safer than it is. Use a newer version of the tool.',
        ]);
    });

    test.each(['1.1', '1.10', '2', '2.0'])('layback %s is newer', async (number) => {
        expect(await messagesOf(`layback ${number}\nspread today { speed 8 kn }\n`, 'version')).toEqual([
            expect.stringContaining(`needs layback ${number}, and this tool reads layback 1.`),
        ]);
    });

    test.each(['layback 1\n', 'layback 1.0\n', 'layback 0.9\n', ''])(
        'a file of today has nothing to say: %j',
        async (opening) => {
            await expectMarked(`${opening}spread today { speed 8 kn }\n`, 'version');
        },
    );
});
