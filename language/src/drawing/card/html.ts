import type { PaletteName } from '../palette.ts';
import { escapeText } from '../pen.ts';
import type { Scene } from '../scene.ts';
import { svgOf } from '../svg.ts';
import { type Column, clearingColumns, helmCells, workingColumns } from './columns.ts';
import type { CardContents } from './contents.ts';
import { clearingRows, clearingTitle, type Item, sectionsOf } from './sections.ts';

const style = `
:root { color-scheme: light dark; --paper: #fff; --ink: #15191d; --soft: #515960; --rule: #9aa5ad; --shade: #eef2f4; }
@media (prefers-color-scheme: dark) {
  :root { --paper: #11161b; --ink: #eef1f3; --soft: #a7b2ba; --rule: #5a6873; --shade: #1a232a; }
  .light { display: none; }
}
@media (prefers-color-scheme: light) { .dark { display: none; } }
@media print { .dark { display: none; } .light { display: block; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 82rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.45 Arimo, Arial, "Liberation Sans", Helvetica, sans-serif; overflow-wrap: anywhere; }
h1, dd, td, th, td div, th div, p, bdi { unicode-bidi: isolate; }
h1 { font-size: 1.5rem; margin: 0 0 .25rem; }
h2 { font-size: 1.15rem; margin: 1.75rem 0 .5rem; border-bottom: 2px solid var(--ink); }
p { margin: .35rem 0; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(8.5rem, 1fr)); gap: .6rem 1rem; margin: .75rem 0; }
dt { color: var(--soft); font-size: .85rem; }
dd { margin: 0; }
ol, ul { margin: .35rem 0; padding-left: 1.6rem; }
li { margin: .35rem 0; }
.wide { overflow-x: auto; }
.picture svg { width: 100%; min-width: 34rem; height: auto; display: block; }
table { border-collapse: collapse; width: 100%; font-size: .95rem; }
th, td { text-align: left; vertical-align: top; padding: .3rem .5rem; border-bottom: 1px solid var(--rule); }
thead th { background: var(--shade); }
thead th, td div, th div { white-space: nowrap; }
th div { font-weight: normal; }
td .strong, th .strong { font-weight: bold; }
td .large { font-weight: bold; font-size: 1.25rem; line-height: 1.2; }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
@media (max-width: 48rem) {
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  table, tbody { display: block; }
  tr { display: grid; grid-template-columns: repeat(auto-fill, minmax(7.5rem, 1fr)); border-bottom: 2px solid var(--ink);
    padding: .5rem 0; }
  td, th { border: 0; padding: .2rem .5rem .2rem 0; }
  td:empty { display: none; }
  th[scope=row] { grid-column: 1 / -1; font-size: 1.1rem; order: -1; }
  td div, th div { white-space: normal; }
  td::before { content: attr(data-head); display: block; color: var(--soft); font-size: .8rem; }
}
`;

/**
 * The card as one file for a telephone: nothing in it is fetched, nothing in it runs, and no word of a plan becomes
 * markup. Light or dark as the telephone is.
 */
export function cardHtml(card: CardContents, scene: Scene): string {
    const clearings = clearingRows(card);
    const sections = sectionsOf(card, clearings.length > 0).map(
        ({ id, title, items }) =>
            `<section aria-labelledby="${id}"><h2 id="${id}">${escapeText(title)}</h2>${list(items)}</section>`,
    );
    const facts = [...card.facts, ...helmCells(card), { caption: 'Fingerprint', value: card.fingerprint }];
    return [
        '<!DOCTYPE html>',
        '<html lang="en">',
        '<head>',
        '<meta charset="utf-8">',
        `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="referrer" content="no-referrer">',
        `<title>${escapeText(card.title)} – deck card</title>`,
        `<style>${style}</style>`,
        '</head>',
        '<body>',
        `<header><h1>${escapeText(card.title)}</h1>${card.doc ? `<p>${escapeText(card.doc)}</p>` : ''}`,
        `<dl>${facts.map(({ caption, value }) => `<div><dt>${escapeText(caption)}</dt><dd>${escapeText(value)}</dd></div>`).join('')}</dl></header>`,
        '<main>',
        picture(scene, 'light', 'light'),
        picture(scene, 'dark', 'dark'),
        table('lines', 'Lines, in the order of setting', workingColumns(card.rows), card.rows),
        table('clearing', clearingTitle, clearingColumns(clearings), clearings),
        ...sections,
        '</main>',
        '</body>',
        '</html>',
        '',
    ].join('\n');
}

function picture(scene: Scene, palette: PaletteName, when: 'light' | 'dark'): string {
    const svg = svgOf(scene, { palette, bow: 'right', paper: { width: 210, height: 110 }, foot: false });
    return `<div class="wide picture ${when}" tabindex="0" role="group" aria-label="The plan from above">${svg.trim()}</div>`;
}

/** Roles are said: on a narrow screen the rows are laid out as blocks, and browsers would forget that it is a table. */
function table<Row>(
    id: string,
    title: string,
    columns: readonly Column<Row>[],
    rows: readonly Row[],
): string {
    if (rows.length === 0) return '';
    const head = columns
        .map(({ head }) => `<th scope="col" role="columnheader">${escapeText(head)}</th>`)
        .join('');
    // What a row is about is the last of the columns that are repeated on paper: its position.
    const about = columns.findLastIndex(({ key }) => key);
    const body = rows.map((row) => {
        const cells = columns.map(({ cell }, index) => {
            const lines = cell(row).map(
                ({ words, as }) => `<div${as ? ` class="${as}"` : ''}>${escapeText(words)}</div>`,
            );
            return index === about
                ? `<th scope="row" role="rowheader">${lines.join('')}</th>`
                : `<td role="cell" data-head="${escapeText(columns[index]!.head)}">${lines.join('')}</td>`;
        });
        return `<tr role="row">${cells.join('')}</tr>`;
    });
    return [
        `<section aria-labelledby="${id}"><h2 id="${id}">${escapeText(title)}</h2>`,
        `<div class="wide" tabindex="0" role="group" aria-labelledby="${id}"><table role="table">`,
        `<caption>${escapeText(title)}</caption>`,
        `<thead role="rowgroup"><tr role="row">${head}</tr></thead>`,
        `<tbody role="rowgroup">${body.join('')}</tbody></table></div></section>`,
    ].join('\n');
}

function list(items: readonly Item[]): string {
    return items
        .map(({ number, lead, words }) => {
            const bold = [number !== undefined && `${number}.`, lead && `${lead}:`].filter(Boolean).join(' ');
            return `<p>${bold ? `<strong>${escapeText(bold)}</strong> ` : ''}${escapeText(words)}</p>`;
        })
        .join('');
}
