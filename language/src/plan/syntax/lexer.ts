import type { ILexingError, IToken, TokenType } from 'chevrotain';
import { DefaultLexer, type LangiumCoreServices, type LexerResult } from 'langium';
import { contextsKnowing } from '../vocabulary.ts';
import { definitionWords } from './definition-words.ts';
import { readsAsUnit, settle, type WordTypes } from './settle.ts';
import { wordTypes } from './word-types.ts';

export const OPEN_COMMENT = 'The comment that opens here is not closed. End it with `*/`.';

/** Reads words as words, then settles by their place what they are. */
export class PlaceAwareLexer extends DefaultLexer {
    private readonly words: WordTypes<TokenType>;

    constructor(services: LangiumCoreServices) {
        super(services);
        this.words = wordTypes(this.tokenTypes);
    }

    /** Whether a word is one that the language uses. */
    isKeyword(word: string): boolean {
        return this.words.keywords.has(word);
    }

    /** Whether a word, as the lexer left it, would be a unit behind a number on the same line. */
    readsAsUnit(token: IToken): boolean {
        return readsAsUnit(token, this.words);
    }

    override tokenize(text: string): LexerResult {
        const { read, open } = withoutOpenComments(text);
        const result = super.tokenize(read);
        result.errors.push(...open.map((offset) => notClosed(text, offset)));
        settle(result.tokens, this.words);
        for (const token of result.tokens) token.tokenTypeIdx = token.tokenType.tokenTypeIdx!;
        return result;
    }
}

/**
 * A text with blanks where a comment opens that never closes, up to the next line that reads as a plan's: what the
 * comment says need not be complained about word by word, and what comes below is still read.
 */
function withoutOpenComments(text: string): { readonly read: string; readonly open: readonly number[] } {
    const open: number[] = [];
    let read = text;
    for (let at = unclosedComment(read); at !== undefined; at = unclosedComment(read)) {
        open.push(at);
        const end = nextLineOfPlan(read, at);
        read = `${read.slice(0, at)}${read.slice(at, end).replace(/[^\r\n]/g, ' ')}${read.slice(end)}`;
    }
    return { read, open };
}

function nextLineOfPlan(text: string, from: number): number {
    const lines = /[\r\n][^\S\r\n]*(\}|[a-z]+)/g;
    lines.lastIndex = from;
    for (let line = lines.exec(text); line; line = lines.exec(text)) {
        const word = line[1]!;
        if (word === '}' || SIDES.has(word) || definitionWords.has(word) || contextsKnowing(word).length > 0)
            return line.index;
    }
    return text.length;
}

const SIDES: ReadonlySet<string> = new Set(['port', 'starboard', 'centre', 'center', 'shotgun']);

/** Where a comment opens that never closes. */
function unclosedComment(text: string): number | undefined {
    if (text.lastIndexOf('/*') <= text.lastIndexOf('*/')) return undefined;
    const skipped = /\/\/[^\n\r]*|"[^"\n\r]*"?|[“”„][^"“”\n\r]*[“”"]?|\/\*[\s\S]*?(\*\/|$)/g;
    for (const { 0: found, 1: end, index } of text.matchAll(skipped)) {
        if (found.startsWith('/*') && end === '') return index;
    }
    return undefined;
}

function notClosed(text: string, offset: number): ILexingError {
    const before = text.slice(0, offset).split(/\r\n|\r|\n/);
    return {
        offset,
        length: 2,
        line: before.length,
        column: before.at(-1)!.length + 1,
        message: OPEN_COMMENT,
    };
}
