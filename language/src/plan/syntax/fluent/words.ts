import { settle } from '../settle.ts';
import { wordTypes } from '../word-types.ts';
import type { Table } from './table.ts';
import { type Kind, Leaf } from './tree.ts';

/** A text in words, numbers and marks. */
export interface Words {
    readonly leaves: readonly Leaf[];
    /** Comments. */
    readonly hidden: readonly Leaf[];
    /** Where each line begins. */
    readonly lines: readonly number[];
}

/** @returns a function that reads a text into words, or into nothing where a character fits nowhere */
export function wordsBy({ tokens, patterns, openers }: Table): (text: string) => Words | undefined {
    const kinds: readonly Kind[] = tokens.map((name, number) => ({ name, number }));
    const types = wordTypes(Object.fromEntries(kinds.map((kind) => [kind.name, kind])));
    const looks = patterns.map(({ token, source, apart }) => ({
        kind: kinds[token]!,
        pattern: new RegExp(source, 'y'),
        apart,
    }));
    const byCharacter: (typeof looks)[] = [];
    for (const [characters, few] of openers) {
        for (const character of characters)
            byCharacter[character.charCodeAt(0)] = few.map((at) => looks[at]!);
    }

    return (text) => {
        const [leaves, hidden, lines]: [Leaf[], Leaf[], number[]] = [[], [], [0]];
        let at = 0;
        while (at < text.length) {
            const fitting = (byCharacter[text.charCodeAt(at)] ?? looks).find(({ pattern }) => {
                pattern.lastIndex = at;
                return pattern.test(text);
            });
            if (!fitting) return undefined;
            const { kind, pattern, apart } = fitting;
            const end = pattern.lastIndex;
            if (apart !== 'skipped') {
                const leaf = new Leaf(at, text.slice(at, end), lines.length - 1, kind);
                (apart ? hidden : leaves).push(leaf);
            }
            if (apart) countLines(text, at, end, lines);
            at = end;
        }
        settle(leaves, types);
        return { leaves, hidden, lines };
    };
}

function countLines(text: string, from: number, end: number, lines: number[]): void {
    for (let at = from; at < end; at++) {
        const code = text.charCodeAt(at);
        if (code === LINE_FEED || (code === RETURN && text.charCodeAt(at + 1) !== LINE_FEED))
            lines.push(at + 1);
    }
}

const LINE_FEED = 0x0a;
const RETURN = 0x0d;
