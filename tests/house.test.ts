import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');

/** Which rooms of the house each room may import from; itself always. See DEVELOPERS.md, Code map. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
    'language/src/units': [],
    'language/src/physics': [],
    'language/grammar': [],
    'language/src/library': [],
    'language/src/plan': [
        'language/src/units',
        'language/src/physics',
        'language/grammar',
        'language/src/library',
    ],
    'language/src/rules': [
        ...['language/src/plan', 'language/src/units', 'language/src/physics', 'language/grammar'],
        'language/src/library',
    ],
    'language/src/drawing': [...['language/src/plan', 'language/src/units', 'language/src/physics']],
    'language/src/reports': [
        ...['language/src/rules', 'language/src/drawing', 'language/src/plan', 'language/src/units'],
        'language/src/physics',
    ],
    'language/src/editor': ['language'],
    'language/src/command': ['language', 'package.json'],
    'language/src': ['language'],
    'extension/view': ['language/src/editor', 'language/src/drawing', 'extension/src'],
    'extension/src': ['language/src/editor'],
};

const rooms = Object.keys(mayImport).sort((a, b) => b.length - a.length);

function roomOf(path: string): string | undefined {
    return rooms.find((room) => path === room || path.startsWith(`${room}/`));
}

function sources(folder: string): string[] {
    return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
        .map((name) => join(folder, name))
        .filter((path) => path.endsWith('.ts') && !/\/(generated|tabulated)\//.test(path));
}

const files = [...sources('language'), ...sources('extension')].map((path) => ({
    path,
    text: readFileSync(join(root, path), 'utf8'),
}));

function importsOf({ path, text }: { path: string; text: string }): string[] {
    return [...text.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']+)'/g)].map(([, target]) =>
        relative(root, resolve(root, dirname(path), target!)),
    );
}

describe('imports run one way', () => {
    // Rule folders hold their own tests, which may reach for anything that helps them prove the rule.
    const ours = files.filter(({ path }) => !path.endsWith('.test.ts'));

    test.each(rooms.filter((room) => ours.some(({ path }) => roomOf(path) === room)))('from %s', (room) => {
        const allowed = [room, ...mayImport[room]!];
        const astray = ours
            .filter(({ path }) => roomOf(path) === room)
            .flatMap((file) => importsOf(file).map((target) => `${file.path} → ${target}`))
            .filter((line) => {
                const target = line.split(' → ')[1]!;
                return !allowed.some((each) => target === each || target.startsWith(`${each}/`));
            });
        expect(astray).toEqual([]);
    });

    test('nothing under physics or units imports a package', () => {
        const packaged = ours
            .filter(({ path }) => /^language\/src\/(physics|units)\//.test(path))
            .filter(({ text }) => /from '(?!\.)/.test(text));
        expect(packaged.map(({ path }) => path)).toEqual([]);
    });

    test('no rule reads the syntax tree, the clock or the disk', () => {
        const rules = ours.filter(({ path }) => /^language\/src\/rules\/[^/]+\//.test(path));
        expect(rules.length).toBeGreaterThan(10);
        const curious = rules.filter(({ text }) =>
            /from '(langium|node:[^']+|[^']*grammar\/[^']*)'|Date\.now|new Date|\$cstNode/.test(text),
        );
        expect(curious.map(({ path }) => path)).toEqual([]);
    });
});

describe('the house is kept', () => {
    test('files stay one idea long', () => {
        const long = files
            .map(({ path, text }) => ({ path, lines: text.split('\n').length }))
            .filter(({ lines }) => lines > 350);
        expect(long).toEqual([]);
    });

    test('nothing reaches for the network', () => {
        const calling = files.filter(({ text }) =>
            /\bfetch\(|XMLHttpRequest|node:https?'|WebSocket\(/.test(text),
        );
        expect(calling.map(({ path }) => path)).toEqual([]);
    });
});
