import { describe, expect, test } from 'vitest';
import { checkText, messagesOf, today } from '../../../../tests/language/marked.ts';

function rigged(hooks: string, head = 'head 50 mm'): string {
    return today(
        '    port short corner { outfit medium-1  lure own  back wave 2 }',
        `lure own "Own" pusher {\n    length 330 mm\n    ${head}\n    hooks ${hooks}\n}`,
    );
}

describe('hook-fit', () => {
    test('the gap is at least the head’s width', async () => {
        expect(await messagesOf(rigged('single { gap 49 mm }'), 'hook-fit')).toEqual([
            'The hook in Own has a gap of 49 mm, and the head is 50 mm across. The head keeps the point away from the jaw. Rig a larger hook.',
        ]);
        expect(await messagesOf(rigged('single { gap 50 mm }'), 'hook-fit')).toEqual([]);
    });

    test('says what a team asks for, so that the numbers tell why', async () => {
        const asked = rigged('single { gap 54 mm }', 'head 50 mm').replace(
            '    port short corner',
            '    rule hook-fit { gap 120 % }\n    port short corner',
        );
        expect((await messagesOf(asked, 'hook-fit'))[0]).toContain(
            'a gap of 54 mm, and the head is 50 mm across, of which 120 % is asked for.',
        );
    });

    test('under a plug the head keeps no point away', async () => {
        const plug = rigged('treble { gap 18 mm }', 'head 34 mm').replace('"Own" pusher', '"Own" diver');
        expect(await messagesOf(plug, 'hook-fit')).toEqual([]);
        expect(await messagesOf(plug.replace('diver', 'pusher'), 'hook-fit')).toHaveLength(1);
    });

    test('says each figure as it was measured, and in both systems where they differ', async () => {
        expect((await messagesOf(rigged('single { gap 1.5 in }'), 'hook-fit'))[0]).toContain(
            'a gap of 1.5 in (38 mm), and the head is 50 mm across',
        );
    });

    test('a team may ask for more or less', async () => {
        const soft = rigged('single { gap 42 mm }').replace(
            '    speed',
            '    rule hook-fit { gap 80 % }\n    speed',
        );
        expect(await messagesOf(soft, 'hook-fit')).toEqual([]);
    });

    test('what was not measured is not judged', async () => {
        expect(await messagesOf(rigged('single { length 90 mm }'), 'hook-fit')).toEqual([]);
        expect(await messagesOf(rigged('single { gap 20 mm }', 'weight 200 g'), 'hook-fit')).toEqual([]);
    });

    test('a single point stands up, of which a hint reminds; two points keel each other', async () => {
        const { findings } = await checkText(rigged('single { gap 52 mm  point down }'));
        const [finding] = findings.filter(({ rule }) => rule === 'hook-fit');
        expect(finding).toMatchObject({ severity: 'hint' });
        expect(await messagesOf(rigged('twin { gap 52 mm  point down }'), 'hook-fit')).toEqual([]);
    });

    test('hooks that the position has on its own count before the lure’s', async () => {
        const text = rigged('single { gap 52 mm }').replace(
            'back wave 2',
            'back wave 2  hooks single { gap 30 mm }',
        );
        expect((await messagesOf(text, 'hook-fit'))[0]).toContain('a gap of 30 mm');
    });
});
