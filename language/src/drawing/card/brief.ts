import { capital } from '../../plan/wording.ts';
import type { CardContents } from './contents.ts';
import { type Item, rowWords, type Section, sectionsOf } from './sections.ts';

export type BriefFormat = 'text' | 'markdown';

/** The words of a card for a message to the crew: one line a sentence, nothing that a telephone would break. */
export function briefOf(card: CardContents, format: BriefFormat = 'text'): string {
    const page = format === 'markdown' ? markdown : text;
    const facts = card.facts.map(({ caption, value }): Item => ({ lead: caption, words: value }));
    const lines = card.rows.map(
        (row): Item => ({
            ...(row.number !== undefined && { number: row.number }),
            lead: capital(row.name),
            words: `${rowWords(row)}.`,
        }),
    );
    const sections: Section[] = [
        ...(lines.length > 0 ? [{ id: 'lines', title: 'Lines, in the order of setting', items: lines }] : []),
        ...sectionsOf(card),
    ];
    return [
        page.title(card.title),
        ...(card.doc ? [page.plain(card.doc)] : []),
        [...facts, { lead: 'Fingerprint', words: card.fingerprint }].map(page.item).join('\n'),
        ...sections.map(({ title, items }) => `${page.heading(title)}\n${items.map(page.item).join('\n')}`),
    ]
        .join('\n\n')
        .concat('\n');
}

const text = {
    title: (words: string) => words.toUpperCase(),
    heading: (words: string) => `${words.toUpperCase()}`,
    plain: (words: string) => words,
    item: ({ number, lead, words }: Item) =>
        `${number === undefined ? '- ' : `${number}. `}${lead ? `${lead}: ` : ''}${words}`,
};

const markdown = {
    title: (words: string) => `# ${escaped(words)}`,
    heading: (words: string) => `## ${escaped(words)}\n`,
    plain: escaped,
    item: ({ number, lead, words }: Item) =>
        `${number === undefined ? '- ' : `${number}. `}${lead ? `**${escaped(lead)}:** ` : ''}${escaped(words)}`,
};

/** What Markdown or the HTML in it would take for its own is shown as it is; so is what would become a link. */
function escaped(words: string): string {
    return words
        .replace(/[\\`*_{}[\]<>#|!&~]/g, '\\$&')
        .replace(/^(\d+)([.)])/, '$1\\$2')
        .replace(/^([-+=])/, '\\$1')
        .replace(/\b(https?|ftp|mailto|www)(?=[:.])/gi, '$1\u200b');
}
