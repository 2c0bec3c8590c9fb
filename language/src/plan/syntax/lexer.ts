import type { ILexingError, IToken, TokenType } from 'chevrotain';
import { DefaultLexer, type LangiumCoreServices, type LexerResult } from 'langium';
import { opaqueParts } from './opaque.ts';
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
        for (const offset of open) result.errors.push(notClosed(offset));
        settle(result.tokens, this.words);
        for (const token of result.tokens) token.tokenTypeIdx = token.tokenType.tokenTypeIdx!;
        return result;
    }
}

/** A text with blanks in the place of comments that never close, and where those open. */
function withoutOpenComments(text: string): { readonly read: string; readonly open: readonly number[] } {
    // Nearly always: the last comment is closed.
    if (text.lastIndexOf('/*') <= text.lastIndexOf('*/')) return { read: text, open: [] };
    const open: number[] = [];
    let read = '';
    for (const { kind, start, end } of opaqueParts(text)) {
        if (kind !== 'open comment') continue;
        open.push(start);
        read += `${text.slice(read.length, start)}${text.slice(start, end).replace(/[^\r\n]/g, ' ')}`;
    }
    return { read: read + text.slice(read.length), open };
}

/** Where it is, is said by its offset alone: whoever shows it asks for no more. */
function notClosed(offset: number): ILexingError {
    return { offset, length: 2, line: undefined, column: undefined, message: OPEN_COMMENT };
}
