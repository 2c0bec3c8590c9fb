import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readPdf } from '../drawing/card-pdf.ts';
import { folderOf, layback, misspelt } from './layback.ts';

const plan = `
/** What a boat needs for a morning. */
spread dawn "Dawn" {
    speed 8 kn
    date 2026-03-07
    port short corner { back 12 m }
}
`;
const bytes = (folder: string, name: string) => new Uint8Array(readFileSync(join(folder, name)));

describe('layback card', () => {
    test('writes a PDF named after the file, and says where', async () => {
        const cwd = folderOf({ 'dawn.spread': plan });
        expect(layback(['card', 'dawn.spread'], { cwd })).toMatchObject({ status: 0, stdout: 'dawn.pdf\n' });
        const card = await readPdf(bytes(cwd, 'dawn.pdf'));
        expect(card.title).toBe('Dawn – deck card');
        expect(card.language).toBe('en');
        expect(card.pages[0]!.tables[0]![1]!.flat()).toEqual(expect.arrayContaining(['12 m', '39 ft']));
    });

    test('is the same file each time, and has no date where the plan has none', () => {
        const cwd = folderOf({ 'dawn.spread': plan, 'undated.spread': plan.replace(/ *date .*\n/, '') });
        for (const name of ['dawn', 'undated']) {
            layback(['card', `${name}.spread`], { cwd });
            const first = bytes(cwd, `${name}.pdf`);
            layback(['card', `${name}.spread`], { cwd });
            expect(bytes(cwd, `${name}.pdf`)).toEqual(first);
            const dated = Buffer.from(first).toString('latin1').includes('CreationDate');
            expect(dated).toBe(name === 'dawn');
        }
    });

    test.each([
        ['pdf', /^%PDF-1\.7/],
        ['html', /^<!DOCTYPE html>/],
        ['svg', /^<svg /],
        ['png', /^.PNG/],
    ])('makes a %s by the name’s ending, or by --as', (form, beginning) => {
        const cwd = folderOf({ 'dawn.spread': plan });
        expect(layback(['card', 'dawn.spread', '-o', `one.${form}`], { cwd }).status).toBe(0);
        expect(layback(['card', 'dawn.spread', '--as', form, '-o', 'two'], { cwd }).status).toBe(0);
        expect(layback(['card', 'dawn.spread', '--as', form], { cwd }).stdout).toBe(`dawn.${form}\n`);
        const one = bytes(cwd, `one.${form}`);
        expect(Buffer.from(one).toString('latin1')).toMatch(beginning);
        expect(bytes(cwd, 'two')).toEqual(one);
        expect(bytes(cwd, `dawn.${form}`)).toEqual(one);
    });

    test('goes onto A4, Letter and half of A4', async () => {
        const cwd = folderOf({ 'dawn.spread': plan });
        for (const [paper, width, height] of [
            ['a4', 595, 842],
            ['letter', 612, 792],
            ['half', 420, 595],
        ] as const) {
            layback(['card', 'dawn.spread', '--paper', paper, '-o', 'card.pdf'], { cwd });
            const [page] = (await readPdf(bytes(cwd, 'card.pdf'))).pages;
            expect([page!.width, page!.height].map(Math.round)).toEqual([width, height]);
        }
    });

    test('makes a card of each spread in a file, or of the one that is named', () => {
        const cwd = folderOf({ 'two.spread': `${plan}${plan.replace('dawn "Dawn"', 'dusk "Dusk"')}` });
        expect(layback(['card', 'two.spread'], { cwd }).stdout).toBe('two-dawn.pdf\ntwo-dusk.pdf\n');
        expect(layback(['card', 'two.spread', '-p', 'dusk', '-o', 'x.html'], { cwd }).stdout).toBe(
            'x.html\n',
        );
        expect(readFileSync(join(cwd, 'x.html'), 'utf8')).toContain('<h1>Dusk</h1>');
        const both = layback(['card', 'two.spread', '-o', 'x.pdf'], { cwd });
        expect(both).toMatchObject({ status: 2, stdout: '' });
        expect(both.stderr).toContain('--plan names one of dawn, dusk');
    });

    test('is the same whether or not others of its file are made', () => {
        const turning = plan.replace('speed 8 kn', 'speed 8 kn\n    turn within 90 m');
        const cwd = folderOf({ 'two.spread': `${turning}${turning.replace('dawn "Dawn"', 'dusk "Dusk"')}` });
        layback(['card', 'two.spread', '--as', 'html'], { cwd });
        const alone = layback(['card', 'two.spread', '-p', 'dusk', '--as', 'html', '-o', 'alone'], { cwd });
        expect(alone).toMatchObject({ status: 0, stdout: 'alone\n', stderr: '' });
        expect(bytes(cwd, 'alone')).toEqual(bytes(cwd, 'two-dusk.html'));
    });

    test('goes to the standard output as the file would, a PDF unless told otherwise', () => {
        const cwd = folderOf({ 'dawn.spread': plan });
        const to = (...args: string[]) => layback(['card', 'dawn.spread', '-o', '-', ...args], { cwd });
        expect(to()).toMatchObject({ status: 0, stderr: '' });
        expect(to().stdout).toMatch(/^%PDF-1\.7/);
        for (const form of ['svg', 'html']) {
            layback(['card', 'dawn.spread', '--as', form], { cwd });
            expect(to('--as', form).stdout).toBe(readFileSync(join(cwd, `dawn.${form}`), 'utf8'));
        }
    });

    test('says that some letters of a plan are counted where it is printed, and shows them on a telephone', () => {
        const cwd = folderOf({ 'away.spread': plan.replace('"Dawn"', '"黎明"') });
        for (const form of ['pdf', 'svg', 'png']) {
            const { status, stderr } = layback(['card', 'away.spread', '--as', form], { cwd });
            expect([status, stderr]).toEqual([0, expect.stringContaining('counted, as in [5 letters]')]);
        }
        expect(readFileSync(join(cwd, 'away.svg'), 'utf8')).toContain('[2 letters]');
        expect(layback(['card', 'away.spread', '--as', 'html'], { cwd }).stderr).toBe('');
        expect(readFileSync(join(cwd, 'away.html'), 'utf8')).toContain('<h1>黎明</h1>');
        expect(layback(['brief', 'away.spread'], { cwd }).stdout).toMatch(/^黎明\n/);
    });

    test('refuses in a sentence what it cannot make', () => {
        const cwd = folderOf({ 'dawn.spread': plan, 'boat.spread': 'boat heron {\n    length 9.8 m\n}\n' });
        const refusals: readonly (readonly [args: readonly string[], says: string])[] = [
            [['dawn.spread', '-o', 'card.doc'], 'card.doc should end in .pdf, .html, .svg or .png'],
            [['dawn.spread', '--paper', 'a3'], 'a4, letter, half'],
            [['dawn.spread', '--as', 'doc'], 'pdf, html, svg, png'],
            [['dawn.spread', '--dpi', '5'], 'It takes 20 to 600.'],
            [['dawn.spread', '-o', 'nowhere/card.pdf'], 'its folder is not there'],
            [['gone.spread'], 'gone.spread'],
            [['boat.spread'], 'boat.spread'],
        ];
        for (const [args, says] of refusals) {
            const { status, stdout, stderr } = layback(['card', ...args], { cwd });
            expect(stderr).toContain(says);
            expect([status, stdout]).toEqual([2, '']);
        }
    });

    test('warns of errors, and makes the card of what can be read', () => {
        const cwd = folderOf({ 'dawn.spread': plan + misspelt });
        const { status, stdout, stderr } = layback(['card', 'dawn.spread'], { cwd });
        expect([status, stdout]).toEqual([0, 'dawn.pdf\n']);
        expect(stderr).toContain('layback check dawn.spread');
    });

    test('takes the place of an older card whole', () => {
        const cwd = folderOf({ 'dawn.spread': plan, 'dawn.pdf': 'older' });
        layback(['card', 'dawn.spread'], { cwd });
        const first = bytes(cwd, 'dawn.pdf');
        writeFileSync(join(cwd, 'dawn.spread'), plan.replace('12 m', '13 m'));
        layback(['card', 'dawn.spread'], { cwd });
        expect(bytes(cwd, 'dawn.pdf')).not.toEqual(first);
    });
});

describe('layback brief', () => {
    test('says the words of the card, as text or as Markdown', () => {
        const cwd = folderOf({ 'dawn.spread': plan });
        const text = layback(['brief', 'dawn.spread'], { cwd });
        expect(text.status).toBe(0);
        expect(text.stdout).toMatch(/^DAWN\n/);
        expect(text.stdout).toContain('- Port short corner: 12 m (39 ft) back');
        expect(text.stdout).toContain('\nCAUTIONS\n- Leader: gloves on');
        const markdown = layback(['brief', 'dawn.spread', '--format', 'markdown'], { cwd });
        expect(markdown.stdout).toMatch(/^# Dawn\n/);
        expect(markdown.stdout).toContain('- **Port short corner:** 12 m (39 ft) back');
    });
});
