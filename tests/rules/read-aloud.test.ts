import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Finding, messageOf } from '../../language/src/plan/finding.ts';
import { rules } from '../../language/src/rules/registry.ts';
import { checkText } from '../language/marked.ts';

const mistakes = new URL('mistakes/', import.meta.url);
const pages = new URL('../../language/src/rules/', import.meta.url);

/** Whole findings, as somebody in the cockpit would read them to somebody at the helm. */
async function aloud(name: string, text: string, only?: string): Promise<string> {
    const { findings } = await checkText(text);
    const said = findings.filter(({ rule }) => only === undefined || rule === only).map(sentences);
    return [`── ${name}`, ...said].join('\n');
}

function sentences({ rule, severity, positions, related, fixes, unnecessary, ...finding }: Finding): string {
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

// After a change of words: read the new ones aloud, then `npx vitest run tests/rules/read-aloud.test.ts -u`.
test('every finding reads well: the thing by its name, the numbers, why, what to do', async () => {
    const files = readdirSync(mistakes).filter((file) => file.endsWith('.spread'));
    const texts = [
        ...files.map((file) => aloud(file, readFileSync(new URL(file, mistakes), 'utf8'))),
        ...rules.map(({ name }) => aloud(`the page of ${name}`, firstExample(name), name)),
    ];
    const whole = `${(await Promise.all(texts)).join('\n\n')}\n`;
    await expect(whole).toMatchFileSnapshot('read-aloud.txt');
    for (const line of whole.split('\n').filter((each) => /^ {2}(?!see: |fix: )/.test(each))) {
        expect(line).toMatch(/^ {2}[A-Z“`\d].*\.$/);
        expect(line).not.toMatch(/!|undefined|NaN|\[object|Infinity| {2}\S.* {2}/);
        expect(line.length).toBeLessThan(480);
    }
});
