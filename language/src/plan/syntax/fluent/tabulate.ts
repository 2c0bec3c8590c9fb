import { Lexer, type TokenType } from 'chevrotain';
import { AstUtils, GrammarAST, GrammarUtils, type LangiumCoreServices } from 'langium';
import type { Into, Pattern, RuleRow, Step, Table, Take } from './table.ts';

/** Lays out a grammar of which one token decides every choice. Throws where a grammar asks for more than that. */
export function tabulate({ Grammar: grammar, parser }: LangiumCoreServices): Table {
    const types = Object.values(parser.Lexer.definition as Record<string, TokenType>);
    const looks = types.filter(({ PATTERN }) => PATTERN !== Lexer.NA);
    const reachable = [...GrammarUtils.getAllReachableRules(grammar, false)].filter(GrammarAST.isParserRule);
    reachable.sort((a, b) => Number(b.entry) - Number(a.entry));
    const steps = new Steps(grammar, types, reachable);
    const rules = reachable.map((rule) => rowOf(rule, steps));
    for (const rule of rules) {
        checkLeading(rule, rules);
        decide(rule.step, rules);
    }
    return {
        tokens: types.map(({ name }) => name),
        members: membersOf(types),
        patterns: looks.map((type) => patternOf(type, types.indexOf(type))),
        openers: openersOf(parser.Lexer, looks),
        rules,
    };
}

function membersOf(types: readonly TokenType[]): Record<number, number[]> {
    const numbers = new Map(types.map(({ tokenTypeIdx }, number) => [tokenTypeIdx!, number]));
    const members: Record<number, number[]> = {};
    for (const [number, { categoryMatches = [] }] of types.entries()) {
        if (categoryMatches.length > 0)
            members[number] = [number, ...categoryMatches.map((each) => numbers.get(each)!)];
    }
    return members;
}

function patternOf({ PATTERN, GROUP }: TokenType, token: number): Pattern {
    const source = PATTERN instanceof RegExp ? PATTERN.source : String(PATTERN).replace(/[{}]/g, '\\$&');
    if (GROUP === undefined) return { token, source };
    return { token, source, apart: GROUP === Lexer.SKIPPED ? 'skipped' : 'hidden' };
}

/** What of the toolkit's lexer knows which tokens may begin with a character. */
interface ByCharacter {
    readonly chevrotainLexer: {
        readonly charCodeToPatternIdxToConfig: {
            readonly defaultMode: readonly (readonly { readonly tokenTypeIdx: number }[] | undefined)[];
        };
    };
}

function openersOf(lexer: unknown, looks: readonly TokenType[]): Table['openers'] {
    const known = (lexer as ByCharacter).chevrotainLexer.charCodeToPatternIdxToConfig.defaultMode;
    const openers = new Map<string, string>();
    for (let code = 0; code < 128; code++) {
        const patterns = (known[code] ?? []).map(({ tokenTypeIdx }) =>
            looks.findIndex((type) => type.tokenTypeIdx === tokenTypeIdx),
        );
        const key = JSON.stringify(patterns);
        if (patterns.length > 0) openers.set(key, (openers.get(key) ?? '') + String.fromCharCode(code));
    }
    return [...openers].map(([patterns, characters]) => [characters, JSON.parse(patterns)]);
}

/** Elements of the grammar as steps through a text. */
class Steps {
    private readonly types: readonly TokenType[];
    private readonly rules: readonly GrammarAST.ParserRule[];
    private readonly places: ReadonlyMap<GrammarAST.AbstractElement, number>;

    constructor(
        grammar: GrammarAST.Grammar,
        types: readonly TokenType[],
        rules: readonly GrammarAST.ParserRule[],
    ) {
        this.types = types;
        this.rules = rules;
        this.places = new Map(
            AstUtils.streamAst(grammar)
                .toArray()
                .map((node, at) => [node as GrammarAST.AbstractElement, at]),
        );
    }

    of(element: GrammarAST.AbstractElement, into?: Into): Step {
        const step = this.once(element, into);
        switch (element.cardinality) {
            case '?':
                return { do: 'maybe', step, on: [] };
            case '*':
                return { do: 'many', step, on: [] };
            case '+':
                return { do: 'group', steps: [step, { do: 'many', step, on: [] }] };
            default:
                return step;
        }
    }

