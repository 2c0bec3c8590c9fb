import type { IToken, TokenType } from 'chevrotain';
import { DefaultLexer, type LangiumCoreServices, type LexerResult } from 'langium';
import { isUnitWord } from '../../units/unit-words.ts';
import { definitionWords } from './definition-words.ts';
import { twinOf } from './tokens.ts';

const FEET = /^(ft|feet|foot)$/;
const INCH = /^(in|inch|inches)$/;

/**
 * Reads words as words, then settles by their place what they are: behind a number a unit, at the start of a
 * line a keyword, elsewhere a keyword that may also be a name, and outside every block a keyword only if it
 * opens a definition.
 */
export class PlaceAwareLexer extends DefaultLexer {
    private readonly keywords = new Map<string, { keyword: TokenType; twin: TokenType }>();
    private readonly unit: TokenType;
    private readonly id: TokenType;
    private readonly inner: TokenType;
    private readonly number: TokenType;
    private readonly inches: TokenType;

    constructor(services: LangiumCoreServices) {
        super(services);
        const types = this.tokenTypes;
        this.unit = types.UNIT!;
        this.id = types.ID!;
        this.inner = types.INNER!;
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
    readsAsUnit({ image, tokenType }: IToken): boolean {
        return this.keywords.has(image)
            ? isUnitWord(image)
            : tokenType === this.id || tokenType === this.inner;
    }

    override tokenize(text: string): LexerResult {
        const result = super.tokenize(text);
        this.settle(result.tokens);
        return result;
    }

    private settle(tokens: IToken[]): void {
        const depth = new Depth();
        let previous: IToken | undefined;
        for (let index = 0; index < tokens.length; index++) {
            const token = tokens[index]!;
            const opens = !previous || (token.startLine! > previous.endLine! && previous.image !== ',');
            depth.enter(token, opens);
            if (token.tokenType === this.id) this.settleWord(tokens, index, opens, depth);
            previous = token;
        }
    }

    private settleWord(tokens: IToken[], index: number, opens: boolean, depth: Depth): void {
        const token = tokens[index]!;
        const known = this.keywords.get(token.image);
        const behindNumber = !opens && tokens[index - 1]!.tokenType === this.number;
        if (behindNumber && this.readsAsUnit(token)) {
            become(token, this.unit);
            this.joinFeetAndInches(tokens, index);
        } else if (known && !(opens && depth.isOutside && !definitionWords.has(token.image))) {
            become(token, opens ? known.keyword : known.twin);
        } else if (!opens) {
            become(token, this.inner);
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

/** The words that open a line of a spread only to open a block: a position. */
export const positionOpeners: ReadonlySet<string> = new Set([
    'port',
    'starboard',
    'centre',
    'center',
    'shotgun',
    'stinger',
    'standby',
]);

/**
 * How deep in blocks a token stands. A definition or position whose `{` was forgotten counts as open from the line
 * after its first, so that what follows is not taken for strays; a `}` too many does not go below the ground.
 */
class Depth {
    private depth = 0;
    private headed = false;
    private definition = '';
    /** Whether another definition may begin here without a line of its own. */
    private ready = false;

    get isOutside(): boolean {
        return this.depth === 0 && !this.headed;
    }

    enter(token: IToken, opens: boolean): void {
        if (token.image === '{') {
            this.depth++;
            this.headed = this.ready = false;
        } else if (token.image === '}') {
            this.depth = Math.max(0, this.depth - 1);
            this.ready = this.depth === 0;
        } else if (opens || this.ready) {
            if (opens && this.headed) this.depth++;
            this.headed = this.opensBlock(token.image);
            this.ready = false;
        } else {
            // Behind the one value of a heading.
            this.ready = this.depth === 0 && headings.has(this.definition);
        }
    }

    /** Roles and events of a log begin with positions too, and open nothing. */
    private opensBlock(word: string): boolean {
        if (this.depth > 0)
            return this.depth === 1 && this.definition === 'spread' && positionOpeners.has(word);
        this.definition = word;
        return definitionWords.has(word) && !headings.has(word);
    }
}

/** What stands above the definitions, and has no block. */
const headings: ReadonlySet<string> = new Set(['use', 'layback']);

function become(token: IToken, type: TokenType): void {
    token.tokenType = type;
    token.tokenTypeIdx = type.tokenTypeIdx!;
}
