import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderOf, layback } from './layback.ts';

const deep = 100_000;
const long = 'n'.repeat(10_000);

/** In these nothing is wrong. */
const sound = ['empty', 'blank lines', 'only a comment', 'a letter that is none'];

/** Texts that are no plans, or hardly: whatever they are, something sensible is said about them. */
const texts: Readonly<Record<string, string>> = {
    empty: '',
    'blank lines': '\n'.repeat(100_000),
    'only a comment': '/* nothing */',
    'CR LF': 'boat heron {\r\n    lenght 9 m\r\n}\r\n',
    'CR alone': 'boat heron {\r    lenght 9 m\r}\r',
    'mixed line ends': 'boat heron {\r\n    lenght 9 m\n}\r',
    'a byte order mark': '\ufeffboat heron {\n    lenght 9 m\n}\n',
    'blocks in blocks': `spread a { ${'b { '.repeat(deep)}`,
    'closed blocks in blocks': `sprd a ${'{ b '.repeat(deep)}${'}'.repeat(deep)}`,
    'blocks nearly too deep': `spread a { ${'b { '.repeat(150)}${'}'.repeat(151)}`,
    'closing braces': '}'.repeat(deep),
    'opening braces': '{'.repeat(150),
    'long names': `spread ${long} like ${long} {\n    boat ${long}\n    port ${long} { lure ${long} }\n}\n`,
    'a long use': `use "${long}.spread"\n`,
    'a long number': `boat a {\n    length ${'9'.repeat(10_000)} m\n}\n`,
    'a long unit': `boat a {\n    length 9 ${long}\n}\n`,
    'an open quote': 'use "boat.spread\nboat heron "He { length 9 m }\n',
    'an open comment': 'boat heron { /* length 9 m }\n',
    'an open block': 'spread a { port long rigger { back 34 m',
    'an open everything': 'spread a "b { port long rigger { /* "',
    duplicates: 'boat a { length 9 m  length 8 m }\nboat a { }\nspread a { speed 8 kn  speed 7 kn }\n',
    'uses itself': 'use "plan.spread"\nspread s like s { }\n',
    'a circle of likes': 'boat a like b { }\nboat b like c { }\nboat c like a { }\nspread s { boat a }\n',
    'uses nonsense':
        'use ""\nuse " "\nuse "/etc/passwd"\nuse "../../../../etc/passwd"\nuse "layback:x"\nuse "a:b"\nuse "?#%zz"\n',
    'numbers beyond reason':
        'spread a { speed 1e999 kn  turn within -5 m  crew 0  sea 99999999999999999999 m }\n',
    'words of other scripts': 'boat 白鷺 "白鷺" {\n    length 9 m\n    длина 9 м\n}\n',
    'control characters': 'boat \x1b[31mred { \x07 length 9 m }\n',
    'a quarter of a million commas': ','.repeat(250_000),
    'quotes all over': '"'.repeat(20_001),
    'a letter that is none': 'boat a "\ud83d" { }\n',
    'half a waiver': 'spread a { waive',
    'half a position': 'spread a { port',
    'every word of the language at once':
        'boat rod reel line leader hooks outfit lure teaser bait method species spread rules log use layback waive',
};

test.each(Object.entries(texts))('%s is checked, and what is wrong is said', (name, text) => {
    const { status, stdout, stderr } = layback(['check', '-f', 'json'], {
        cwd: folderOf({ 'plan.spread': text }),
    });
    expect(stderr).toBe('');
    const { summary } = JSON.parse(stdout);
    expect(status).toBe(summary.errors + summary.warnings > 0 ? 1 : 0);
    expect(sound.includes(name)).toBe(summary.errors === 0);
});

describe('all of them in one folder', () => {
    const files = Object.fromEntries(Object.entries(texts).map(([name, text]) => [`${name}.spread`, text]));

    test('are reported in lines that can be read', () => {
        const { stdout, stderr } = layback(['check'], { cwd: folderOf(files) });
        expect(stderr).toBe('');
        for (const line of stdout.split('\n')) expect(line.length).toBeLessThan(2000);
        for (const name of Object.keys(texts))
            if (!sound.includes(name)) expect(stdout).toContain(`${name}.spread\n`);
    });

    test('are laid out, or left alone, and keep every letter', () => {
        const cwd = folderOf(files);
        const { status, stdout } = layback(['format', '--write'], { cwd });
        // The unfit ones are named, and no reason to leave the others alone.
        expect(status).toBe(2);
        expect(stdout).toContain('duplicates.spread');
        const letters = (written: string) => Buffer.from(written).toString().replace(/\s/g, '');
        for (const [path, text] of Object.entries(files)) {
            expect(letters(readFileSync(join(cwd, path), 'utf8')), path).toBe(letters(text));
        }
        expect(layback(['format', '--check'], { cwd }).stdout).toBe('');
    });

    test('have figures and pictures where they hold plans', () => {
        const cwd = folderOf(files);
        const figures = layback(['figures', '.', '--json'], { cwd });
        expect(figures.status).toBe(0);
        const plans = JSON.parse(figures.stdout).plans.length;
        expect(plans).toBeGreaterThan(5);
        const drawn = layback(['draw', '.'], { cwd });
        expect(drawn.status).toBe(0);
        expect(drawn.stdout.trimEnd().split('\n')).toHaveLength(plans);
    });
});

test('two files that use each other in a circle are both checked', () => {
    const cwd = folderOf({
        'a.spread': 'use "b.spread"\nboat one {\n    length 9 m\n}\n',
        'b.spread': 'use "a.spread"\nboat two like one {\n    beam 3 m\n}\n',
    });
    const { status, stdout } = layback(['check', '-f', 'json'], { cwd });
    const { summary } = JSON.parse(stdout);
    expect([status, summary.errors, summary.files]).toEqual([0, 0, 2]);
});