    private once(element: GrammarAST.AbstractElement, into?: Into): Step {
        const at = this.places.get(element)!;
        if (GrammarAST.isKeyword(element)) return { do: 'take', token: this.token(element.value), at, into };
        if (GrammarAST.isAssignment(element)) return this.of(element.terminal, intoOf(element));
        if (GrammarAST.isCrossReference(element))
            return { ...(this.once(element.terminal!, into) as Take), at };
        if (GrammarAST.isRuleCall(element)) return this.called(element, at, into);
        if (GrammarAST.isAlternatives(element))
            return { do: 'choice', steps: element.elements.map((each) => this.of(each, into)), on: [] };
        if (GrammarAST.isGroup(element) && !element.guardCondition)
            return { do: 'group', steps: element.elements.map((each) => this.of(each, into)) };
        throw new Error(`Nothing here follows a ${element.$type}`);
    }

    private called({ rule, arguments: given }: GrammarAST.RuleCall, at: number, into?: Into): Step {
        const called = rule.ref!;
        if (given.length > 0) throw new Error(`${called.name} is called with arguments`);
        if (GrammarAST.isParserRule(called))
            return { do: 'call', rule: this.rules.indexOf(called), at, into };
        const value = called.name === 'NUMBER' || called.name === 'STRING' ? called.name : undefined;
        return { do: 'take', token: this.token(called.name), at, into, value };
    }

    private token(name: string): number {
        return this.types.findIndex((type) => type.name === name);
    }
}

function intoOf({ feature, operator, terminal }: GrammarAST.Assignment): Into {
    return { feature, operator, reference: GrammarAST.isCrossReference(terminal) || undefined };
}

function rowOf(rule: GrammarAST.ParserRule, steps: Steps): RuleRow {
    const step = steps.of(rule.definition);
    if (rule.fragment) return { kind: 'fragment', step };
    if (GrammarUtils.isDataTypeRule(rule)) return { kind: 'text', step };
    return { kind: 'node', type: GrammarUtils.getTypeName(rule), step };
}

/** Fills in by which tokens choices are made. */
function decide(step: Step, rules: readonly RuleRow[]): void {
    switch (step.do) {
        case 'group':
            for (const each of step.steps) decide(each, rules);
            return;
        case 'choice':
            for (const each of step.steps) {
                decide(each, rules);
                step.on.push(certainly(each, rules));
            }
            return;
        case 'maybe':
        case 'many':
            decide(step.step, rules);
            step.on.push(certainly(step.step, rules));
    }
}

function certainly(step: Step, rules: readonly RuleRow[]): number[] {
    const { tokens, empty } = beginning(step, rules);
    if (empty) throw new Error('What is chosen or repeated may be nothing');
    return [...tokens];
}

/** The types of tokens that a step may begin with, and whether it may also be nothing. */
function beginning(step: Step, rules: readonly RuleRow[]): { tokens: Set<number>; empty: boolean } {
    switch (step.do) {
        case 'take':
            return { tokens: new Set([step.token]), empty: false };
        case 'call':
            return beginning(rules[step.rule]!.step, rules);
        case 'maybe':
        case 'many':
            return { tokens: beginning(step.step, rules).tokens, empty: true };
        case 'choice': {
            const each = step.steps.map((one) => beginning(one, rules));
            const tokens = new Set(each.flatMap((one) => [...one.tokens]));
            return { tokens, empty: each.some(({ empty }) => empty) };
        }
        case 'group': {
            const tokens = new Set<number>();
            for (const each of step.steps) {
                const first = beginning(each, rules);
                for (const token of first.tokens) tokens.add(token);
                if (!first.empty) return { tokens, empty: false };
            }
            return { tokens, empty: true };
        }
    }
}

/** Where a rule leads to another it gives way to what that one makes, so it must have made nothing itself. */
function checkLeading({ kind, step }: RuleRow, rules: readonly RuleRow[]): void {
    if (kind !== 'node') return;
    const leads = (each: Step): boolean =>
        each.do === 'call' && !each.into && rules[each.rule]!.kind === 'node';
    const inside = (each: Step): boolean =>
        leads(each) || ('steps' in each ? each.steps.some(inside) : 'step' in each && inside(each.step));
    const ways = step.do === 'choice' ? step.steps : [step];
    if (ways.some((way) => !leads(way) && inside(way)))
        throw new Error('A rule both leads to another and makes a node');
}
