import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commands } from '../../language/src/editor/protocol.ts';
import { usualSettings } from '../../language/src/editor/settings.ts';
import { loadText } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';
import { contributes, engines } from '../../package.json';

const root = join(import.meta.dirname, '../..');
const text = (path: string) => readFileSync(join(root, path), 'utf8');
const sources = readdirSync(join(root, 'extension/src'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => text(`extension/src/${name}`))
    .join('\n');
const contributed = contributes.commands.map(({ command }) => command);

describe('the manifest', () => {
    test('names the commands that are carried out, and no other', () => {
        const registered = [
            ...sources.matchAll(/registerCommand\('(layback\.\w+)'/g),
            ...sources.matchAll(/^ {8}'(layback\.\w+)': /gm),
        ].map(([, name]) => name!);
        // What lenses name comes with arguments that nobody could type.
        const ofLenses: string[] = [commands.showFindings, commands.showReferences];
        expect(registered.filter((name) => !ofLenses.includes(name)).sort()).toEqual(contributed.sort());
    });

    test('names nothing in a menu, a key or a walkthrough that is no command', () => {
        const named = [
            ...Object.values(contributes.menus).flatMap((items) => items.map(({ command }) => command)),
            ...contributes.keybindings.map(({ command }) => command),
            ...[
                ...JSON.stringify(contributes.walkthroughs).matchAll(/(?:command|onCommand):(layback\.\w+)/g),
            ].map(([, name]) => name!),
        ];
        expect(named.filter((name) => !contributed.includes(name))).toEqual([]);
        expect(named.length).toBeGreaterThan(15);
    });

    test('declares every setting that the server reads, with the value that it takes by itself', () => {
        const flat = (value: unknown, below: string): [string, unknown][] =>
            typeof value === 'object' && value !== null
                ? Object.entries(value).flatMap(([key, inner]) => flat(inner, `${below}.${key}`))
                : [[below, value]];
        const declared = Object.entries(contributes.configuration.properties)
            .filter(([key]) => !/^layback\.(diagram|card)\./.test(key))
            .map(([key, { default: usual }]): [string, unknown] => [key, usual]);
        expect(Object.fromEntries(declared)).toEqual(Object.fromEntries(flat(usualSettings, 'layback')));
        expect(sources).toContain("'diagram.bow'");
        expect(sources).toContain("'card.paper'");
    });

    test('says of every setting what it does', () => {
        for (const setting of Object.values(contributes.configuration.properties)) {
            expect(setting.markdownDescription).toMatch(/^[A-Z].+\.$/);
            if ('enum' in setting) expect(setting.enumDescriptions).toHaveLength(setting.enum.length);
        }
    });

    test('asks for no later editor than the types and the client know', () => {
        const types = JSON.parse(text('node_modules/@types/vscode/package.json')).version as string;
        const client = JSON.parse(text('node_modules/vscode-languageclient/package.json'));
        expect(engines.vscode).toBe('^1.91.0');
        expect(types).toMatch(/^1\.91\./);
        expect(client.engines.vscode).toBe(engines.vscode);
    });

    test('refers to files that are there', () => {
        const paths = [...JSON.stringify(contributes).matchAll(/"(?:\.\/)?(extension\/[^"]+)"/g)];
        expect(paths.length).toBeGreaterThan(8);
        for (const [, path] of paths) expect(text(path!).length).toBeGreaterThan(100);
    });
});

describe('what `layback check --format lines` prints', () => {
    const [matcher] = contributes.problemMatchers;
    const pattern = new RegExp(matcher!.pattern.regexp);

    test.each([
        [
            'plans/friday.spread:12:5: warning wave-face in friday-first: Move it to 12.3 m: there it works.',
            ['plans/friday.spread', '12', '5', 'warning', 'wave-face', 'Move it to 12.3 m: there it works.'],
        ],
        [
            'C:\\our boat\\a.spread:1:1: error syntax: A `}` is missing.',
            ['C:\\our boat\\a.spread', '1', '1', 'error', 'syntax', 'A `}` is missing.'],
        ],
    ])('%s', (line, parts) => {
        expect(pattern.exec(line)?.slice(1)).toEqual(parts);
        expect(matcher!.pattern).toMatchObject({
            file: 1,
            line: 2,
            column: 3,
            severity: 4,
            code: 5,
            message: 6,
        });
    });
});

describe('the walkthrough', () => {
    test('shows no words that the language does not read', async () => {
        for (const name of readdirSync(join(root, 'extension/walkthrough'))) {
            if (!name.endsWith('.md')) continue;
            for (const [, shown] of text(`extension/walkthrough/${name}`).matchAll(
                /```layback\n([\s\S]*?)```/g,
            )) {
                const wrapped = /^(use|spread|boat \w)/m.test(shown!)
                    ? shown!
                    : shown!.startsWith('first crest')
                      ? `boat x { ${shown} }`
                      : `spread x { ${shown} }`;
                const [sheet] = checkAll(await loadText(createServices(), wrapped));
                const misread = sheet!.findings.filter(({ rule }) =>
                    ['syntax', 'unknown-word', 'value', 'quantity'].includes(rule),
                );
                expect(misread).toEqual([]);
            }
        }
    });
});
