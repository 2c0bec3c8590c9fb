import { Lexer, type TokenType } from 'chevrotain';
import { DefaultTokenBuilder, type GrammarAST } from 'langium';

/**
 * Token types whose members overlap on purpose.
 *
 * The lexer reads every word as an ID; where it stands decides what else it is (see lexer.ts). So each word of
 * the language has two types: the keyword proper, for a word that opens its line, and a twin for the same word
 * elsewhere, which fits wherever the keyword fits and also wherever a NAME does. That is why any word may name
 * a lure, and why a name that is missing at the end of a line is not made up from the next one.
 *
 *     WORD ⊃ NAME, keywords       NAME ⊃ ID, INNER, twins       keywords ⊃ twins       LATER ⊃ INNER, twins
 *
 * INNER is an ID that does not open its line, LATER any word that does not.
 */
export class OverlappingTokens extends DefaultTokenBuilder {
    override buildTokens(grammar: GrammarAST.Grammar): TokenType[] {
        const types = super.buildTokens(grammar) as TokenType[];
        const byName = new Map(types.map((type) => [type.name, type]));
        const word = abstract(byName.get('WORD')!);
        const name = abstract(byName.get('NAME')!, word);
        abstract(byName.get('INCHES')!);
        const later = abstract(byName.get('LATER')!);
        byName.get('ID')!.CATEGORIES = [name];
        abstract(byName.get('INNER')!, name, later);
        const twins: TokenType[] = [];
        for (const keyword of types.filter((type) => isWord(type.name) && !isTerminal(type.name))) {
            abstract(keyword, word);
            keyword.LONGER_ALT = undefined;
            twins.push({ name: twinOf(keyword.name), PATTERN: Lexer.NA, CATEGORIES: [keyword, name, later] });
        }
        return [...types, ...twins];
    }
}

/** The name of the token type for a keyword that does not open its line. */
export function twinOf(keyword: string): string {
    return `${keyword} (word)`;
}

/** Whether a token type's name is that of a keyword made of letters, or of a terminal. */
function isWord(name: string): boolean {
    return /^[A-Za-z]/.test(name);
}

function isTerminal(name: string): boolean {
    return /^[A-Z_]{2,}$/.test(name);
}

function abstract(type: TokenType, ...categories: TokenType[]): TokenType {
    type.PATTERN = Lexer.NA;
    type.CATEGORIES = categories;
    return type;
}
