import type { ILexerErrorMessageProvider, IParserErrorMessageProvider, IToken, TokenType } from 'chevrotain';
import { contextsKnowing, exampleOf, examplesWith } from '../vocabulary.ts';
import { capital, shorten, withArticle } from '../wording.ts';
import { definitionWords } from './definition-words.ts';
import { feetMarkAt } from './feet-mark.ts';

type Mismatch = Parameters<IParserErrorMessageProvider['buildMismatchTokenMessage']>[0];
type NoAlternative = Parameters<IParserErrorMessageProvider['buildNoViableAltMessage']>[0];
type Leftover = Parameters<IParserErrorMessageProvider['buildNotAllInputParsedMessage']>[0];
type EarlyExit = Parameters<IParserErrorMessageProvider['buildEarlyExitMessage']>[0];

/** What each kind of text is called on deck. */
const CALLED: Readonly<Record<string, string>> = {
    NAME: 'a name',
    ID: 'a name',
    INNER: 'a name',
    NUMBER: 'a number',
    UNIT: 'a unit',
    STRING: 'a text in quotes',
    DATE: 'a date such as 2026-02-14',
    TIME: 'a time such as 07:42',
    WORD: 'a word',
    '{': '`{`',
    '}': '`}`',
    ',': 'a comma',
};

/** Examples for definitions, whose first word alone does not tell what follows. */
const DEFINITIONS: Readonly<Record<string, string>> = {
    boat: 'boat sandpiper "Sandpiper" { … }',
    rod: 'rod bent-butt-24 { … }',
    reel: 'reel lever-50 { … }',
    line: 'line nylon-24 { … }',
    leader: 'leader heavy { … }',
    hooks: 'hooks single-9 { … }',
    outfit: 'outfit fifty-1 { … }',
    lure: 'lure ink-pusher "Ink" pusher { … }',
    teaser: 'teaser pink-chain { … }',
    bait: 'bait scad { … }',
    method: 'method soft-strike { … }',
    species: 'species white-marlin { … }',
    spread: 'spread four-in-the-blue "Four-line diamond" { … }',
    rules: 'rules winter-series { … }',
    log: 'log 2026-02-14 { … }',
    use: 'use "tackle.spread"',
    layback: 'layback 1',
    waive: 'waive stagger on port long rigger because "…"',
    swap: 'swap port long rigger with starboard long rigger',
};

/** Examples for what the parser was in the middle of. */
const BY_RULE: Readonly<Record<string, string>> = {
    SpeedRange: 'speed 6 kn to 10 kn',
    Runs: 'runs 6 kn to 9 kn',
    WeightRange: 'weight 30 kg to 90 kg',
    Crests: 'first crest 6.5 m at 8 kn',
    Pull: 'pull 2.6 kg at 8 kn',
    Capacity: 'capacity 800 m of 0.71 mm',
    Turn: 'turn within 90 m',
    PositionBlock: 'port long rigger { lure ink-pusher  back wave 5 }',
    Holder: 'holder port corner { ahead 0.4 m  out 1.5 m  up 1.0 m }',
    Waive: 'waive stagger on port long rigger because "…"',
    AtMost: 'at most 6 lines',
    BaitHook: 'hooks circle with natural bait',
    Classes: 'class among 15 kg, 24 kg',
    LinesTime: 'lines out 16:30',
    Back: 'back wave 3',
};

/** Says what the parser met in the words of the crew: what is missing or in the way, and what would be right. */
export const parserMessages: IParserErrorMessageProvider = {
    buildMismatchTokenMessage({ expected, actual, previous, ruleName }: Mismatch): string {
        if (expected.name === '}') return closing(actual, previous, ruleName);
        if (expected.name === 'EOF') return leftover(actual);
        if (expected.name === 'NAME' && actual.tokenType.name === 'STRING') {
            return `${shorten(actual.image)} is in quotes; a name stands without: \`${shorten(actual.image.slice(1, -1))}\`.`;
        }
        const comma =
            ruleOf(ruleName) === 'PositionBlock' ? ' In an `order` a comma stands between positions.' : '';
        return `${capital(after(called(expected), previous))}${instead(actual, previous)}${remedy(previous, ruleName)}${comma}`;
    },

    buildNoViableAltMessage({ actual, previous, ruleName }: NoAlternative): string {
        const [first] = actual;
        const what = WANTED[ruleOf(ruleName)] ?? 'something';
        return `${capital(after(what, previous))}${instead(first!, previous)}${remedy(previous, ruleName)}`;
    },

    buildNotAllInputParsedMessage({ firstRedundant }: Leftover): string {
        return leftover(firstRedundant);
    },

    buildEarlyExitMessage({ actual, previous, ruleName }: EarlyExit): string {
        return `${capital(after('a value', previous))}${instead(actual[0]!, previous)}${remedy(previous, ruleName)}`;
    },
};

