import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { summaryOf, summaryText } from '../../language/src/drawing/summary.ts';
import { dense, diamond, finding, makePlan, seven } from './plans.ts';

const findings = [
    finding('stagger', 'warning', ['port long rigger', 'port short corner'], 'They touch.', 'Move one.'),
];

describe('the summary of a scene', () => {
    test('says of every position what the picture says', () => {
        for (const made of [diamond, seven, dense]) {
            const scene = sceneFromAbove(makePlan(made), findings);
            const { columns, rows } = summaryOf(scene);
            expect(rows).toHaveLength(scene.notes.length);
            for (const [i, note] of scene.notes.entries()) {
                const cell = (title: string) => rows[i]!.cells[columns.indexOf(title)];
                expect(rows[i]!.position).toBe(note.position);
                expect(cell('Position')).toBe(note.title);
                expect(cell('What')).toBe(note.gear);
                if (note.what !== 'standby') expect(cell('Astern')).toBe(note.distance);
                if (note.wave) expect(cell('Wave')).toBe(`${note.wave.slice(5)}, ${note.part}`);
                expect(cell('Findings')).toBe(note.marks.length > 0 ? 'warning 1' : '–');
            }
        }
    });

    test('is a table in a wide terminal', () => {
        const lines = summaryText(sceneFromAbove(makePlan(diamond)), 140).split('\n');
        expect(lines[0]).toBe('Four-line diamond');
        const head = lines.find((line) => line.startsWith('Position'))!;
        const row = lines.find((line) => line.startsWith('Port short corner'))!;
        for (const [column, cell] of [
            ['What', 'Ink, pusher, 330 mm'],
            ['Astern', '13.1 m'],
            ['Wave', '2, front face, lower third'],
            ['Sideways', '1.4 m to port'],
            ['Towed from', 'flat clip, 1.1 m up'],
        ] as const) {
            expect(row.slice(head.indexOf(column)).startsWith(cell)).toBe(true);
        }
    });

    test('is sentences where the table would not fit, and never wider than the terminal', () => {
        for (const width of [40, 60, 80, 100, 140, 200]) {
            const text = summaryText(sceneFromAbove(makePlan(dense), findings), width);
            for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
            expect(text).toContain('Centre dredge');
            expect(text.replace(/\n +/g, ' ')).toContain('warning 1, stagger: They touch. Move one.');
        }
        const narrow = summaryText(sceneFromAbove(makePlan(diamond)), 60);
        expect(narrow.replace(/\n +/g, ' ')).toContain(
            'Port short corner: Ink, pusher, 330 mm; 13.1 m astern; 1.4 m to port; wave 2, front face, lower third; ' +
                'from flat clip, 1.1 m up.',
        );
    });

    test('tells what is not known and ends with the caution', () => {
        const text = summaryText(sceneFromAbove(makePlan({ ...diamond, knots: null })), 200);
        expect(text).toContain('Not known\nThe plan has no speed, so its waves are not known.');
        expect(text.trimEnd().split('\n').at(-1)).toMatch(/^Figures are planning aids.*Keep a lookout\.$/);
    });

    test('cannot be made to steer a terminal by a name', () => {
        const made = {
            ...diamond,
            title: 'Red\u001b[31m\u0007\u202e',
            lines: [{ ...diamond.lines[0]!, gear: '\u001b]0;x\u0007' }],
        };
        expect(summaryText(sceneFromAbove(makePlan(made)))).not.toMatch(
            /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/,
        );
    });
});
