import { type AstNode, AstUtils, GrammarAST } from 'langium';
import { findNextFeatures } from 'langium/lsp';
import type { EditorServices } from '../services.ts';
import type { Block } from './caret.ts';

/** Something that the grammar allows next. */
export interface Following {
    /** A word of the language; undefined for what is free: a name, a number. */
    readonly keyword?: string;
    /** The kind of free text: `NAME`, `NUMBER`, `UNIT`, `STRING`, `DATE`, `TIME`. */
    readonly terminal?: string;
    /** A name that refers to a definition. */
    readonly isReference: boolean;
    /** The grammar's rule that it stands in, and what it is there: `Pull`, `speed`. */
    readonly rule: string;
    readonly role: string | undefined;
    readonly element: AstNode;
}

/**
 * What may follow a property that has begun, by the grammar. Only the words of the open blocks and of the property
 * itself are looked at, so nothing that is wrong elsewhere in the file matters, and no file is too long.
 */
export function following(blocks: readonly Block[], entry: string, { parser }: EditorServices): Following[] {
    const text = [...blocks.map(({ header }) => header), entry].join('\n');
    const { tokens, tokenIndex, elementStack } = parser.CompletionParser.parse(text);
    if (tokenIndex === 0) return [];
    const rest = tokens.slice(tokenIndex);
    const features = findNextFeatures([elementStack.map((feature) => ({ feature }))], rest);
    const found = new Map<AstNode, Following>();
    for (const { feature } of features) found.set(feature, describe(feature));
    return [...found.values()];
}

/** What may begin a property in the innermost block. */
export function beginnings(blocks: readonly Block[], services: EditorServices): ReadonlySet<AstNode> {
    return new Set(blocks.length === 0 ? [] : following(blocks, '', services).map(({ element }) => element));
}

function describe(element: GrammarAST.AbstractElement): Following {
    const rule = AstUtils.getContainerOfType(element, GrammarAST.isParserRule)?.name ?? '';
    const role = AstUtils.getContainerOfType(element, GrammarAST.isAssignment)?.feature;
    const common = { rule, role, element, isReference: GrammarAST.isCrossReference(element) };
    if (GrammarAST.isKeyword(element)) return { ...common, keyword: element.value };
    if (GrammarAST.isRuleCall(element) && element.rule.ref)
        return { ...common, terminal: element.rule.ref.name };
    return common;
}
