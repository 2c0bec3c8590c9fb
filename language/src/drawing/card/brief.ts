import type { Day } from '../../plan/model.ts';
import { capital, inMarkdown } from '../../plan/wording.ts';
import type { CardContents } from './contents.ts';
import { daySections } from './day.ts';
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

/** A day for a message to the crew: which spread when, and every change-over. */
export function briefOfDay(day: Day, format: BriefFormat = 'text'): string {
    const page = format === 'markdown' ? markdown : text;
    const [head, ...overs] = daySections(day);
    return [
        page.title(head!.title),
        head!.items.map(page.item).join('\n'),
        ...overs.map(({ title, items }) => `${page.heading(title)}\n${items.map(page.item).join('\n')}`),
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
    title: (words: string) => `# ${inMarkdown(words)}`,
    heading: (words: string) => `## ${inMarkdown(words)}\n`,
    plain: inMarkdown,
    item: ({ number, lead, words }: Item) =>
        `${number === undefined ? '- ' : `${number}. `}${lead ? `**${inMarkdown(lead)}:** ` : ''}${inMarkdown(words)}`,
};
