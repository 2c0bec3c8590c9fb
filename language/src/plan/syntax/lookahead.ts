import {
    Alternation,
    type ILookaheadStrategy,
    type IProduction,
    type IToken,
    LLkLookaheadStrategy,
    Option,
    Repetition,
    RepetitionMandatory,
    type Rule,
    type TokenType,
} from 'chevrotain';
import { firstOf, partsOf } from './first-tokens.ts';

/** As the parser calls it: on itself, with what its kind of decision takes. */
type Decide = (this: Ahead, ...given: never[]) => unknown;

/** What the parser sees next. */
interface Ahead {
    LA_FAST(howFar: number): IToken;
}

type Production = Alternation | Option | Repetition | RepetitionMandatory;

const kinds = { Alternation, Option, Repetition, RepetitionMandatory };

/**
 * Works out how to decide between alternatives when the parser first comes to them: a plan comes to few of the
 * grammar's decisions, and a command that starts for one plan need not prepare for all. One token decides; what may
 * begin a rule is found out once, where the library's own strategy, which decides alike, walks into it every time.
 * Decisions that also hang on conditions, or between something and nothing, are left to that one.
 */
export function lazyLookahead(): ILookaheadStrategy {
    const thorough: ILookaheadStrategy = new LLkLookaheadStrategy({ maxLookahead: 1 });
    const strategy = Object.create(thorough) as ILookaheadStrategy;
    strategy.buildLookaheadForAlternation = (options) =>
        whenAsked(() => {
            const { rule, prodOccurrence, hasPredicates } = options;
            const choices = hasPredicates ? undefined : choicesAt(rule, 'Alternation', prodOccurrence);
            const chosen = choices && numbered(choices);
            if (!chosen) return thorough.buildLookaheadForAlternation(options) as unknown as Decide;
            return function () {
                return chosen[this.LA_FAST(1).tokenTypeIdx];
            };
        }) as never;
    strategy.buildLookaheadForOptional = (options) =>
        whenAsked(() => {
            const { rule, prodType, prodOccurrence } = options;
            const inner =
                prodType in kinds
                    ? choicesAt(rule, prodType as keyof typeof kinds, prodOccurrence)
                    : undefined;
            const entered = inner && numbered([inner.flat()]);
            if (!entered) return thorough.buildLookaheadForOptional(options) as unknown as Decide;
            return function () {
                return entered[this.LA_FAST(1).tokenTypeIdx] === 0;
            };
        }) as never;
    return strategy;
}

function whenAsked(build: () => Decide): Decide {
    let decide: Decide | undefined;
    return function (...given) {
        decide ??= build();
        return decide.apply(this, given);
    };
}

/** What the alternatives at a place of a rule consist of; what is optional there is the only one. */
function choicesAt(rule: Rule, kind: keyof typeof kinds, occurrence: number): IProduction[][] | undefined {
    const found = find(
        rule.definition,
        (each): each is Production => each instanceof kinds[kind] && each.idx === occurrence,
    );
    if (!found) return undefined;
    return kind === 'Alternation' ? found.definition.map((each) => [each]) : [found.definition];
}

function find(
    productions: readonly IProduction[],
    isIt: (production: IProduction) => production is Production,
): Production | undefined {
    for (const production of productions) {
        const found = isIt(production) ? production : find(partsOf(production), isIt);
        if (found) return found;
    }
    return undefined;
}

/** By the number of a token's type the first choice that it may begin; undefined where a choice may be nothing. */
function numbered(choices: readonly (readonly IProduction[])[]): number[] | undefined {
    const chosen: number[] = [];
    for (const [number, choice] of choices.entries()) {
        const { tokens, empty } = firstOf(choice);
        if (empty) return undefined;
        for (const type of tokens) {
            for (const each of withMembers(type)) chosen[each] ??= number;
        }
    }
    return chosen;
}

export function withMembers({ tokenTypeIdx, categoryMatches = [] }: TokenType): number[] {
    return [tokenTypeIdx!, ...categoryMatches];
}
