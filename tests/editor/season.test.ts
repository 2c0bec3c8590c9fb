import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import { type SeasonText, season } from '../../language/src/editor/protocol.ts';
import { type Editor, editorOver } from './client.ts';
import { team } from './team.ts';

const path = 'plans/march.spread';
const log = (date: string, events: string) => `use "../plans/march.spread"
use "layback:species"

log ${date} {
    using morning from 07:00
    using breeze from 11:00
${events}}
`;
const logs = {
    'logs/2026-03-07.spread': log(
        '2026-03-07',
        `    at 07:40 bite port long rigger hooked released white-marlin place "the old wreck"
    at 08:05 bite port long rigger lost "came off"
    at 09:30 raise port long rigger
`,
    ),
    'logs/2026-03-08.spread': log('2026-03-08', '    at 10:10 bite port long rigger\n'),
};
let editor: Editor;
beforeAll(async () => {
    editor = await editorOver({ ...team, ...logs });
});
afterAll(() => editor.stop());

const asked = () => editor.ask<SeasonText>(season.method, {});
const hovered = async (mark: string, at = path) =>
    ((await editor.ask<Hover>('textDocument/hover', editor.at(at, mark))).contents as MarkupContent).value;

test('the season is what the command prints, without the places', async () => {
    const { days, text } = await asked();
    const command = join(import.meta.dirname, '../../dist/layback.mjs');
    const printed = execFileSync(process.execPath, [command, 'season', 'logs'], {
        cwd: editor.folder,
        encoding: 'utf8',
        env: { ...process.env, NO_COLOR: '1' },
    });
    expect(days).toBe(2);
    expect(text).toBe(printed);
    expect(text).not.toContain('wreck');
});

test('a position shows its record, with what each rate is of and how far it can be trusted', async () => {
    const told = await hovered('port long rigger {');
    expect(told).toContain('| Season | 2 days | fished 8.0 h |');
    expect(told).toContain('| Raised | 4 |');
    expect(told).toContain('| Bit | 3 |');
    // One of three, by Clopper and Pearson 0.84 % to 90.57 %; of one of one 2.5 % up.
    expect(told).toContain('| Hooked, of bites | 1 of 3, 33 % (1 to 91) |');
    expect(told).toContain('| To the boat, of hooked | 1 of 1, 100 % (2 to 100) |');
    expect(told).toContain('| Released | 1 |');
    // Three seen: 0.619 to 8.767 expected, by Garwood, in 8 hours.
    expect(told).toContain('| Bites in 10 h | 3.8 (0.8 to 11.0) |');
});

test('one that was fished and saw nothing says so, in the log as in the plan', async () => {
    expect(await hovered('port short corner {')).toContain('| Bit | 0 |');
    expect(await hovered('port long rigger', 'logs/2026-03-08.spread')).toContain('| Bit | 3 |');
});

test('a holder of the boat has no season', async () => {
    expect(await hovered('port corner {', 'boats.spread')).not.toContain('Season');
});

test('the record follows the logs as they are typed', async () => {
    const name = 'logs/2026-03-08.spread';
    await editor.open(name);
    await editor.replace(name, 'at 10:10 bite', 'at 10:05 raise port long rigger\n    at 10:10 bite');
    expect((await asked()).text).toContain('5 raised, 3 bit');
    await editor.replace(name, '2026-03-08 {', '2026-03-08 { at');
    expect((await asked()).text).toMatch(/^A log could not be read to its end/);
    await editor.close(name);
});

test('without a log it says how one begins', async () => {
    const alone = await editorOver(team);
    const { days, text } = await alone.ask<SeasonText>(season.method, {});
    expect(days).toBe(0);
    expect(text).toMatch(/^There is no log in this workspace/);
    const told = (await alone.ask<Hover>('textDocument/hover', alone.at(path, 'port long rigger {')))
        .contents;
    expect((told as MarkupContent).value).not.toContain('Season');
    await alone.stop();
});
