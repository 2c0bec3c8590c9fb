import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { type Context, type Property, propertyOf, vocabulary } from '../../language/src/plan/vocabulary.ts';
import { sheetAround } from './sheet-around.ts';

const services = createServices();
const rules = new Map(
    services.Grammar.rules.filter(GrammarAST.isParserRule).map((rule) => [rule.name, rule] as const),
);

/** The grammar's lists of alternatives, and the blocks that they are the lists of. */
const LISTS: Readonly<Record<string, readonly Context[]>> = {
    BoatEntry: ['boat'],
    WashEntry: ['wash'],
    OutriggerEntry: ['outriggers', 'centre rigger'],
    PointEntry: ['foot', 'flat', 'point', 'extra position'],
    HolderEntry: ['holder'],
    RodEntry: ['rod'],
    ReelEntry: ['reel'],
    SpoolEntry: ['spool'],
    LineEntry: ['line'],
    LeaderEntry: ['leader'],
    HookEntry: ['hooks'],
    OutfitEntry: ['outfit'],
    DoubleEntry: ['double'],
    DragEntry: ['drag'],
    LureEntry: ['lure'],
    TeaserEntry: ['teaser'],
    BaitEntry: ['bait'],
    MethodEntry: ['method'],
    SpeciesEntry: ['species'],
    SpreadEntry: ['spread'],
    PositionEntry: ['position'],
    FallbackEntry: ['fallback'],
    DayEntry: ['day'],
    RulesEntry: ['rules'],
    LimitEntry: ['limits'],
    RodLimitEntry: ['rod limits'],
    GaffEntry: ['gaff'],
    HookLimitEntry: ['skirted', 'natural', 'plug'],
    MainEntry: ['main'],
    LogEntry: ['log'],
    Detail: ['event'],
};

/** The words that a rule may open with, as the grammar assigns them to `word`. */
function wordsOf(name: string): string[] {
    return AstUtils.streamAllContents(rules.get(name)!)
        .filter(GrammarAST.isAssignment)
        .filter(({ feature }) => feature === 'word')
        .flatMap(({ terminal }) => AstUtils.streamAst(terminal).filter(GrammarAST.isKeyword))
        .map(({ value }) => value)
        .toArray();
}

function alternativesOf(list: string): string[] {
    return AstUtils.streamAllContents(rules.get(list)!)
        .filter(GrammarAST.isRuleCall)
        .map((call) => call.rule.$refText)
        .toArray();
}

/** What is no property: `no …`, misspelt words, and entries that open with a position. */
const NO_PROPERTY = new Set(['Removal', 'Unknown', 'PositionBlock', 'EventPosition', 'EventWeight']);

test('every list of alternatives in the grammar is a block of the vocabulary, and every block has one', () => {
    const lists = [...rules.keys()].filter((name) => /Entry$/.test(name) || name === 'Detail');
    expect(Object.keys(LISTS).sort()).toEqual(lists.sort());
    const blocks = [...Object.values(LISTS).flat(), 'roles'];
    expect(blocks.sort()).toEqual(Object.keys(vocabulary).sort());
});

describe.each(Object.entries(LISTS))('%s', (list, contexts) => {
    const words = alternativesOf(list)
        .filter((name) => !NO_PROPERTY.has(name))
        .flatMap((name) => {
            const found = wordsOf(name);
            expect(found, `${name} opens with a word`).not.toEqual([]);
            return found;
        });

    test.each(contexts)('every word of it means something in a %s block', (context) => {
        for (const word of words) expect(propertyOf(context, word), word).toBeDefined();
    });

    test.each(contexts)('every word of a %s block is in it, none twice', (context) => {
        const meant = vocabulary[context].map(({ word }) => word as string);
        expect(new Set(meant).size).toBe(meant.length);
        expect(meant.filter((word) => !words.includes(word))).toEqual([]);
    });
});

const examples = (Object.keys(vocabulary) as Context[]).flatMap((context) =>
    (vocabulary[context] as readonly Property[]).map((property) => ({ context, ...property })),
);

describe('the examples', () => {
    test.each(examples)('$context: $example', ({ context, word, example }) => {
        const text = sheetAround(context, example);
        const parsed = services.parser.LangiumParser.parse<Sheet>(text);
        expect([...parsed.lexerErrors, ...parsed.parserErrors].map((error) => error.message)).toEqual([]);
        const nodes = AstUtils.streamAllContents(parsed.value).toArray();
        expect(nodes.filter(({ $type }) => $type === 'Unknown')).toEqual([]);
        // An event's example may go on with further details.
        const first = (node: (typeof nodes)[number]) =>
            context === 'event' ? example.startsWith(node.$cstNode!.text) : node.$cstNode?.text === example;
        const opens = (node: unknown) => {
            const { word: opened, role } = node as { word?: string; role?: string };
            return opened === word || role === word;
        };
        expect(nodes.some((node) => first(node) && opens(node))).toBe(true);
    });

    test.each(examples)('$context: $word says what it is in one sentence', ({ says, otherwise }) => {
        expect(says).toMatch(/^[A-Z].*\.$/);
        if (otherwise !== undefined) expect(otherwise).not.toMatch(/\.$/);
    });
});
