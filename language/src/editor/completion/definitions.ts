import { CompletionItemKind } from 'vscode-languageserver';
import { headWords } from '../../plan/resolve/towed.ts';
import { choice, place } from '../snippets.ts';
import type { Offer } from './item.ts';

interface Beginning {
    readonly word: string;
    readonly says: string;
    /** What stands between the word and the block, with places to fill in; name and title by default. */
    readonly head?: string;
    /** Words of the first lines, each with a place behind it. */
    readonly lines?: readonly string[];
    readonly isLine?: boolean;
}

/** What may stand outside of any block. */
const beginnings: readonly Beginning[] = [
    { word: 'spread', says: 'A plan: boat, conditions, and what runs where.', lines: ['boat', 'speed'] },
    { word: 'use', says: 'Makes the definitions of another file known here.', head: '"$1"', isLine: true },
    { word: 'boat', says: 'A boat: her size, outriggers, clips and rod holders.' },
    { word: 'outfit', says: 'A rod, a reel and a line, set up to fish.', lines: ['rod', 'reel', 'line'] },
    {
        word: 'lure',
        says: 'A lure, by its head.',
        head: `${place(1, 'name')} "${place(2, 'Title')}" ${choice(3, headWords)}`,
    },
    { word: 'teaser', says: 'A teaser, without hooks.' },
    { word: 'bait', says: 'A bait.' },
    { word: 'method', says: 'A way to strike: drags, loop, wait.' },
    { word: 'rod', says: 'A rod.' },
    { word: 'reel', says: 'A reel.' },
    { word: 'line', says: 'A line: material, diameter, class.' },
    { word: 'leader', says: 'A leader.' },
    { word: 'hooks', says: 'A hook rig.' },
    { word: 'species', says: 'A fish, and the speeds at which it is trolled for.' },
    { word: 'rules', says: 'Rules of an event or a house: limits, and how strict each rule is.' },
    {
        word: 'day',
        says: 'Which spread is fished when: from an hour on, under a sea, a wind or a light.',
        lines: ['from'],
    },
    {
        word: 'log',
        says: 'What happened on a day, by the clock.',
        head: place(1, '2026-01-31'),
        lines: ['using'],
    },
    { word: 'layback', says: 'The version of the language of this file.', head: place(1, '1'), isLine: true },
];

export function definitionOffers(): Offer[] {
    return beginnings.map((beginning, rank) => ({
        label: beginning.word,
        kind: CompletionItemKind.Keyword,
        text: `${beginning.word} `,
        snippet: snippetOf(beginning),
        detail: beginning.says,
        rank,
        goesOn: beginning.word === 'use',
    }));
}

function snippetOf({ word, head, lines = [], isLine }: Beginning): string {
    const opening = `${word} ${head ?? `${place(1, 'name')} "${place(2, 'Title')}"`}`;
    if (isLine) return opening;
    const body = lines.map((line, at) => `\t${line} $${at + 3}\n`).join('');
    return `${opening} {\n${body}\t$0\n}`;
}
