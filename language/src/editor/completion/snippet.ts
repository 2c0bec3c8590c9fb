import type { Property } from '../../plan/vocabulary.ts';
import { choice, escaped, place } from '../snippets.ts';

/**
 * A property with places to fill in, made from its example: each number with its unit, each text and date is one,
 * `pull ${1:2.6 kg} at ${2:8 kn}`. A block opens on lines of its own.
 *
 * @param refers  whether a name follows that is chosen from those defined
 */
export function snippetOf(property: Property, refers: boolean): string {
    const { word, example, choices } = property;
    const head = example.includes('{') ? example.slice(0, example.indexOf('{')).trimEnd() : undefined;
    if (choices && head === undefined) {
        return example.replace(choices.find((choice) => example.includes(choice)) ?? '', choice(1, choices));
    }
    if (refers) return `${word} $1`;
    if (head === undefined) return placesIn(example);
    return `${placesIn(head)} {\n\t$0\n}`;
}

const filled =
    /"[^"]*"|\d{4}-\d{2}-\d{2}|\d{1,2}:\d{2}|\d+(?:\.\d+)?(?: (?!to\b|at\b|of\b|from\b)[A-Za-z%/]+)?/g;

function placesIn(text: string): string {
    let places = 0;
    let done = 0;
    let snippet = '';
    for (const match of text.matchAll(filled)) {
        const [found] = match;
        places++;
        snippet += escaped(text.slice(done, match.index));
        snippet += found.startsWith('"') ? `"${place(places, found.slice(1, -1))}"` : place(places, found);
        done = match.index + found.length;
    }
    return snippet + escaped(text.slice(done));
}
