import { describe, expect, test } from 'vitest';
import { expectMarked, mended, messagesOf, today } from '../../../tests/language/marked.ts';

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

    test('numbers below zero, which have no effect', async () => {
        await expectMarked(
            `rules team {
    rule drag-untested { age -5 d }
    //                       ^^^^ quantity: age cannot be below zero. It counts as not written
    rule stagger { sway 0 deg }
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
