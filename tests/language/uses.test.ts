import { URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

/** Checks the first of some files, given by path; the others are there to be used. */
async function check(files: Readonly<Record<string, string>>, roots: string[] = ['/team']) {
    const [first] = Object.keys(files);
    const loaded = await load(
        createServices(),
        [URI.file(first!)],
        (uri) => {
            const text = files[uri.path];
            if (text === undefined) return { kind: 'missing' };
            return text === 'BINARY' ? { kind: 'unread', reason: 'is not UTF-8' } : { kind: 'text', text };
        },
        roots.map((root) => URI.file(root)),
    );
    const [sheet] = checkAll(loaded);
    return {
        sheet: sheet!,
        said: sheet!.findings.filter(({ rule }) => rule !== 'unused' && rule !== 'incomplete').map(messageOf),
    };
}

const plan = (use: string) => `${use}\nspread day {\n    boat tern\n    speed 8 kn\n}\n`;
const boat = 'boat tern "Tern" { beam 3 m }\n';

describe('use', () => {
    test('brings in what the other file defines, and what that one uses', async () => {
        const { sheet, said } = await check({
            '/team/plans/day.spread': plan('use "../team.spread"'),
            '/team/team.spread': 'use "boats/tern.spread"\n',
            '/team/boats/tern.spread': boat,
        });
        expect(said).toEqual([]);
        expect(sheet.resolved.spreads[0]?.boat?.value.beam?.si).toBe(3);
    });

    test('says what is missing, with the nearest file there is', async () => {
        const { said } = await check({
            '/team/day.spread': 'use "boats.spread"\nuse "tern.spred"\n',
            '/team/boats.spread': boat,
            '/team/tern.spread': '',
        });
        expect(said).toEqual(['There is no file `tern.spred` here. Check its name, or make it.']);
    });

    test('names the library and its nearest file', async () => {
        const { said } = await check({ '/team/day.spread': 'use "layback:specie"\n' });
        expect(said).toEqual(['The library has no `layback:specie`. Did you mean `layback:species`?']);
    });

    test.each([
        ['out of the folder', '../../other/boats.spread', 'lies outside the folder `team`'],
        [
            'out of the folder and back by name',
            '../../teammates/boats.spread',
            'lies outside the folder `team`',
        ],
        ['from the top of the disk', '/etc/boats.spread', 'is a path from the top of one computer'],
        ['from a drive', 'C:\\\\boats.spread', 'is a path from the top of one computer'],
        ['from the network', 'https://example.org/boats.spread', 'is not a file of this folder'],
        ['nothing', '', '`use` names no file'],
    ])('refuses a path that leads %s', async (_where, path, part) => {
        const { said } = await check({
            '/team/plans/day.spread': `use "${path}"\n`,
            '/other/boats.spread': boat,
        });
        expect(said).toEqual([expect.stringContaining(part)]);
    });

    test('says why a file that is there was not read', async () => {
        const { said } = await check({ '/team/day.spread': 'use "a.spread"\n', '/team/a.spread': 'BINARY' });
        expect(said).toEqual(['`a.spread` is not UTF-8. Nothing in it is known here.']);
    });

    test('a circle still works, and is told', async () => {
        const { sheet, said } = await check({
            '/team/a.spread': plan('use "b.spread"'),
            '/team/b.spread': `use "a.spread"\n${boat}`,
        });
        expect(said).toEqual([expect.stringContaining('These two files use each other in a circle.')]);
        expect(sheet.resolved.spreads[0]?.boat?.value.name).toBe('tern');
    });

    test('a file that uses itself is told', async () => {
        const { said } = await check({ '/team/a.spread': 'use "a.spread"\n' });
        expect(said).toEqual(['This file uses itself. Take this line out.']);
    });

    test('one file twice is told, and can be taken out', async () => {
        const { sheet, said } = await check({
            '/team/a.spread': 'use "b.spread"\nuse "./b.spread"\n',
            '/team/b.spread': boat,
        });
        expect(said).toEqual(['This file is already in use. Take this line out.']);
        expect(sheet.findings.flatMap(({ fixes }) => fixes)).toHaveLength(1);
    });
});

describe('names', () => {
    test('the nearest definition counts, and a second one of its name is told', async () => {
        const { sheet, said } = await check({
            '/team/a.spread': `${plan('use "b.spread"')}boat tern "Own" { beam 4 m }\n`,
            '/team/b.spread': boat,
        });
        expect(sheet.resolved.spreads[0]?.boat?.value.title).toBe('Own');
        expect(said).toEqual([expect.stringContaining('A file in use already has a boat called `tern`.')]);
    });

    test('two of one kind in a file: the first counts', async () => {
        const { sheet, said } = await check({
            '/team/a.spread': `${plan('')}${boat}boat tern { beam 4 m }\n`,
        });
        expect(sheet.resolved.spreads[0]?.boat?.value.beam?.si).toBe(3);
        expect(said).toEqual([
            expect.stringContaining('There is already a boat called `tern` in this file.'),
        ]);
    });

    test('a lure and a leader may share a name', async () => {
        const { said } = await check({ '/team/a.spread': 'lure ink { }\nleader ink { }\n' });
        expect(said).toEqual([]);
    });
});
