import { contextsKnowing } from '../vocabulary.ts';
import { definitionWords } from './definition-words.ts';
import { positionOpeners } from './depth.ts';

/** A stretch of a text in which words are no words of the language. */
export interface Opaque {
    readonly kind: 'comment' | 'open comment' | 'quoted';
    readonly start: number;
    readonly end: number;
}

/**
 * Comments and quoted texts, in one pass. A comment that opens and never closes ends before the next line that reads
 * as a plan's: what it says need not be complained about word by word, and what comes below is still read.
 */
export function* opaqueParts(text: string): Generator<Opaque> {
    const lastEnd = text.lastIndexOf('*/');
    const parts = /\/\/[^\n\r]*|\/\*|"[^"\n\r]*"?|[“”„][^"“”\n\r]*[“”"]?/g;
    for (let found = parts.exec(text); found; found = parts.exec(text)) {
        const start = found.index;
        if (found[0] !== '/*') {
            const kind = found[0].startsWith('/') ? 'comment' : 'quoted';
            yield { kind, start, end: parts.lastIndex };
        } else if (start + 2 <= lastEnd) {
            parts.lastIndex = text.indexOf('*/', start + 2) + 2;
            yield { kind: 'comment', start, end: parts.lastIndex };
        } else {
            parts.lastIndex = nextLineOfPlan(text, start);
            yield { kind: 'open comment', start, end: parts.lastIndex };
        }
    }
}

function nextLineOfPlan(text: string, from: number): number {
    const lines = /[\r\n][^\S\r\n]*(\}|[a-z]+)/g;
    lines.lastIndex = from;
    for (let line = lines.exec(text); line; line = lines.exec(text)) {
        const word = line[1]!;
        const opens = positionOpeners.has(word) || definitionWords.has(word);
        if (word === '}' || opens || contextsKnowing(word).length > 0) return line.index;
    }
    return text.length;
}
