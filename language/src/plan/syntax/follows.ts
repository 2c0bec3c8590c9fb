import {
    Alternation,
    type IProduction,
    NonTerminal,
    Option,
    Repetition,
    RepetitionMandatory,
    type Rule,
    type TokenType,
} from 'chevrotain';
import { firstOf, partsOf } from './first-tokens.ts';

/** How the parser library names a place where one rule leads to another. */
const BETWEEN = '_~IN~_';

/** By the place where a rule leads to another, what may come behind it in the same rule: the parser gets on there. */
export function followsOf(rules: readonly Rule[]): Record<string, TokenType[]> {
    const follows: Record<string, TokenType[]> = {};
    for (const rule of rules) {
        walk(rule.definition, [], (place, rest) => {
            follows[`${place.referencedRule.name}${place.idx}${BETWEEN}${rule.name}`] = [
                ...firstOf(rest).tokens,
            ];
        });
    }
    return follows;
}

function walk(
    sequence: readonly IProduction[],
    behind: readonly IProduction[],
    tell: (place: NonTerminal, rest: readonly IProduction[]) => void,
): void {
    for (const [at, production] of sequence.entries()) {
        const rest = [...sequence.slice(at + 1), ...behind];
        if (production instanceof NonTerminal) tell(production, rest);
        else if (production instanceof Alternation)
            for (const alternative of production.definition) walk([alternative], rest, tell);
        else if (production instanceof Repetition || production instanceof RepetitionMandatory)
            walk(production.definition, [new Option({ definition: production.definition }), ...rest], tell);
        else walk(partsOf(production), rest, tell);
    }
}
