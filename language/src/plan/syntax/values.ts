import { type CstNode, DefaultValueConverter, type GrammarAST, type ValueType } from 'langium';

/**
 * Terminals as values: texts as they stand (nothing in them is an escape), numbers that cannot be mistaken.
 * `3,4` is no number: it becomes NaN, and a check says so.
 */
export class PlainValues extends DefaultValueConverter {
    protected override runConverter(rule: GrammarAST.AbstractRule, input: string, cst: CstNode): ValueType {
        if (rule.name === 'STRING' || rule.name === 'NUMBER') return meantBy(rule.name, input);
        if (rule.name === 'NAME' || rule.name === 'ID' || rule.name === 'INNER') return input;
        return super.runConverter(rule, input, cst);
    }
}

/** What the two terminals that do not stand for themselves mean. */
export function meantBy(terminal: 'STRING' | 'NUMBER', input: string): string | number {
    if (terminal === 'STRING') return input.replace(/^["“”„]/, '').replace(/["“”]$/, '');
    return input.includes(',') ? Number.NaN : Number(input);
}
