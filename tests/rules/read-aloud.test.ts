import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Finding, messageOf } from '../../language/src/plan/finding.ts';
import { rules } from '../../language/src/rules/registry.ts';
import { checkText } from '../language/marked.ts';

const here = new URL('mistakes/', import.meta.url);
const pages = new URL('../../language/src/rules/', import.meta.url);

const mistakes = readdirSync(here)
    .filter((file) => file.endsWith('.spread'))
    .map((file) => ({ file, text: readFileSync(new URL(file, here), 'utf8') }));

// After a change of words: read the new ones aloud, then `npx vitest run tests/rules/read-aloud.test.ts -u`.
test.each(rules)(
    '$name, read aloud: the thing by its name, the numbers, why, what to do',
    async ({ name }) => {
        const marked = mistakes.filter(({ text }) => text.includes(`^ ${name}: `));
        const texts = [
            ...marked.map(({ file, text }) => aloud(file, text)),
            aloud('the first example on its page', firstExample(name), name),
        ];
        const whole = `${(await Promise.all(texts)).join('\n\n')}\n`;
        await expect(whole).toMatchFileSnapshot(`read-aloud/${name}.txt`);
        const sentences = whole.split('\n').filter((each) => /^ {2}(?!see: |fix: )/.test(each));
        expect(sentences.length).toBeGreaterThan(0);
        for (const line of sentences) {
            expect(line).toMatch(/^ {2}[A-Z“`\d].*\.$/);
            expect(line).not.toMatch(/!|undefined|NaN|\[object|Infinity| {2}\S.* {2}/);
            expect(line.length).toBeLessThan(480);
        }
    },
);

test('every mistake is read aloud under the rule that finds it, and no file is left over', () => {
    const names = new Set(rules.map(({ name }) => name));
    for (const { file, text } of mistakes) expect(names, file).toContain(/\^ ([\w-]+): /.exec(text)![1]!);
    const files = readdirSync(new URL('read-aloud/', import.meta.url));
    expect(files.sort()).toEqual([...names].sort().map((name) => `${name}.txt`));
});

/** Whole findings, as somebody in the cockpit would read them to somebody at the helm. */
async function aloud(title: string, text: string, only?: string): Promise<string> {
    const { findings } = await checkText(text);
    const said = findings.filter(({ rule }) => only === undefined || rule === only).map(inSentences);
    return [`── ${title}`, ...said].join('\n');
}

function inSentences({
    rule,
    severity,
    positions,
    related,
    fixes,
    unnecessary,
    ...finding
}: Finding): string {
    const about = positions.length > 0 ? ` on ${positions.join(', ')}` : '';
    return [
        `${rule}, ${severity}${about}${unnecessary ? ' (does nothing)' : ''}`,
        `  ${messageOf(finding)}`,
        ...related.map(({ what }) => `  see: ${what}`),
        ...fixes.map(
            ({ title, edits }) => `  fix: ${title} (${edits.map(({ text }) => `“${text}”`).join(', ')})`,
        ),
    ].join('\n');
}

function firstExample(rule: string): string {
    const page = readFileSync(new URL(`${rule}/${rule}.md`, pages), 'utf8');
    return /```spread\n([\s\S]*?)```/.exec(page)![1]!;
}
