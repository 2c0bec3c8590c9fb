import type { IToken, TokenType } from 'chevrotain';
import { DefaultLexer, type LangiumCoreServices, type LexerResult } from 'langium';
import { isUnitWord } from '../../units/unit-words.ts';
import { twinOf } from './tokens.ts';

const FEET = /^(ft|feet|foot)$/;
const INCH = /^(in|inch|inches)$/;

/**
 * Reads words as words, then settles by their place what they are: behind a number a unit, at the start of a
 * line a keyword, elsewhere a keyword that may also be a name.
 */
export class PlaceAwareLexer extends DefaultLexer {
    private readonly keywords = new Map<string, { keyword: TokenType; twin: TokenType }>();
    private readonly unit: TokenType;
    private readonly id: TokenType;
    private readonly number: TokenType;
    private readonly inches: TokenType;

    constructor(services: LangiumCoreServices) {
        super(services);
        const types = this.tokenTypes;
        this.unit = types.UNIT!;
        this.id = types.ID!;
        this.number = types.NUMBER!;
        this.inches = types.INCHES!;
        for (const type of Object.values(types)) {
            const twin = types[twinOf(type.name)];
            if (twin) this.keywords.set(type.name, { keyword: type, twin });
        }
    }

    /** Whether a word is one that the language uses. */
    isKeyword(word: string): boolean {
        return this.keywords.has(word);
    }

    /** Whether a word, as the lexer left it, would be a unit behind a number on the same line. */
    readsAsUnit(token: IToken): boolean {
        return this.keywords.has(token.image) ? isUnitWord(token.image) : token.tokenType === this.id;
    }

    override tokenize(text: string): LexerResult {
        const result = super.tokenize(text);
        this.settle(result.tokens);
        return result;
    }

    private settle(tokens: IToken[]): void {
        let previous: IToken | undefined;
        for (let index = 0; index < tokens.length; index++) {
            const token = tokens[index]!;
            if (token.tokenType === this.id) {
                const opens = !previous || (token.startLine! > previous.endLine! && previous.image !== ',');
                const behindNumber = !opens && previous!.tokenType === this.number;
                const known = this.keywords.get(token.image);
                if (behindNumber && this.readsAsUnit(token)) {
                    become(token, this.unit);
                    this.joinFeetAndInches(tokens, index);
                } else if (known) {
                    become(token, opens ? known.keyword : known.twin);
                }
            }
            previous = token;
        }
    }

    /** Seen at `in` of `6 ft 4 in`: the 4 is no quantity of its own. */
    private joinFeetAndInches(tokens: IToken[], index: number): void {
        if (index < 3 || !INCH.test(tokens[index]!.image)) return;
        const [feet, number] = [tokens[index - 2]!, tokens[index - 1]!];
        const sameLine = feet.startLine === number.startLine;
        if (sameLine && feet.tokenType === this.unit && FEET.test(feet.image)) become(number, this.inches);
    }
}

function become(token: IToken, type: TokenType): void {
    token.tokenType = type;
    token.tokenTypeIdx = type.tokenTypeIdx!;
}
