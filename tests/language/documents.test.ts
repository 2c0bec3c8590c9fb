import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { AstUtils, URI } from 'langium';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { verbs } from '../../language/src/command/verbs.ts';
import { format } from '../../language/src/editor/format.ts';
import { messageOf } from '../../language/src/plan/finding.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';
import { layback } from '../command/layback.ts';

const root = resolve(import.meta.dirname, '../..');
const folder = join(root, 'language/docs');
const pages = readdirSync(folder).map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
const page = (name: string) => pages.find((each) => each.name === name)!.text;
const fences = (text: string) => [...text.matchAll(/```spread\n([\s\S]*?)```/g)].map(([, fence]) => fence!);
const examples = pages.flatMap(({ name, text }) =>
    fences(text).map((fence, at) => ({ where: `${name}, ${at + 1}`, fence })),
);
const services = createServices();

test('there is something to read, and a plan or more to read in it', () => {
    expect(pages.map(({ name }) => name)).toEqual(
        expect.arrayContaining([
            'README.md',
            'guide.md',
            'recipes.md',
            'troubleshooting.md',
            'figures.md',
            'editors.md',
        ]),
    );
    expect(examples.length).toBeGreaterThanOrEqual(10);
});

test.each(examples)('the plan in $where is read, knows every word, and is laid out', ({ fence }) => {
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse<Sheet>(fence);
    expect([...lexerErrors, ...parserErrors].map(({ message }) => message)).toEqual([]);
    const unknown = AstUtils.streamAst(value).filter(({ $type }) => $type === 'Unknown');
    expect(unknown.toArray()).toEqual([]);
    expect(format(fence, services)).toBe(fence);
});

test('what the guide shows is found to be sound in the folder that `layback new` makes', async () => {
    const shown = fences(page('guide.md')).map((text) => [/^\/\/ (\S+)\n/.exec(text)![1]!, text] as const);
    expect(shown.map(([name]) => name)).toEqual([
        'plans/saturday.spread',
        'days/2026-03-07.spread',
        'logs/2026-03-07.spread',
    ]);
    const starter = join(root, 'language/src/command/starter');
    const plain = readdirSync(starter).filter((name) => name.endsWith('.spread'));
    const texts = new Map([
        ...plain.map((name): [string, string] => [
            name === 'first.spread' ? `plans/${name}` : name,
            readFileSync(join(starter, name), 'utf8'),
        ]),
        ...shown,
    ]);
    const home = '/our-boat';
    const uris = [...texts.keys()].map((name) => URI.file(`${home}/${name}`));
    const loaded = await load(
        createServices(),
        uris,
        (uri) => {
            const text = texts.get(relative(home, uri.fsPath));
            return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
        },
        [URI.file(home)],
    );
    const sheets = checkAll(loaded, { turns: true });
    expect(sheets).toHaveLength(texts.size);
    expect(sheets.flatMap(({ findings }) => findings.map(messageOf))).toEqual([]);
});

describe.each(pages)('$name', ({ name, text }) => {
    test('has links that lead somewhere, to a heading where they name one', () => {
        const links = [...text.matchAll(/\]\((?!https?:)([^)\s]+)\)/g)].map(([, target]) => target!);
        for (const link of links) {
            const [path = '', anchor] = link.split('#');
            const file = path === '' ? join(folder, name) : resolve(folder, path);
            expect(existsSync(file), link).toBe(true);
            if (anchor !== undefined) expect(anchorsOf(readFileSync(file, 'utf8')), link).toContain(anchor);
        }
    });

    test('names commands and options that there are', () => {
        const lines = [...text.matchAll(/(?:^|`)layback ([a-z][a-z-]*)([^`\n]*)/gm)];
        for (const [line, verb, rest] of lines) {
            if (verb === 'language-server' && name === 'editors.md') continue;
            expect(
                verbs.map((each) => each.name),
                line,
            ).toContain(verb);
            const help = layback(['help', verb!]).stdout;
            for (const [option] of rest!.matchAll(/--[a-z-]+/g)) expect(help, line).toContain(option);
        }
    });
});

test('the page on figures names every column that `layback figures` prints', () => {
    const reports = join(root, 'language/src/reports');
    const heads = readdirSync(reports)
        .filter((name) => /^figures-(table|of-lines|of-turns)\.ts$/.test(name))
        .flatMap((name) =>
            [...readFileSync(join(reports, name), 'utf8').matchAll(/(?:head: ['`]|right\(')([^'`$]+)/g)].map(
                ([, head]) => head!.trim(),
            ),
        );
    // What a row is of says itself.
    const plain = new Set(['Position', 'Tows', 'Neighbours', 'Pair', 'Turning to', 'at']);
    const wanted = [...new Set(heads)].filter((head) => !plain.has(head));
    expect(wanted.length).toBeGreaterThan(30);
    const figures = page('figures.md');
    expect(wanted.filter((head) => !figures.includes(`**${head}`))).toEqual([]);
});

test('every document is reached from their list, and that from the README', () => {
    const list = page('README.md');
    const others = pages.map(({ name }) => name).filter((name) => name !== 'README.md');
    expect(others.filter((name) => !list.includes(`](${name})`))).toEqual([]);
    expect(readFileSync(join(root, 'README.md'), 'utf8')).toContain(`](${relative(root, folder)}/README.md)`);
    expect(dirname(folder)).toBe(join(root, 'language'));
});

describe('as an editor opens them, without the repository', () => {
    const served = JSON.parse(readFileSync(join(root, 'dist/rule-pages.json'), 'utf8')) as Record<
        string,
        string
    >;
    const documents = Object.entries(served).filter(([name]) => name.startsWith('docs/'));

    test('all are there, with the language and the rules', () => {
        const names = documents.map(([name]) => name.slice('docs/'.length));
        const wanted = [
            ...pages.map(({ name }) => name.replace(/\.md$/, '')),
            'reference',
            'computed',
            'rules',
        ];
        expect(names.sort()).toEqual(wanted.sort());
    });

    test.each(documents)(
        'links of %s lead to pages that are opened, to a heading where they name one',
        (_, text) => {
            const links = [...text.matchAll(/\]\((?!https?:)([^)\s]+)\)/g)].map(([, target]) => target!);
            for (const link of links) {
                const [, path, anchor] =
                    /^(?:layback:\/(?:rules\/)?([\w/-]+)\.md)?(?:#([\w-]+))?$/.exec(link) ?? [];
                const target = path === undefined ? text : served[path];
                expect(target, link).toBeDefined();
                if (anchor !== undefined) expect(anchorsOf(target!), link).toContain(anchor);
            }
        },
    );
});

function anchorsOf(text: string): string[] {
    return [...text.matchAll(/^##+ (.*)$/gm)].map(([, title]) =>
        title!
            .toLowerCase()
            .replace(/[^\w\s-]/g, '')
            .replace(/\s/g, '-'),
    );
}
