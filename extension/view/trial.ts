import type { ShowTrial } from '../src/diagram/messages.ts';

/** Of the findings about a lure so many are read while it is moved; the table has them all. */
const MOST = 3;

/** What would follow from a lure's new place, beside the picture: short enough to be heard while it moves. */
export function tellTrial(host: HTMLElement, trial: ShowTrial, by: 'pointer' | 'keys'): void {
    const { position, text, astern, findings, turns, summary } = trial;
    const metres = text.includes('wave') ? `, ${astern.toFixed(1)} m` : '';
    const row = summary.rows.find((each) => each.position === position);
    const lines = [
        strong(`${row?.cells[0] ?? position}: ${text}`, metres),
        ...(row ? [line('figures', figuresOf(trial, row.cells))] : []),
        ...findings.here.slice(0, MOST).map((each) => line('finding', each)),
        ...(findings.here.length > MOST ? [line('finding', `And ${findings.here.length - MOST} more.`)] : []),
        ...findings.gone.slice(0, MOST).map((each) => line('gone', `No longer: ${each}`)),
        ...(turns !== undefined ? [line('turns', `${turns}.`)] : []),
        line(
            'keys',
            by === 'keys'
                ? 'Enter writes it into the text, Escape leaves it as it was.'
                : 'Let go to write it into the text. Escape leaves it as it was.',
        ),
    ];
    host.replaceChildren(...lines);
    host.hidden = false;
}

/** Where that is, as the table says it. */
function figuresOf({ summary }: ShowTrial, cells: readonly string[]): string {
    const told = ['Wave', 'Sideways'];
    return summary.columns
        .flatMap((column, at) => (told.includes(column) ? [`${column} ${cells[at]}`] : []))
        .join('; ');
}

function line(kind: string, text: string): HTMLElement {
    const said = document.createElement('p');
    said.className = kind;
    said.textContent = text;
    return said;
}

function strong(name: string, rest: string): HTMLElement {
    const said = document.createElement('p');
    const first = document.createElement('strong');
    first.textContent = name;
    said.append(first, rest);
    return said;
}
