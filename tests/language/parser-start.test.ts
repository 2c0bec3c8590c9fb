import { LLkLookaheadStrategy, type Rule, type TokenType } from 'chevrotain';
import { createLangiumParser, type LangiumParser } from 'langium';
import { expect, test } from 'vitest';
import { createServices, type LaybackServices } from '../../language/src/plan/services.ts';
import type { FluentParser } from '../../language/src/plan/syntax/fluent/parser.ts';
import { lazyLookahead } from '../../language/src/plan/syntax/lookahead.ts';

interface Inner {
    resyncFollows: Record<string, TokenType[]>;
    tokensMap: Record<string, TokenType>;
    getGAstProductions(): Record<string, Rule>;
    preComputeLookaheadFunctions(rules: Rule[]): void;
    setLaFuncCache(rule: number, key: number, decide: Decide): void;
}

type Decide = (this: unknown, alternatives?: unknown) => unknown;

const innerOf = (parser: LangiumParser) => (parser as unknown as { wrapper: Inner }).wrapper;
const thoroughOf = ({ parser }: LaybackServices) =>
    (parser.LangiumParser as unknown as FluentParser).thorough;

test('where to get on after a fault is what the parser library works out by itself', () => {
    const services = createServices();
    const names = (follows: Record<string, TokenType[]>) =>
        Object.fromEntries(
            Object.entries(follows).map(([place, types]) => [place, types.map(({ name }) => name).sort()]),
        );
    const ours = names(innerOf(thoroughOf(services)).resyncFollows);
    const theirs = names(innerOf(createLangiumParser(services)).resyncFollows);
    expect(Object.keys(theirs).length).toBeGreaterThan(50);
    expect(ours).toEqual(theirs);
});

test('every decision falls for every token as the parser library decides it', () => {
    const inner = innerOf(thoroughOf(createServices()));
    const decisions = (strategy: unknown) => {
        const all: Decide[] = [];
        const taking = Object.assign(Object.create(inner), {
            lookaheadStrategy: strategy,
            setLaFuncCache: (_rule: number, _key: number, decide: Decide) => all.push(decide),
        }) as Inner;
        taking.preComputeLookaheadFunctions(Object.values(inner.getGAstProductions()));
        return all;
    };
    const ours = decisions(lazyLookahead());
    const theirs = decisions(new LLkLookaheadStrategy({ maxLookahead: 1 }));
    expect(theirs.length).toBeGreaterThan(50);
    expect(ours.length).toBe(theirs.length);
    const types = Object.values(inner.tokensMap);
    const open = Array.from({ length: 300 }, () => ({}));
    const fallsFor = (decide: Decide) =>
        types.map((type) => {
            const token = { tokenTypeIdx: type.tokenTypeIdx, tokenType: type };
            return [type.name, decide.call({ LA_FAST: () => token }, open)];
        });
    expect(ours.map(fallsFor)).toEqual(theirs.map(fallsFor));
});
