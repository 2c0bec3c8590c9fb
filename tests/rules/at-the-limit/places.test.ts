import { describe, expect, test } from 'vitest';
import { checkText, mended, messagesOf, today } from '../../language/marked.ts';

/*
 * Lines by the names of their places. What is exactly at its limit keeps it, what is a hair beyond does not; and the
 * sentences that only a rare plan brings about. Each test is named after the rule that it is about.
 */

test('lateral-gap: neighbours alone are compared, and a gap that is kept is kept', async () => {
    const text = (gap: string) =>
        today(`    rule lateral-gap { severity warning  gap ${gap} }
    port short corner { lure broad  back wave 2 }
    starboard long corner { lure dart  back wave 3 }
    port long rigger { lure wisp  back wave 5 }`);
    // The flat clips are 2.8 m apart; the rigger line is further out than either.
    expect(await messagesOf(text('2.79 m'), 'lateral-gap')).toEqual([]);
    const found = await messagesOf(text('50 m'), 'lateral-gap');
    expect(found).toHaveLength(2);
    expect(
        found.filter(
            (message) => /starboard long corner/i.test(message) && /port long rigger/i.test(message),
        ),
    ).toEqual([]);
});

describe('shotgun-inside', () => {
    test('shotgun-inside: a shotgun inside another line, said whole, both lines named and shown', async () => {
        const text = today(`
    port long rigger { lure wisp  back wave 5 }
    shotgun { lure pin  back wave 4 }`);
        const { findings } = await checkText(text);
        const [finding] = findings.filter(({ rule }) => rule === 'shotgun-inside');
        expect(finding?.what).toMatch(
            /^Shotgun runs 3\d\.\d m back, inside port long rigger at 4\d\.\d m\.$/,
        );
        expect(finding?.why).toBe('The shotgun is the longest line, down the middle.');
        expect(finding?.remedy).toBe('Run it behind the others, or give it another name.');
        expect(finding?.positions).toEqual(['shotgun', 'port long rigger']);
        const related = finding?.related.map(({ at, what }) => [text.slice(at.start, at.end), what]);
        expect(related).toEqual([['back wave 5', 'The longest line runs here.']]);
    });
});

describe('position-mismatch', () => {
    test('position-mismatch: lines at one distance are in no wrong order', async () => {
        const level = today(`
    port short corner { lure broad  back 20 m }
    starboard long corner { lure dart  back 20 m }
    shotgun { lure pin  back 20 m }`);
        expect(await messagesOf(level, 'position-mismatch')).toEqual([]);
    });

    test('position-mismatch: only a short line is behind a long one', async () => {
        const text = today(`
    port short corner { lure broad  back 30 m }
    starboard long corner { lure dart  back 20 m }`);
        const { findings } = await checkText(text);
        const found = findings.filter(({ rule }) => rule === 'position-mismatch');
        expect(found.map(({ positions }) => positions)).toEqual([
            ['port short corner', 'starboard long corner'],
        ]);
        expect(found[0]!.related.map(({ at }) => text.slice(at.start, at.end))).toEqual(['back 20 m']);
    });

    test('position-mismatch: a rigger line from a flat clip hangs as low as one from a rod tip', async () => {
        const from = (what: string) =>
            messagesOf(
                today(`    port long rigger { lure wisp  back wave 5  ${what} }`),
                'position-mismatch',
            );
        expect(await from('from flat clip')).toEqual([
            'Port long rigger is towed from a flat clip. A rigger line runs from a halyard, high and wide of the corner lines. Tow it from a halyard, or name the position for what it is.',
        ]);
        expect(await from('from rod tip')).toHaveLength(1);
        expect(await from('from halyard 2')).toEqual([]);
        expect(await from('from bridge')).toEqual([]);
    });

    test('position-mismatch: distances that another plan says are not swapped in this one', async () => {
        const text = (own: string) => `use "cockpit.spread"
spread before { boat fulmar  speed 8 kn  port short corner { lure broad  back 30 m }  starboard long corner { lure dart } }
spread after like before { ${own} }
`;
        await expect(
            mended(text('starboard long corner { back 20 m }'), 'position-mismatch'),
        ).rejects.toThrow('offers no fix');
    });
});

describe('thin-inside-thick', () => {
    const fine = 'outfit fine "Fine" { line nylon { diameter 0.4 mm } }\noutfit plain "Plain" { }';
    const found = (lines: string) => messagesOf(today(lines, fine), 'thin-inside-thick');

    test('thin-inside-thick: only a rigger line runs above a corner line', async () => {
        expect(
            await found(
                '    port short corner { outfit fine  back 12 m }\n    port long corner { outfit medium-1  back 34 m }',
            ),
        ).toEqual([]);
        expect(
            await found(
                '    port short rigger { outfit fine  back 12 m }\n    port long rigger { outfit medium-1  back 34 m }',
            ),
        ).toEqual([]);
        expect(
            await found(
                '    port short corner { outfit fine  back 12 m }\n    port long rigger { outfit medium-1  back 34 m }',
            ),
        ).toHaveLength(1);
    });

    test('thin-inside-thick: a line that says nothing of itself is not compared', async () => {
        for (const [near, far] of [
            ['outfit plain', 'outfit medium-1'],
            ['outfit fine', 'outfit plain'],
            ['lure broad', 'outfit medium-1'],
            ['outfit fine', 'lure broad'],
        ])
            expect(
                await found(
                    `    port short corner { ${near}  back 12 m }\n    port long rigger { ${far}  back 34 m }`,
                ),
            ).toEqual([]);
    });
});

test('size-order: a lure that nobody measured is neither larger nor smaller than another', async () => {
    const found = (near: string, far: string) =>
        messagesOf(
            today(
                `    port short corner { lure ${near}  back wave 2 }\n    port long rigger { lure ${far}  back wave 5 }`,
                'lure blank "Blank" jet { }',
            ),
            'size-order',
        );
    expect(await found('wisp', 'broad')).toHaveLength(1);
    expect(await found('blank', 'broad')).toEqual([]);
    expect(await found('wisp', 'blank')).toEqual([]);
});
