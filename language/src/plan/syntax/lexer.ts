import type { IToken, TokenType } from 'chevrotain';
import { DefaultLexer, type LangiumCoreServices, type LexerResult } from 'langium';
import { readsAsUnit, settle, type WordTypes } from './settle.ts';
import { wordTypes } from './word-types.ts';

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
        const result = super.tokenize(text);
        settle(result.tokens, this.words);
        for (const token of result.tokens) token.tokenTypeIdx = token.tokenType.tokenTypeIdx!;
        return result;
    }
}
