import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AstUtils } from 'langium';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { format } from '../../language/src/editor/format.ts';
import { messageOf } from '../../language/src/plan/finding.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { ruleNamed } from '../../language/src/rules/registry.ts';
import { checkText } from './marked.ts';
import { renewed } from './reference-tables.ts';

const file = fileURLToPath(new URL('../../language/REFERENCE.md', import.meta.url));
const page = readFileSync(file, 'utf8');
const examples = [...page.matchAll(/## ([^\n]*)\n(?:(?!\n## )[\s\S])*?```spread\n([\s\S]*?)```/g)].map(
    ([, section, text]) => ({ section: section!, text: text! }),
);
const services = createServices();

// Where this fails after a change to the vocabulary, `npx vitest run tests/language/reference -u` mends the page.
test('the tables say what the vocabulary, the units and the library say', async () => {
    await expect(renewed(page)).toMatchFileSnapshot(file);
});

test('every fence is an example that is read', () => {
    expect(examples.length).toBe(page.match(/^```spread$/gm)?.length);
    expect(examples.length).toBeGreaterThanOrEqual(11);
});

describe.each(examples)('under “$section”', ({ text }) => {
    test('the example parses, and knows every word', () => {
        const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse<Sheet>(text);
        expect([...lexerErrors, ...parserErrors].map(({ message }) => message)).toEqual([]);
        expect(
            AstUtils.streamAst(value)
                .filter(({ $type }) => $type === 'Unknown')
                .toArray(),
        ).toEqual([]);
    });

    test('and is formatted', () => {
        expect(format(text, services)).toBe(text);
    });
});

test('the page as a whole is one file without a fault in its text', async () => {
    const { findings, resolved } = await checkText(examples.map(({ text }) => text).join('\n'));
    expect(findings.filter(({ rule }) => !ruleNamed(rule)).map(messageOf)).toEqual([]);
    expect(resolved.spreads.map(({ name }) => name)).toEqual([
        'plain-day',
        'rough-day',
        'other-side',
        'dawn',
    ]);
});

test('what the page says of presets holds', async () => {
    const { resolved } = await checkText(examples.map(({ text }) => text).join('\n'));
    const [plain, rough, mirrored] = resolved.spreads;
    const names = (spread: typeof plain) => spread!.lines.map(({ position }) => position.name);
    expect(names(plain)).toContain('port squid chain');
    expect(names(rough)).not.toContain('port squid chain');
    expect(names(mirrored)).toEqual(expect.arrayContaining(['starboard short corner', 'port long rigger']));
    expect(names(mirrored)).not.toContain('port short corner');
    const corner = (spread: typeof plain) =>
        spread!.lines.find(({ position }) => position.place === 'corner')!;
    expect(corner(rough).clip?.si).toBeGreaterThan(corner(plain).clip!.si);
    expect(corner(rough).lure?.value.name).toBe(corner(plain).lure?.value.name);
    expect(rough!.weatherLimit?.value).toBe('home at noon');
    // Position over method over outfit.
    const rigger = plain!.lines.find(({ position }) => position.place === 'rigger')!;
    expect(rigger.drag.hooked?.origin.voice).toBe('position');
    expect(corner(plain).drag.hooked?.origin.voice).toBe('method');
    expect(corner(plain).drag.full?.origin.voice).toBe('outfit');
});

test('what the page says of names and logs holds', async () => {
    const { resolved, findings } = await checkText(`use "layback:species"
species wahoo "Ours" { weight 8 kg to 30 kg }
species jet {}
spread a { target wahoo }
log 2026-02-14 {
    using a
    at 09:00 bite
    species jet
    note "of the event, though on a line of its own"
}`);
    expect(findings.map(messageOf)).toEqual([]);
    expect(resolved.spreads[0]!.target?.value.title).toBe('Ours');
    const [event] = resolved.logs[0]!.events;
    expect([event?.species?.value, event?.note?.value]).toEqual([
        'jet',
        'of the event, though on a line of its own',
    ]);
});

test('every link on the page leads somewhere', () => {
    const anchors = [...page.matchAll(/^##+ (.*)$/gm)].map(([, title]) =>
        title!
            .toLowerCase()
            .replace(/[^\w\s-]/g, '')
            .replace(/\s/g, '-'),
    );
    for (const [, target] of page.matchAll(/\]\(([^)]+)\)/g)) {
        if (target!.startsWith('#')) expect(anchors).toContain(target!.slice(1));
        else expect(() => readFileSync(new URL(target!, `file://${file}`))).not.toThrow();
    }
});
