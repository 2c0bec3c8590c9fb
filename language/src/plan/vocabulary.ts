import { boatWords } from './vocabulary/boat.ts';
import { dayWords } from './vocabulary/day.ts';
import { logWords } from './vocabulary/log.ts';
import type { Property } from './vocabulary/property.ts';
import { rulesWords } from './vocabulary/rules.ts';
import { spreadWords } from './vocabulary/spread.ts';
import { tackleWords } from './vocabulary/tackle.ts';
import { towedWords } from './vocabulary/towed.ts';

export type { Property };

/** A block of the language: what a definition, a part or a braced group of properties may hold. */
export type Context = keyof typeof vocabulary;

/** Every word of every block. A test holds this table and the grammar to each other. */
export const vocabulary = {
    ...boatWords,
    ...tackleWords,
    ...towedWords,
    ...spreadWords,
    ...dayWords,
    ...rulesWords,
    ...logWords,
} as const satisfies Record<string, readonly Property[]>;

/** What a word means in a block; both spellings of colour and centre are one word. */
export function propertyOf(context: Context, word: string): Property | undefined {
    const one = spelled(word);
    return (vocabulary[context] as readonly Property[]).find((property) => property.word === one);
}

function spelled(word: string): string {
    return word === 'color'
        ? 'colour'
        : word === 'center'
          ? 'centre'
          : word === 'halyard'
            ? 'halyards'
            : word;
}

/** The blocks that know a word. */
export function contextsKnowing(word: string): readonly Context[] {
    if (!knowing) {
        knowing = new Map();
        for (const context of Object.keys(vocabulary) as Context[])
            for (const { word: each } of vocabulary[context] as readonly Property[])
                knowing.set(each, [...new Set([...(knowing.get(each) ?? []), context])]);
    }
    return knowing.get(spelled(word)) ?? [];
}

let knowing: Map<string, readonly Context[]> | undefined;

/** An example for a word, from a spread if it has the word, else wherever it is known first. */
export function exampleOf(word: string): string | undefined {
    const contexts = contextsKnowing(word);
    const context = contexts.find((each) => each === 'spread' || each === 'position') ?? contexts[0];
    return context && propertyOf(context, word)?.example;
}

/** Examples of properties that have a word further in: `back wave 3` for `wave`. */
export function examplesWith(word: string): string[] {
    if (!/^[a-z]+$/.test(word)) return [];
    const properties = Object.values(vocabulary).flatMap((each) => each as readonly Property[]);
    return properties
        .map(({ example }) => example)
        .filter((example) =>
            example
                .replace(/"[^"]*"?/g, '"')
                .split(/\s+/)
                .slice(1, 3)
                .includes(word),
        );
}
