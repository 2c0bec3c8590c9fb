import stringWidth from 'string-width';
import { type Note, noteWords } from './notes.ts';
import type { Scene } from './scene.ts';
import { plainText } from './words.ts';

/** The picture as a table: what a crew reads off it, position by position. Cells are plain text. */
export interface Summary {
    readonly title: string;
    /** `Boat`, `Sandpiper`. */
    readonly facts: readonly (readonly [caption: string, value: string])[];
    readonly columns: readonly string[];
    readonly rows: readonly { readonly position: string; readonly cells: readonly string[] }[];
    readonly findings: readonly string[];
    readonly unknown: readonly string[];
    readonly remarks: readonly string[];
    readonly caution: string;
}

const columns: readonly (readonly [title: string, cell: (note: Note) => string | undefined])[] = [
    ['Position', ({ title }) => title],
    ['What', ({ gear }) => gear],
    ['Astern', ({ distance, what }) => (what === 'standby' ? 'standing by' : distance)],
    ['Wave', ({ wave, part }) => [wave?.replace('wave ', ''), part].filter(Boolean).join(', ')],
    ['Sideways', ({ sideways }) => sideways],
    ['Towed from', ({ tow }) => tow],
    ['Findings', ({ marks }) => marks.map(({ number, severity }) => `${severity} ${number}`).join(', ')],
];

export function summaryOf(scene: Scene): Summary {
    const shown = columns.filter(
        ([title]) => title !== 'Findings' || scene.notes.some(({ marks }) => marks.length > 0),
    );
    return {
        title: plainText(scene.title.title),
        facts: scene.title.cells.map(({ caption, value }) => [caption, plainText(value)]),
        columns: shown.map(([title]) => title),
        rows: scene.notes.map((note) => ({
            position: note.position,
            cells: shown.map(([, cell]) => plainText(cell(note) || '–')),
        })),
        findings: scene.marks.map(({ number, severity, rule, message }) =>
            plainText(`${severity} ${number}, ${rule.replaceAll('-', ' ')}: ${message}`),
        ),
        unknown: scene.unknown.map(plainText),
        remarks: scene.remarks.map(plainText),
        caution: scene.title.caution,
    };
}

/**
 * The summary for a terminal: a table where it fits the width, a sentence for each position where it does not.
 *
 * @param width  columns of the terminal; 100 by default
 */
export function summaryText(scene: Scene, width = 100): string {
    const summary = summaryOf(scene);
    const table = tableOf([summary.columns, ...summary.rows.map(({ cells }) => cells)]);
    const fits = table.every((line) => stringWidth(line) <= width);
    const lines = fits
        ? [table[0]!, '-'.repeat(Math.max(...table.map((line) => stringWidth(line)))), ...table.slice(1)]
        : scene.notes.flatMap((note) => wrapTo(plainText(noteWords(note)), width));
    const section = (title: string, sentences: readonly string[]) =>
        sentences.length > 0 ? ['', title, ...sentences.flatMap((sentence) => wrapTo(sentence, width))] : [];
    return [
        summary.title,
        ...wrapTo(summary.facts.map(([caption, value]) => `${caption}: ${value}`).join('; '), width),
        '',
        ...(scene.notes.length > 0 ? lines : []),
        ...section('Findings', summary.findings),
        ...section('Not known', summary.unknown),
        ...section('Notes', [...summary.remarks, summary.caution]),
        '',
    ].join('\n');
}

function tableOf(rows: readonly (readonly string[])[]): string[] {
    const widths = rows[0]!.map((_, column) => Math.max(...rows.map((cells) => stringWidth(cells[column]!))));
    return rows.map((cells) =>
        cells
            .map((cell, column) => cell + ' '.repeat(widths[column]! - stringWidth(cell)))
            .join('  ')
            .trimEnd(),
    );
}

/** Broken between words, further lines indented; a word longer than the line stands on its own. */
function wrapTo(text: string, width: number): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(/ +/).filter(Boolean)) {
        const longer = line ? `${line} ${word}` : `${lines.length > 0 ? '    ' : ''}${word}`;
        if (line && stringWidth(longer) > width) {
            lines.push(line);
            line = `    ${word}`;
        } else {
            line = longer;
        }
    }
    return line ? [...lines, line] : lines;
}
