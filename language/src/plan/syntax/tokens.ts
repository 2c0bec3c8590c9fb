import { Lexer, type TokenType } from 'chevrotain';
import { type AstNode, AstUtils, DefaultTokenBuilder, GrammarAST, stream } from 'langium';

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
        const types = this.typesOf(grammar);
        const byName = new Map(types.map((type) => [type.name, type]));
        const word = abstract(byName.get('WORD')!);
        const name = abstract(byName.get('NAME')!, word);
        const later = abstract(byName.get('LATER')!);
        abstract(byName.get('INCHES')!);
        abstract(byName.get('INNER')!, name, later);
        byName.get('ID')!.CATEGORIES = [name];
        const twins: TokenType[] = [];
        for (const keyword of types) {
            if (!isKeyword(keyword)) continue;
            keyword.CATEGORIES = [word];
            twins.push({ name: twinOf(keyword.name), PATTERN: Lexer.NA, CATEGORIES: [keyword, name, later] });
        }
        return [...types, ...twins];
    }

    /** The longest keywords first, then the terminals: every rule of the grammar is in use, so none is looked for. */
    private typesOf(grammar: GrammarAST.Grammar): TokenType[] {
        const terminals = this.buildTerminalTokens(stream(grammar.rules));
        const keywords = new Map<string, GrammarAST.Keyword>();
        const waiting: AstNode[] = grammar.rules.filter(GrammarAST.isParserRule);
        for (const node of waiting) {
            if (GrammarAST.isKeyword(node)) keywords.set(node.value, node);
            waiting.push(...AstUtils.streamContents(node));
        }
        const longestFirst = [...keywords.values()].sort((a, b) => b.value.length - a.value.length);
        return [...longestFirst.map((each) => this.buildKeywordToken(each, terminals, false)), ...terminals];
    }

    /** A word has no pattern of its own: it is read as an ID. Nor need anybody look for what it may begin. */
    protected override buildKeywordToken(
        keyword: GrammarAST.Keyword,
        terminals: TokenType[],
        caseInsensitive: boolean,
    ): TokenType {
        if (WORD.test(keyword.value)) return { name: keyword.value, PATTERN: Lexer.NA };
        return super.buildKeywordToken(keyword, terminals, caseInsensitive);
    }
}

const WORD = /^[A-Za-z]+$/;
const TERMINAL = /^[A-Z_]{2,}$/;

/** The name of the token type for a keyword that does not open its line. */
export function twinOf(keyword: string): string {
    return `${keyword} (word)`;
}

function isKeyword({ name }: TokenType): boolean {
    return WORD.test(name) && !TERMINAL.test(name);
}

function abstract(type: TokenType, ...categories: TokenType[]): TokenType {
    type.PATTERN = Lexer.NA;
    type.CATEGORIES = categories;
    return type;
}
