import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const towed = (lure: string, back = '44 m', more = '') =>
    today(
        `    ${more}\n    port long rigger { outfit medium-1  lure mine  back ${back} }`,
        `lure mine "Mine" chugger { ${lure}  leader nylon { diameter 1.4 mm  length 4 m } }`,
    );

describe('lift', () => {
    test('a light lure on a hard pull', async () => {
        await expectMarked(
            today(
                `
    port long rigger { outfit medium-1  lure mine  back 44 m }
    //                                             ^^^^^^^^^ lift: Mine at port long rigger is pulled up with`,
                'lure mine "Mine" chugger { weight 60 g  pull 3 kg at 8 kn }',
            ),
            'lift',
        );
    });

    // A straight line from 6.9 m up to a lure 48 m behind it pulls 3 kg upwards by 3·sin(8.2°) = 0.43 kg, less its own sag.
    test('says how many times', async () => {
        const [message] = await messagesOf(towed('weight 60 g  pull 3 kg at 8 kn'), 'lift');
        const times = Number(/with ([\d.]+) times/.exec(message!)![1]);
        expect(times * 0.06).toBeGreaterThan(0.39);
        expect(times * 0.06).toBeLessThan(0.43);
    });

    test('ordinary lures bear ordinary tow points', async () => {
        expect(await messagesOf(towed('weight 200 g  pull 3 kg at 8 kn'), 'lift')).toEqual([]);
        const strict = towed('weight 200 g  pull 3 kg at 8 kn', '44 m', 'rule lift { most 1.5 }');
        expect((await messagesOf(strict, 'lift'))[0]).toContain('and 1.5 times is much');
    });

    test('a line that is too steep has that as its cause, and is not found twice', async () => {
        const steep = towed('weight 60 g  pull 3 kg at 8 kn', '10 m');
        expect(await messagesOf(steep, 'entry-angle')).toHaveLength(1);
        expect(await messagesOf(steep, 'lift')).toEqual([]);
        const unheard = towed('weight 60 g  pull 3 kg at 8 kn', '10 m', 'rule entry-angle { severity off }');
        expect(await messagesOf(unheard, 'lift')).toHaveLength(1);
    });

    test('is silent without a weight', async () => {
        expect(await messagesOf(towed('pull 3 kg at 8 kn'), 'lift')).toEqual([]);
    });
});
