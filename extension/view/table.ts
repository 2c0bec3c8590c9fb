import type { Summary } from '../../language/src/editor/protocol.ts';
import { button, element } from './element.ts';

/**
 * The plan as a table and lists: for those who hear it, and for those who would rather read.
 *
 * @param reveal  goes to where the text says something
 */
export function tableOf(
    summary: Summary,
    places: ReadonlySet<string>,
    reveal: (id: string) => void,
): DocumentFragment {
    const fragment = document.createDocumentFragment();
    fragment.append(element('h1', summary.title), factsOf(summary), positionsOf(summary, places, reveal));
    const findings = summary.findings.map((text, index) => ({ text, id: `mark:${index + 1}` }));
    if (findings.length > 0) {
        const list = element('ol');
        for (const { text, id } of findings) {
            const item = element('li');
            item.append(places.has(id) ? button(text, () => reveal(id)) : text);
            list.append(item);
        }
        fragment.append(element('h2', 'Findings'), list);
    }
    fragment.append(
        ...listed('Not known', summary.unknown),
        ...listed('Notes', [...summary.remarks, summary.caution]),
    );
    return fragment;
}

function factsOf({ facts }: Summary): HTMLElement {
    const list = element('dl');
    for (const [caption, value] of facts) {
        const pair = element('div');
        pair.append(element('dt', caption), element('dd', value));
        list.append(pair);
    }
    return list;
}

function positionsOf(
    { title, columns, rows }: Summary,
    places: ReadonlySet<string>,
    reveal: (id: string) => void,
): HTMLElement {
    const table = element('table');
    const head = element('tr');
    for (const column of columns) {
        const cell = element('th', column);
        cell.setAttribute('scope', 'col');
        head.append(cell);
    }
    const thead = element('thead');
    thead.append(head);
    const body = element('tbody');
    for (const { position, cells } of rows) {
        const row = element('tr');
        row.dataset.position = position;
        for (const [index, text] of cells.entries()) {
            if (index > 0) {
                row.append(element('td', text));
                continue;
            }
            const id = `note:${position}`;
            const cell = element('th');
            cell.setAttribute('scope', 'row');
            cell.append(places.has(id) ? button(text, () => reveal(id)) : text);
            row.append(cell);
        }
        body.append(row);
    }
    table.append(element('caption', `${title}, position by position`), thead, body);
    return table;
}

export function listed(title: string, sentences: readonly string[]): HTMLElement[] {
    if (sentences.length === 0) return [];
    const list = element('ul');
    list.append(...sentences.map((sentence) => element('li', sentence)));
    return [element('h2', title), list];
}
