import {
    AstUtils,
    CstUtils,
    isLeafCstNode,
    isReference,
    type LangiumDocument,
    type LeafCstNode,
} from 'langium';
import type { SemanticTokenProvider } from 'langium/lsp';
import type { Range } from 'vscode-languageserver';
import { SemanticTokenModifiers, SemanticTokensBuilder, SemanticTokenTypes } from 'vscode-languageserver';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import type { EditorServices } from './services.ts';
import { roleOf } from './spot.ts';

const types = [
    SemanticTokenTypes.keyword,
    SemanticTokenTypes.class,
    SemanticTokenTypes.property,
    SemanticTokenTypes.enumMember,
    SemanticTokenTypes.number,
    SemanticTokenTypes.type,
    SemanticTokenTypes.string,
    SemanticTokenTypes.decorator,
] as const;

const modifiers = [SemanticTokenModifiers.declaration, SemanticTokenModifiers.defaultLibrary] as const;

type TokenType = (typeof types)[number];

interface Meaning {
    readonly type: TokenType;
    readonly modifier?: (typeof modifiers)[number];
}

/**
 * Colours words by what they mean where they stand: `jet` is a head in one place and somebody's lure in another,
 * which no pattern can tell.
 */
export function tokens({ shared }: EditorServices): SemanticTokenProvider {
    const builders = new Map<string, SemanticTokensBuilder>();
    const builderOf = (uri: string) => {
        const known = builders.get(uri);
        if (known) return known;
        const builder = new SemanticTokensBuilder();
        builders.set(uri, builder);
        return builder;
    };
    shared.workspace.TextDocuments.onDidClose(({ document }) => builders.delete(document.uri));
    return {
        tokenTypes: numbered(types),
        tokenModifiers: numbered(modifiers),
        semanticTokensOptions: {
            legend: { tokenTypes: [...types], tokenModifiers: [...modifiers] },
            full: { delta: true },
            range: true,
        },
        semanticHighlight(document) {
            const builder = builderOf(document.uri.toString());
            // A new series of its own: the next delta is told against this one.
            builder.previousResult('');
            write(document, builder);
            return builder.build();
        },
        semanticHighlightRange(document, { range }) {
            const builder = new SemanticTokensBuilder();
            write(document, builder, range);
            return builder.build();
        },
        semanticHighlightDelta(document, { previousResultId }) {
            const builder = builderOf(document.uri.toString());
            builder.previousResult(previousResultId);
            write(document, builder);
            return builder.buildEdits();
        },
    };
}

function write(document: LangiumDocument, builder: SemanticTokensBuilder, within?: Range): void {
    const root = document.parseResult.value.$cstNode;
    if (!root) return;
    for (const leaf of CstUtils.streamCst(root)) {
        if (!isLeafCstNode(leaf) || leaf.hidden) continue;
        const { start, end } = leaf.range;
        if (within && (end.line < within.start.line || start.line > within.end.line)) continue;
        const meaning = meaningOf(leaf);
        if (!meaning || start.line !== end.line) continue;
        const modifier = meaning.modifier ? 1 << modifiers.indexOf(meaning.modifier) : 0;
        builder.push(start.line, start.character, leaf.length, types.indexOf(meaning.type), modifier);
    }
}

function meaningOf(leaf: LeafCstNode): Meaning | undefined {
    switch (leaf.tokenType.name) {
        case 'NUMBER':
        case 'DATE':
        case 'TIME':
        case 'INCHES':
            return { type: SemanticTokenTypes.number };
        case 'UNIT':
            return { type: SemanticTokenTypes.type };
        case 'STRING':
            return { type: SemanticTokenTypes.string };
        default:
            return /^[\w\u00AA-\uFFEF]/.test(leaf.text) ? meaningOfWord(leaf) : undefined;
    }
}

function meaningOfWord(leaf: LeafCstNode): Meaning | undefined {
    const node = leaf.astNode;
    const property = roleOf(leaf);
    if (node.$type === 'Unknown' || node.$type === 'Junk') return undefined;
    if (node.$type === 'Position' || property === 'choice' || property === 'head' || property === 'role')
        return { type: SemanticTokenTypes.enumMember };
    switch (property) {
        case 'name':
            return { type: SemanticTokenTypes.class, modifier: SemanticTokenModifiers.declaration };
        case 'of':
        case 'base':
            return reference((node as never as Record<string, unknown>)[property]);
        case 'point':
            return { type: SemanticTokenTypes.class };
        case 'rule':
            return { type: SemanticTokenTypes.decorator };
        case 'word':
        case 'key':
        case 'property':
            return { type: SemanticTokenTypes.property };
        default:
            return { type: SemanticTokenTypes.keyword };
    }
}

/** A name that leads nowhere keeps its plain colour. */
function reference(found: unknown): Meaning | undefined {
    const target = isReference(found) ? found.ref : undefined;
    if (!target) return undefined;
    const isBuiltIn = AstUtils.getDocument(target).uri.scheme === LIBRARY_SCHEME;
    return {
        type: SemanticTokenTypes.class,
        ...(isBuiltIn && { modifier: SemanticTokenModifiers.defaultLibrary }),
    };
}

function numbered(names: readonly string[]): Record<string, number> {
    return Object.fromEntries(names.map((name, index) => [name, index]));
}
