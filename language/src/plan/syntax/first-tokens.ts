import {
    Alternation,
    type IProduction,
    NonTerminal,
    Option,
    Repetition,
    RepetitionWithSeparator,
    type Rule,
    Terminal,
    type TokenType,
} from 'chevrotain';

/** What a piece of grammar may begin with, and whether it may also be nothing at all. */
export interface First {
    readonly tokens: ReadonlySet<TokenType>;
    readonly empty: boolean;
}

const known = new WeakMap<Rule, First>();

/** @param sequence  of a grammar that is not left-recursive, as the parser recorded it */
export function firstOf(sequence: readonly IProduction[]): First {
    const tokens = new Set<TokenType>();
    for (const production of sequence) {
        const first = firstOfOne(production);
        for (const token of first.tokens) tokens.add(token);
        if (!first.empty) return { tokens, empty: false };
    }
    return { tokens, empty: true };
}

function firstOfOne(production: IProduction): First {
    if (production instanceof Terminal) return { tokens: new Set([production.terminalType]), empty: false };
    if (production instanceof NonTerminal) return firstOfRule(production.referencedRule);
    const parts = partsOf(production);
    if (production instanceof Alternation) {
        const each = parts.map((part) => firstOf([part]));
        return {
            tokens: new Set(each.flatMap(({ tokens }) => [...tokens])),
            empty: each.some(({ empty }) => empty),
        };
    }
    const { tokens, empty } = firstOf(parts);
    return { tokens, empty: empty || mayBeLeftOut(production) };
}

/** Once a rule: many decisions lead through the same few. */
function firstOfRule(rule: Rule): First {
    let first = known.get(rule);
    if (!first) {
        first = firstOf(rule.definition);
        known.set(rule, first);
    }
    return first;
}

function mayBeLeftOut(production: IProduction): boolean {
    return (
        production instanceof Option ||
        production instanceof Repetition ||
        production instanceof RepetitionWithSeparator
    );
}

/** What a production is made of; nothing where it is a token or leads to another rule. */
export function partsOf(production: IProduction): readonly IProduction[] {
    if (production instanceof NonTerminal || !('definition' in production)) return [];
    return production.definition as readonly IProduction[];
}
