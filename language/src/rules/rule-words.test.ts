import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../tests/language/marked.ts';

describe('the words of a rule setting', () => {
    test('rules, settings and severities that there are not', async () => {
        await expectMarked(
            `rules team {
    rule staggr { severity error }
    //   ^^^^^^ unknown-name: There is no rule called \`staggr\`. It has no effect. Did you mean \`stagger\`?
    rule stagger { swey 5 deg }
    //             ^^^^ unknown-word: The rule stagger has no setting \`swey\`. It counts as not written. Did you mean \`sway\`?
    rule crew { severity eror }
    //                   ^^^^ value: severity cannot be \`eror\`. It counts as not written. Did you mean \`error\`?
    rule wave-face { loudness 3 }
    //               ^^^^^^^^ unknown-word: It has severity
}
`,
        );
    });

    test('numbers that no rule can go by, which have no effect', async () => {
        await expectMarked(
            `rules team {
    rule drag-untested { age -5 d }
    //                       ^^^^ quantity: age cannot be -5 d: it is from 1 d to 1000 d. It counts as not written
    rule stagger { sway 0 deg }
    //                  ^^^^^ quantity: sway cannot be 0 deg: it is from 0.5 deg to 45 deg.
    rule crew { lines 0 }
    //                ^ quantity: lines cannot be 0: it is from 0.5 to 10.
    rule drag-over-class { hooked 33 %  full 120 % }
    //                                       ^^^^^ quantity: full cannot be 120 %: it is from 10 % to 100 %.
    rule lateral-gap { gap 0.1 m }
    rule size-order { slack 300 mm }
    rule method-mismatch { slack 0 % }
}
`,
        );
    });

    test('a setting that is said twice, of which the first counts', async () => {
        const text = `rules team {
    rule stagger { severity error  severity hint }
    //                             ^^^^^^^^^^^^^ duplicate: \`severity\` is said twice in this block. The first one counts
}
`;
        await expectMarked(text);
        expect(await mended(text, 'duplicate')).toContain('severity error   }');
        const plan = today(
            '    rule crew { lines 1  lines 3 }\n    crew 1\n    shotgun { }\n    port short corner { }',
        );
        expect(await messagesOf(plan, 'crew')).toHaveLength(1);
    });

    test('a severity in quotes, which says how it is written', async () => {
        await expectMarked(
            `rules team {
    rule line-count { severity "off" }
    //                         ^^^^^ value: severity is written without quotes.
}
`,
        );
    });

    test('numbers of the wrong kind, or without a unit', async () => {
        await expectMarked(
            `rules team {
    rule stagger { sway 5 kg }
    //                  ^^^^ quantity: sway:
    rule size-order { slack 15 }
    //                      ^^ quantity: slack:
    rule crew { lines many }
    //                ^^^^ value: lines is a count, and \`many\` is none
    rule hook-fit { gap 80 % }
}
`,
        );
    });

    test('what is no quantity at all is said once', async () => {
        const messages = await messagesOf('rules team { rule stagger { sway 5 degreez } }\n', 'quantity');
        expect(messages).toHaveLength(1);
    });

    test('a rule that no plan can waive', async () => {
        expect(await messagesOf(today('    waive unused because "later"'), 'value')).toEqual([
            "A plan cannot waive unused, which is about the file. It counts as not written. Set it in the team's rules: rule unused { severity off }.",
        ]);
    });

    test('the rule that a waiver names', async () => {
        const text = today('    waive wave-fase because "trying it"');
        expect(await messagesOf(text, 'unknown-name')).toEqual([
            'There is no rule called `wave-fase`. It has no effect. Did you mean `wave-face`?',
        ]);
        expect(await mended(text, 'unknown-name')).toContain('waive wave-face because');
    });
});

describe('said whole, with what would mend it', () => {
    const told = async (entry: string) => {
        const text = `rules team { ${entry} }\n`;
        const [finding] = (await checkText(text)).findings;
        return {
            message: [finding?.what, finding?.remedy].filter(Boolean).join(' '),
            fixes: finding?.fixes.map(({ title, edits }) => `${title}: ${edits.map(({ text }) => text)}`),
            related: finding?.related.map(({ at, what }) => `${text.slice(at.start, at.end)}: ${what}`),
        };
    };

    test('a word that is said twice', async () => {
        expect(await told('rule stagger { severity error  severity hint }')).toEqual({
            message: '`severity` is said twice in this block. Keep one of them.',
            fixes: ['Take this one out: '],
            related: ['severity error: The first one.'],
        });
    });

    test('a rule, a setting and a severity that are near to one, and that are near to none', async () => {
        expect((await told('rule wave-fase { severity error }')).fixes).toEqual([
            expect.stringMatching(/: wave-face$/),
        ]);
        expect(await told('rule qqqqqqqqqq { severity error }')).toMatchObject({
            message: 'There is no rule called `qqqqqqqqqq`. The index of rules lists them all.',
            fixes: [],
        });
        expect((await told('rule stagger { swey 5 deg }')).fixes).toEqual([expect.stringMatching(/: sway$/)]);
        expect((await told('rule wave-face { loudness 3 }')).fixes).toEqual([]);
        expect((await told('rule crew { severity eror }')).fixes).toEqual([
            expect.stringMatching(/: error$/),
        ]);
        expect(await told('rule crew { severity qqqqqqqqqq }')).toMatchObject({
            message: 'severity cannot be `qqqqqqqqqq`. It can be error, warning, hint or off.',
            fixes: [],
        });
    });

    test('a severity that is no word', async () => {
        expect((await told('rule crew { severity "off" }')).fixes).toEqual([expect.stringMatching(/: off$/)]);
        expect((await told('rule crew { severity 3 kg }')).message).toMatch(
            /^severity cannot be `3 kg`\. It can be /,
        );
        expect((await told('rule crew { severity "loud" }')).message).toMatch(
            /^severity cannot be `loud`\. It can be /,
        );
    });

    test('a number that a rule wants, for instance', async () => {
        expect((await told('rule crew { lines many }')).message).toMatch(/For instance `lines 2`\.$/);
        // The sway of a turn has no figure of its own to name.
        expect((await told('rule stagger { sway wide }')).message).not.toContain('For instance');
    });
});
