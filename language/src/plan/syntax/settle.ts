import { isUnitWord } from '../../units/unit-words.ts';
import { definitionWords } from './definition-words.ts';
import { Depth } from './depth.ts';

const FEET = /^(ft|feet|foot)$/;
const INCH = /^(in|inch|inches)$/;

/** Words that neither begin a property nor carry one on: where one opens a line, what goes before it was forgotten. */
const HALVES: ReadonlySet<string> = new Set(['short', 'long']);

/** A word as it was read, whose type its place is still to decide. */
export interface Unsettled<Type> {
    readonly image: string;
    readonly startLine?: number;
    readonly endLine?: number;
    tokenType: Type;
}

/** The types that a word may have. */
export interface WordTypes<Type> {
    readonly id: Type;
    readonly inner: Type;
    readonly unit: Type;
    readonly number: Type;
    readonly inches: Type;
    /** By word: its type where it opens a line, and elsewhere. */
    readonly keywords: ReadonlyMap<string, { readonly keyword: Type; readonly twin: Type }>;
}

/**
 * Settles by their place what words are: behind a number a unit, at the start of a line a keyword, elsewhere a keyword
 * that may also be a name, and outside every block a keyword only if it opens a definition.
 */
export function settle<Type>(tokens: readonly Unsettled<Type>[], types: WordTypes<Type>): void {
    const depth = new Depth();
    let previous: Unsettled<Type> | undefined;
    for (let index = 0; index < tokens.length; index++) {
        const token = tokens[index]!;
        const opens = !previous || (token.startLine! > previous.endLine! && previous.image !== ',');
        depth.enter(token.image, opens);
        if (token.tokenType === types.id) settleWord(tokens, index, opens, depth.isOutside, types);
        previous = token;
    }
}

/** Whether a word, as it was read or settled, would be a unit behind a number on the same line. */
export function readsAsUnit<Type>(
    { image, tokenType }: Pick<Unsettled<Type>, 'image' | 'tokenType'>,
    { keywords, id, inner }: WordTypes<Type>,
): boolean {
    return keywords.has(image) ? isUnitWord(image) : tokenType === id || tokenType === inner;
}

function settleWord<Type>(
    tokens: readonly Unsettled<Type>[],
    index: number,
    opens: boolean,
    outside: boolean,
    types: WordTypes<Type>,
): void {
    const token = tokens[index]!;
    const known = types.keywords.get(token.image);
    const behindNumber = !opens && tokens[index - 1]!.tokenType === types.number;
    if (behindNumber && readsAsUnit(token, types)) {
        token.tokenType = types.unit;
        joinFeetAndInches(tokens, index, types);
    } else if (known && !(opens && (outside ? !definitionWords.has(token.image) : HALVES.has(token.image)))) {
        token.tokenType = opens ? known.keyword : known.twin;
    } else if (!opens) {
        token.tokenType = types.inner;
    }
}

/** Seen at `in` of `6 ft 4 in`: the 4 is no quantity of its own. */
function joinFeetAndInches<Type>(
    tokens: readonly Unsettled<Type>[],
    index: number,
    { unit, inches }: WordTypes<Type>,
): void {
    if (index < 3 || !INCH.test(tokens[index]!.image)) return;
    const [feet, number] = [tokens[index - 2]!, tokens[index - 1]!];
    const sameLine = feet.startLine === number.startLine;
    if (sameLine && feet.tokenType === unit && FEET.test(feet.image)) number.tokenType = inches;
}
