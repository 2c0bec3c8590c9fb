import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expectMarked } from '../../../tests/language/marked.ts';
import { indexPage, renewed, renewedTextPage } from './page.ts';
import { nearestRule, pageOf, ruleNamed, rules } from './registry.ts';
import { groups } from './rule.ts';
import { textCodes } from './text-codes.ts';

const here = new URL('.', import.meta.url);
const names = rules.map(({ name }) => name);

describe('the registry', () => {
    test('holds the rules in order, each once', () => {
        expect(names).toEqual([...new Set(names)].sort());
    });

    test('holds every folder, and each folder has its rule, its page and its tests', () => {
        const folders = readdirSync(here, { withFileTypes: true }).filter((entry) => entry.isDirectory());
        const ofRules = folders.map(({ name }) => name).filter((name) => name !== 'the-text');
        expect(ofRules.sort()).toEqual(names);
        for (const name of names) {
            const files = readdirSync(new URL(`${name}/`, here)).sort();
            expect(files).toEqual([`${name}.md`, `${name}.test.ts`, `${name}.ts`]);
        }
    });

    test('finds a rule by its name, and by a slip in its name', () => {
        expect(ruleNamed('stagger')?.name).toBe('stagger');
        expect(ruleNamed('staggered')).toBeUndefined();
        expect(nearestRule('wave-fase')?.name).toBe('wave-face');
        expect(nearestRule('umbrella')).toBeUndefined();
    });

    test.each(rules)('$name checks something, in one of the groups, and says so in one sentence', (rule) => {
        expect(rule.check ?? rule.checkFile ?? rule.checkWaivers).toBeTypeOf('function');
        expect(groups).toContain(rule.group);
        expect(rule.summary).toMatch(/^[A-Z].{20,118}\.$/);
        for (const cause of rule.givesWayTo ?? []) expect(ruleNamed(cause)?.check).toBeTypeOf('function');
        for (const [name, { doc }] of Object.entries(rule.settings)) {
            expect(name, 'severity is said in the same block').not.toBe('severity');
            expect(doc).toMatch(/\.$/);
        }
    });
});

// Where these fail after a change to a rule, `npx vitest run language/src/rules -u` brings the derived parts up to date.
describe('the pages', () => {
    test('the index lists what the registry holds', async () => {
        await expect(indexPage()).toMatchFileSnapshot(new URL('README.md', here).pathname);
    });

    test.each(rules)("$name's page says what the rule says", async (rule) => {
        const file = new URL(`${rule.name}/${rule.name}.md`, here);
        expect(file.pathname.endsWith(pageOf(rule))).toBe(true);
        const page = readFileSync(file, 'utf8');
        await expect(renewed(page, rule)).toMatchFileSnapshot(file.pathname);
    });

    test.each(rules)("$name's page has the parts that a reader looks for, the rationale last", ({ name }) => {
        const page = readFileSync(new URL(`${name}/${name}.md`, here), 'utf8');
        const parts = [...page.matchAll(/^## (.+)$/gm)].map(([, part]) => part);
        expect(parts).toEqual(['Why', 'Example', 'Settings', 'When to waive it', 'Rationale']);
    });
});

describe('the pages of codes that are no rules', () => {
    const pageOfCode = (name: string) => readFileSync(new URL(`the-text/${name}.md`, here), 'utf8');
    // What is wrong with these shows in no text that can be printed here.
    const withoutExample = ['file-size', 'nesting', 'baseline-stale'];

    test('there is one for each code, and none for anything else', () => {
        const files = readdirSync(new URL('the-text/', here)).sort();
        expect(files).toEqual(textCodes.map(({ name }) => `${name}.md`).sort());
        expect(textCodes.filter(({ name }) => ruleNamed(name))).toEqual([]);
    });

    test.each(textCodes)(
        "$name's page says what the code says, and has what a reader looks for",
        async (code) => {
            const file = new URL(`the-text/${code.name}.md`, here);
            await expect(renewedTextPage(pageOfCode(code.name), code)).toMatchFileSnapshot(file.pathname);
            const parts = [...pageOfCode(code.name).matchAll(/^## (.+)$/gm)].map(([, part]) => part);
            const example = withoutExample.includes(code.name) ? [] : ['Example'];
            expect(parts).toEqual(['Why', ...example, 'What to do']);
        },
    );

    const examples = textCodes.flatMap(({ name }) =>
        [...pageOfCode(name).matchAll(/```spread\n([\s\S]*?)```/g)].map(([, text]) => ({
            name,
            text: text!,
        })),
    );

    test.each(examples)('$name: an example holds', async ({ name, text }) => {
        await expectMarked(text, name);
    });

    test('each shows what it finds, and what is right', () => {
        for (const { name } of textCodes.filter((code) => !withoutExample.includes(code.name))) {
            const shown = examples.filter((example) => example.name === name);
            expect(
                shown.map(({ text }) => text.includes(`^ ${name}: `)),
                name,
            ).toEqual([true, false]);
        }
    });
});

describe('the examples on the pages', () => {
    const examples = rules.flatMap(({ name }) => {
        const page = readFileSync(new URL(`${name}/${name}.md`, here), 'utf8');
        return [...page.matchAll(/```spread\n([\s\S]*?)```/g)].map(([, text], index) => ({
            name,
            index,
            text: text!,
        }));
    });

    test.each(rules)('$name shows what it finds, and what it has nothing to say about', ({ name }) => {
        const shown = examples.filter((example) => example.name === name);
        expect(shown.some(({ text }) => text.includes(`^ ${name}: `))).toBe(true);
        expect(shown.some(({ text }) => !text.includes('^ '))).toBe(true);
    });

    test.each(examples)('$name, example $index, holds', async ({ name, text }) => {
        await expectMarked(text, name);
    });
});
