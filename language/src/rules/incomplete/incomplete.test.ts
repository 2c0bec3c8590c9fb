import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const found = async (text: string) => {
    const { findings } = await checkText(text);
    return findings
        .filter(({ rule }) => rule === 'incomplete')
        .map(({ severity, what }) => `${severity}: ${what}`);
};
const full = '    starboard short corner { outfit medium-1  lure broad  back wave 2 }';

describe('incomplete', () => {
    test.each([
        ['outfit medium-2', 'no lure or bait and no distance back'],
        ['lure dart', 'no distance back and no outfit'],
        ['', 'no lure or bait, no distance back and no outfit'],
        ['outfit medium-2  back wave 3', 'no lure or bait'],
        ['outfit medium-2  lure dart', 'no distance back'],
        ['lure dart  back wave 3', 'no outfit'],
    ])('a line with `%s` has %s', async (line, lacks) => {
        expect(await found(today(`${full}\n    port long corner { ${line} }`))).toEqual([
            `warning: Port long corner has ${lacks}.`,
        ]);
    });

    test('bait serves for a lure, and gear that stands by for a line that is not fished yet', async () => {
        expect(
            await found(
                today(
                    `${full}\n    port long corner { outfit medium-2  bait live "scad"  back 20 m }\n    standby { }`,
                ),
            ),
        ).toEqual([]);
    });

    test('a teaser needs no outfit, and a place that carries one needs it', async () => {
        const teasers = (line: string) =>
            today(`${full}\n    port bridge teaser { ${line} }`, 'teaser toy { length 300 mm }');
        expect(await found(teasers('teaser toy  back 8 m'))).toEqual([]);
        expect(await found(teasers(''))).toEqual([
            'warning: Port bridge teaser has no teaser and no distance back.',
        ]);
    });

    test('an empty plan has no boat, no speed and no line', async () => {
        expect(await found('spread f { }')).toEqual(['warning: F has no boat, no speed and no line.']);
        expect(await found(today('    standby { outfit medium-1 }'))).toEqual([
            'warning: Today has no line.',
        ]);
    });

    test('a plan whose lines have no outfit at all is a layout, told once and as a hint', async () => {
        expect(
            await found(
                today(
                    '    port short corner { lure broad  back wave 2 }\n    starboard long corner { lure dart  back wave 3 }',
                ),
            ),
        ).toEqual(['hint: No line of today has an outfit.']);
    });

    test('a line whose usual tow point the boat does not describe is a hint with the reason', async () => {
        const text = today(
            `    port short corner { outfit medium-1  lure broad  back wave 2 }`,
            'boat skiff "Skiff" { beam 2 m }',
        ).replace('boat fulmar\n', 'boat skiff\n');
        expect(await found(text)).toEqual([
            'hint: Where the line of port short corner leaves the boat is not known.',
        ]);
        expect((await messagesOf(text, 'incomplete'))[0]).toContain(
            'The boat has no `holder` for the rod of the port short corner.',
        );
    });

    test('so is a teaser that nobody said the tow point of', async () => {
        const text = today(
            '    starboard dredge { teaser chain  back 12 m }\n    port dredge { teaser chain  back 12 m  from bow }',
            'boat skiff "Skiff" { beam 2 m  point bow { ahead 6 m  out 0.5 m  up 1 m } }\nteaser chain "Chain" { kind chain }',
        ).replace('boat fulmar\n', 'boat skiff\n');
        expect(await found(text)).toEqual([
            'hint: Where the line of starboard dredge leaves the boat is not known.',
        ]);
    });

    test('where a line leaves a bare boat is asked of usual places and rod tips, not of what the plan names itself', async () => {
        const bare = (line: string) =>
            today(
                `    port short corner { outfit medium-1  lure broad  back 20 m  from rod tip }\n    ${line}`,
                'boat skiff "Skiff" { beam 2 m  holder port corner { ahead 0.4 m  out 0.9 m  up 1 m } }',
            ).replace('boat fulmar\n', 'boat skiff\n');
        const nowhere = (name: string) => [`hint: Where the line of ${name} leaves the boat is not known.`];
        const rigger = 'outfit medium-2  lure dart  back 30 m';
        expect(await found(bare(`port long rigger { ${rigger} }`))).toEqual(nowhere('port long rigger'));
        expect(await found(bare(`port long rigger { ${rigger}  from rod tip }`))).toEqual(
            nowhere('port long rigger'),
        );
        expect(await found(bare(`port long rigger { ${rigger}  from halyard 1 }`))).toEqual([]);
        expect(await found(bare(''))).toEqual([]);
    });

    test('says each of the three whole: what is missing, what follows, what to do', async () => {
        const whole = (text: string) => messagesOf(text, 'incomplete');
        expect(await whole('spread f { }')).toEqual([
            'F has no boat, no speed and no line. What is not written is not judged, so nothing found means nothing here. Write what is missing, or let it be a preset that others are like.',
        ]);
        const layout = today('    port short corner { lure broad  back wave 2 }');
        expect(await whole(layout)).toEqual([
            'No line of today has an outfit. Its layout was judged, and no drag, no class, no reel and no strength. Name the outfits when you know them: `outfit fifty-1`.',
        ]);
        const { findings } = await checkText(layout);
        expect(findings.find(({ rule }) => rule === 'incomplete')?.positions).toEqual(['port short corner']);
        const nowhere = today(
            '    port short corner { outfit medium-1  lure broad  back 20 m }',
            'boat skiff "Skiff" { beam 2 m }',
        ).replace('boat fulmar\n', 'boat skiff\n');
        expect((await whole(nowhere))[0]).toMatch(
            / Describe it on the boat, or say where the line is towed from: `from …`\.$/,
        );
        const checked = await checkText(nowhere);
        expect(checked.findings.find(({ rule }) => rule === 'incomplete')?.positions).toEqual([
            'port short corner',
        ]);
    });

    test('a preset that others are like is there to be completed, until it has a boat and a speed', async () => {
        const preset = 'spread base { port short corner { outfit medium-1 } }';
        const day = `use "cockpit.spread"
${preset}
spread day like base { boat fulmar  speed 8 kn  port short corner { lure broad  back wave 2 } }`;
        expect(await found(day)).toEqual([]);
        expect(await found(`use "cockpit.spread"\n${preset}`)).toHaveLength(2);
        expect(await found(day.replace('spread base {', 'spread base { boat fulmar  speed 8 kn '))).toEqual([
            'warning: Port short corner has no lure or bait and no distance back.',
        ]);
    });

    test('what is refused is not missing: it is told where it stands', async () => {
        expect(
            await found(today(`${full}\n    port long corner { outfit medium-2  lure dart  back wave 401 }`)),
        ).toEqual([]);
    });

    test('can be waived with a reason, set and switched off', async () => {
        await expectMarked(
            today(`${full}
    port long corner { outfit medium-2  back wave 3 }
    waive incomplete on port long corner because "the lure is chosen at first light"`),
            'incomplete',
            'waiver-idle',
        );
        expect(
            await found(
                today(
                    `${full}\n    port long corner { outfit medium-2  back wave 3 }\n    rule incomplete { severity off }`,
                ),
            ),
        ).toEqual([]);
    });
});