/** What stands where several things could. */
const WANTED: Readonly<Record<string, string>> = {
    Position: 'a position such as `port long rigger`',
    PlaceWord: 'the place on that side (corner, rigger, shotgun, …)',
    LonePlace: 'a position such as `port long rigger`',
    Back: '`wave` and a number, or a distance,',
    From: '`flat clip`, `halyard` and its number, `rod tip` or the name of a point',
    RodPart: 'the name of a rod, or `{`',
    ReelPart: 'the name of a reel, or `{`',
    LinePart: 'the name of a line, or `{`',
    LeaderPart: 'the name of a leader, or `{`',
    HooksPart: 'the name of a hook rig, or `{`',
    Setting: 'a value',
    Role: 'a role or a position, and a name in quotes',
    Order: '`set` or `clear`',
    LinesTime: '`in` or `out`',
};

function closing(actual: IToken, previous: IToken, ruleName: string): string {
    const block = ruleOf(ruleName);
    const elsewhere = definitionWords.has(actual.image) ? [] : contextsKnowing(actual.image);
    if (elsewhere.length > 0) {
        const where = elsewhere.slice(0, 3).map(withArticle).join(' or ');
        return `\`${actual.image}\` does not belong in ${withArticle(blockName(block))}. It belongs in ${where} block; or a \`}\` is missing before it.`;
    }
    const example = examplesWith(actual.image)[0];
    if (example !== undefined)
        return `\`${actual.image}\` does not begin a property: it stands inside one, as in \`${example}\`.`;
    if (isEnd(actual))
        return `A \`}\` is missing at the end: the ${blockName(block)} that was opened is not closed.`;
    // Behind a recovery the previous token may be one that was skipped, on the same line or after it.
    if (actual.image === ',') return 'No comma stands between properties, nor behind them. Take it out.';
    if (previous.endLine! >= actual.startLine!) {
        return `\`${shorten(actual.image)}\` does not belong here. Put each property on a line of its own, or close the ${blockName(block)} with \`}\` first.`;
    }
    return `A \`}\` is missing before \`${shorten(actual.image)}\`, which does not belong inside the ${blockName(block)}. Close it with \`}\`.`;
}

function leftover(token: IToken): string {
    if (token.image === '}') return 'There is a `}` too many: no block is open here. Take it out.';
    if (token.image === 'layback') {
        return 'The version is written once, before all else: it says how to read what follows. Move `layback` and its number to the first line of the file, or take them out.';
    }
    return `\`${shorten(token.image)}\` does not belong outside a block. Put it inside one, such as \`spread my-plan { … }\`, or look for a \`}\` too many above it.`;
}

function after(what: string, previous: IToken): string {
    const behind = previous.image ? ` after \`${shorten(previous.image)}\`` : '';
    return `${what} is missing${behind}`;
}

function instead(actual: IToken, previous: IToken): string {
    if (isEnd(actual) || actual.startLine !== previous.endLine) return '.';
    return `; \`${shorten(actual.image)}\` stands there.`;
}

function remedy(previous: IToken, ruleName: string): string {
    const rule = ruleOf(ruleName);
    const example =
        DEFINITIONS[rule.toLowerCase()] ??
        BY_RULE[rule] ??
        exampleOf(previous.image) ??
        DEFINITIONS[previous.image];
    return example ? ` Write for instance \`${example}\`.` : '';
}

function called(type: TokenType): string {
    return CALLED[type.name] ?? `\`${type.name.replace(/ \(word\)$/, '')}\``;
}

/** Rule names reach us with an invisible suffix that keeps them apart from tokens. */
function ruleOf(name: string): string {
    return name.replace(/\u200B$/, '');
}

/** `CentreRigger` → `centre rigger`; parts and blocks by the word that opens them. */
function blockName(rule: string): string {
    const words = rule
        .replace(/(Part|Block)$/, '')
        .replace(/([a-z])([A-Z])/g, '$1 $2')
        .toLowerCase();
    return `${words} block`;
}

function isEnd(token: IToken): boolean {
    return token.tokenType.name === 'EOF';
}

/** What other languages and keyboards write otherwise. */
const MEANT: Readonly<Record<string, string>> = {
    '(': 'opens no block. Use `{`.',
    '[': 'opens no block. Use `{`.',
    ')': 'closes no block. Use `}`.',
    ']': 'closes no block. Use `}`.',
    '#': 'begins no comment. Use `//`.',
    '--': 'begins no comment. Use `//`.',
    '`': 'is not a quote that the language knows. Use straight double quotes: "…".',
};

/** Characters that begin nothing in the language. */
export const lexerMessages: ILexerErrorMessageProvider = {
    buildUnexpectedCharactersMessage(text: string, offset: number, length: number): string {
        const found = text.slice(offset, offset + length);
        const shown = /^[\x20-\x7e\u00a0-\uffff]+$/.test(found)
            ? `\`${shorten(found)}\``
            : 'A character that cannot be shown';
        const feet = feetMarkAt(text, offset);
        if (feet) return `Feet and inches are written in letters: \`${feet.text}\`.`;
        if (/^[“”„«»‘’']/.test(found))
            return `${shown} is not a quote that the language knows. Use straight double quotes: "…".`;
        const meant = MEANT[found];
        if (meant) return `${shown} ${meant}`;
        return `${shown} has no meaning here. Take it out, or put text in double quotes: "…".`;
    },
    buildUnableToPopLexerModeMessage: () => 'This cannot be read.',
};
