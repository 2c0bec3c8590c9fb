import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { readPdf } from '../../drawing/card-pdf.ts';
import { soon, type Workbench } from '../driver.ts';
import { closeAll } from './diagram-page.ts';

/** The deck card, saved from the editor where there is no Node. */
export function testDeckCard(bench: () => Workbench): void {
    const told = () => expect.poll(async () => (await bench().notifications()).join('\n'), soon);
    const onDisk = (file: string) => new Uint8Array(readFileSync(path.join(bench().folder, file)));
    const save = async (choice: string, name: RegExp) => {
        await bench().command('Layback: Save Deck Card…');
        await bench().choose(choice);
        await bench().saveAs(name);
    };

    test('the deck card is saved as a PDF of the plan at the caret, also of words that nobody has saved', async () => {
        await bench().openFile('ours/plans/first.spread');
        await bench().select('back wave 2');
        await bench().type('back 13.5 m');
        await save('PDF on A4', /\/ours\/plans\/[\w-]+-card\.pdf$/);
        await told().toMatch(/Wrote ours\/plans\/first-card\.pdf\./);
        const read = await readPdf(onDisk('ours/plans/first-card.pdf'));
        expect(read.title).toMatch(/ – deck card$/);
        expect(read.language).toBe('en');
        expect(read.pages[0]!.tables[0]!.flat(2)).toEqual(expect.arrayContaining(['13.5 m']));
        await bench().command('Notifications: Clear All Notifications');
        await bench().select('back 13.5 m');
        await bench().type('back wave 2');
    });

    test('and as a page for a telephone, from the diagram in front', async () => {
        await bench().openFile('ours/plans/first.spread');
        await bench().command('Layback: Open the Diagram');
        await save('Page for a telephone', /\/ours\/plans\/[\w-]+-card\.html$/);
        await told().toMatch(/Wrote ours\/plans\/first-card\.html\./);
        const page = new TextDecoder().decode(onDisk('ours/plans/first-card.html'));
        expect(page).toMatch(/^<!DOCTYPE html>/);
        expect(page).not.toContain('13.5 m');
        await bench().command('Notifications: Clear All Notifications');
    });

    test('and not where nobody chose what for', async () => {
        await bench().command('Layback: Save Deck Card…');
        await bench().decline('PDF on A4');
        expect(existsSync(path.join(bench().folder, 'ours/plans/first-card.svg'))).toBe(false);
        await closeAll(bench());
    });
}
