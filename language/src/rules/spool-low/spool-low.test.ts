import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const fished = (capacity: string, rest = '', line = 'line clear-24') =>
    today(
        '    port long rigger { outfit own  lure wisp  back 50 m }',
        `outfit own "Own" {\n    rod stick-24\n    reel { capacity ${capacity} }\n    ${line}\n    ${rest}\n}`,
    );

describe('spool-low', () => {
    test('adds up line out and run, and says what is left', async () => {
        await expectMarked(
            today(
                `
    port long rigger { outfit own  lure wisp  back 50 m }
    //                        ^^^ spool-low: Own holds 500 m of line, and a run of 350 m with 57 m out leaves 93 m`,
                'outfit own "Own" { rod stick-24  reel { capacity 500 m of 0.71 mm }  line clear-24  run 350 m }',
            ),
            'spool-low',
        );
    });

    test('a run is taken as 400 m where nobody said one, and the message owns up to it', async () => {
        expect((await messagesOf(fished('420 m of 0.71 mm'), 'spool-low'))[0]).toContain(
            'a run of 400 m (estimate) with 57 m out empties it',
        );
        expect(await messagesOf(fished('600 m of 0.71 mm'), 'spool-low')).toEqual([]);
        expect(await messagesOf(fished('600 m of 0.71 mm', 'run 480 m'), 'spool-low')).toHaveLength(1);
    });

    // A spool holds a volume: 800 m of 0.71 mm are 800·(0.71/0.9)² = 498 m of 0.9 mm.
    test('reckons with the line that is on it, not the one on the side plate', async () => {
        const thick = fished('800 m of 0.71 mm', '', 'line nylon { diameter 0.90 mm }');
        expect((await messagesOf(thick, 'spool-low'))[0]).toMatch(/^Own holds 498 m of line/);
        const half = fished('800 m of 0.71 mm', '', 'line nylon { diameter 0.71 mm  length 450 m }');
        expect((await messagesOf(half, 'spool-low'))[0]).toMatch(/^Own holds 450 m of line/);
    });

    test('a team may want more in reserve', async () => {
        const careful = fished('620 m of 0.71 mm').replace(
            '    port long',
            '    rule spool-low { left 200 m }\n    port long',
        );
        expect((await messagesOf(careful, 'spool-low'))[0]).toContain('Use a reel that holds 657 m');
    });

    test('is silent about a reel that nobody has measured', async () => {
        await expectMarked(
            today('    port long rigger { outfit own  lure wisp  back 50 m }', 'outfit own { run 900 m }'),
            'spool-low',
        );
    });
});
