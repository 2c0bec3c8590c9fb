import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import type { Run } from '../../language/src/reports/checked.ts';
import { colours } from '../../language/src/reports/ink.ts';
import { textReport } from '../../language/src/reports/text.ts';
import { fileOf, finding, placeIn, runOf } from './report-example.ts';

const tackle = fileOf('tackle.spread', 'lure ink-pusher "Ink" pusher {\n    length 330 mm\n}\n');

const plan = fileOf(
    'plans/friday.spread',
    'spread friday {\n\tport long rigger { lure ink-pusher  back 47 m }\n}\n',
    (file) => [
        finding(file, 'ink-pusher', {
            rule: 'size-order',
            severity: 'error',
            plan: 'friday',
            what: 'Ink (330 mm) runs outside Slim (210 mm).',
            why: 'Larger lures work closer to the boat.',
            remedy: 'Swap the two.',
            related: [{ at: placeIn(tackle, 'length 330 mm'), what: 'Its length.' }],
            fixes: [{ title: 'Swap Ink and Slim', edits: [] }],
        }),
        finding(file, 'back 47 m', { severity: 'hint' }),
    ],
);

test('a finding stands under its file with its sentences, its line, carets, related place and fix', async () => {
    const report = await textReport(runOf([tackle, plan]));
    expect(report).toBe(
        [
            'plans/friday.spread',
            '  2:26 error size-order in friday (practice)',
            '    Ink (330 mm) runs outside Slim (210 mm).',
            '    Larger lures work closer to the boat.',
            '    Swap the two.',
            '   2 |     port long rigger { lure ink-pusher  back 47 m }',
            '     |                             ^^^^^^^^^^',
            '    see tackle.spread:2:5 Its length.',
            '    quick fix: Swap Ink and Slim',
            '',
            '  2:38 hint stagger (physics)',
            '    Port long rigger touches starboard long rigger at 3 deg of sway.',
            '   2 |     port long rigger { lure ink-pusher  back 47 m }',
            '     |                                         ^^^^^^^^^',
            '',
            '1 error, 1 hint in 1 of 2 files.',
            '',
        ].join('\n'),
    );
});

test('nothing found is said, and quiet says nothing at all', async () => {
    expect(await textReport(runOf([tackle]))).toBe('1 file checked, nothing found.\n');
    expect(await textReport(runOf([tackle]), { quiet: true })).toBe('');
});

test('colours repeat what the words say: without them the text is the same', async () => {
    const run = runOf([plan]);
    const coloured = await textReport(run, { ink: colours });
    expect(coloured).toContain('\x1b[31m');
    expect(coloured.replace(/\x1b\[\d+m/g, '')).toBe(await textReport(run));
});

test.each([
    ['plain', 'lure ink { }'],
    ['after a tab', 'a\tlure ink { }'],
    ['after wide letters', 'note "真鯛と鰹"  lure ink { }'],
    ['after a picture of a family', 'note "👨‍👩‍👧‍👦 🐟"  lure ink { }'],
    ['after a letter of two code points', 'note "cafe\u0301 Zoë"  lure ink { }'],
    ['after a control character', 'note "\x1b[31m"  lure ink { }'],
])('carets stand under the words as a terminal shows them: %s', async (_, text) => {
    const file = fileOf('a.spread', text, (file) => [finding(file, 'ink')]);
    const { line, carets } = sourceOf(await textReport(runOf([file])));
    const before = line.slice(0, line.lastIndexOf('ink'));
    expect(carets.indexOf('^')).toBe(stringWidth(before));
    expect(carets.replace(/[^^]/g, '')).toBe('^^^');
});

test('a wide word gets carets as wide as it is', async () => {
    const file = fileOf('a.spread', 'note "真鯛"', (file) => [finding(file, '真鯛')]);
    expect(sourceOf(await textReport(runOf([file]))).carets.replace(/[^^]/g, '')).toBe('^^^^');
});

test.each(['\n', '\r\n', '\r'])('the line is the right one whatever ends lines: %j', async (end) => {
    const text = ['one', 'two', 'ink here', 'four'].join(end);
    const file = fileOf('a.spread', text, (file) => [finding(file, 'ink')]);
    const { line } = sourceOf(await textReport(runOf([file])));
    expect(line.trim()).toBe('3 | ink here');
});

test('a place at the very end of a text without a last line end has a caret', async () => {
    const file = fileOf('a.spread', 'speed 8');
    const place = { ...placeIn(file, '8'), start: 7, end: 7 };
    const report = await textReport(runOf([{ ...file, findings: [finding(file, '8', { at: place })] }]));
    expect(sourceOf(report)).toEqual({ line: '   1 | speed 8', carets: '     |        ^' });
});

test('a place over several lines is marked on its first one only', async () => {
    const text = 'spread a {\n    crew 3\n}\n';
    const file = fileOf('a.spread', text, (file) => [finding(file, text.trimEnd())]);
    const { line, carets } = sourceOf(await textReport(runOf([file])));
    expect(line).toBe('   1 | spread a {');
    expect(carets).toBe('     | ^^^^^^^^^^');
});

test.each([0, 500, 99_990])(
    'of a line of 100,000 letters the part around the place is shown (%i)',
    async (at) => {
        const text = `${'x'.repeat(at)}ink${'y'.repeat(100_000 - at)}`;
        const file = fileOf('a.spread', text, (file) => [finding(file, 'ink')]);
        const { line, carets } = sourceOf(await textReport(runOf([file]), { columns: 80 }));
        expect(stringWidth(line)).toBeLessThanOrEqual(80);
        const from = carets.indexOf('^');
        expect(line.slice(from, from + 3)).toBe('ink');
    },
);

test('no file can move the cursor, colour the screen or turn the writing direction', async () => {
    const evil = '\x1b]0;title\x07 \x9b31m \u202e';
    const file = { ...fileOf(`${evil}.spread`, `note "${evil}"`), plans: [] };
    const found = finding(file, 'note', {
        what: evil,
        why: evil,
        remedy: evil,
        plan: evil,
        related: [{ at: placeIn(file, 'note'), what: evil }],
        fixes: [{ title: evil, edits: [] }],
    });
    const report = await textReport(runOf([{ ...file, findings: [found] }]));
    expect(report).toContain('title');
    expect(report).not.toMatch(/[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e]/);
});

test('sentences are broken at the width of the terminal, and a name of 10,000 letters is shortened', async () => {
    const file = fileOf('a.spread', 'ink');
    const what = `The lure ${'n'.repeat(10_000)} runs outside of another one and touches it at three degrees.`;
    const report = await textReport(runOf([{ ...file, findings: [finding(file, 'ink', { what })] }]), {
        columns: 60,
    });
    const lines = report.split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(70);
    expect(report).toMatch(/n…n/);
});

test('a finding of one file that is placed in another says which', async () => {
    const file = { ...fileOf('a.spread', 'use "tackle.spread"'), findings: [finding(tackle, 'pusher {')] };
    const run: Run = { ...runOf([file]), sources: new Map([[tackle.uri, tackle]]) };
    const report = await textReport(run);
    expect(report).toContain('  tackle.spread:1:23 warning stagger (physics)\n');
    expect(report).toContain('lure ink-pusher "Ink" pusher {');
});

function sourceOf(report: string): { line: string; carets: string } {
    const lines = report.split('\n');
    const index = lines.findIndex((line) => /^ +\| *\^/.test(line));
    return { line: lines[index - 1]!, carets: lines[index]! };
}
