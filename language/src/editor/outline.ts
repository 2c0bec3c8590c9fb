import type { AstNode, LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import { type DocumentSymbol, type Range, SymbolKind } from 'vscode-languageserver';
import type { Definition, Position } from '../../grammar/generated/ast.ts';
import { nameOf } from '../plan/names/scope.ts';
import { readPosition } from '../plan/resolve/position.ts';
import { definitionsOf } from './named.ts';
import { rangeOf } from './spot.ts';

/** What a file holds: its definitions, in a spread its positions, in a boat its points, in a log its events. */
export function outline(): DocumentSymbolProvider {
    return {
        getSymbols: (document) =>
            definitionsOf(document.parseResult.value).flatMap((each) => symbolOf(each, document) ?? []),
    };
}

export const symbolKinds: Readonly<Record<Definition['kind'], SymbolKind>> = {
    spread: SymbolKind.Class,
    boat: SymbolKind.Struct,
    rod: SymbolKind.Object,
    reel: SymbolKind.Object,
    line: SymbolKind.Object,
    leader: SymbolKind.Object,
    hooks: SymbolKind.Object,
    outfit: SymbolKind.Object,
    lure: SymbolKind.Object,
    teaser: SymbolKind.Object,
    bait: SymbolKind.Object,
    method: SymbolKind.Method,
    species: SymbolKind.Enum,
    rules: SymbolKind.Interface,
    day: SymbolKind.Event,
    log: SymbolKind.Event,
};

function symbolOf(definition: Definition, document: LangiumDocument): DocumentSymbol | undefined {
    const whole = rangeOf(definition);
    if (!whole) return undefined;
    const name = nameOf(definition) ?? ('date' in definition ? definition.date : undefined);
    const head = rangeOf(definition, nameOf(definition) ? 'name' : 'date');
    return {
        // A definition that is being typed has no name yet, and is still there.
        name: name || `(${definition.kind})`,
        detail: [definition.kind, unquoted(definition.title)].filter(Boolean).join(' · '),
        kind: symbolKinds[definition.kind],
        range: whole,
        selectionRange: inside(head, whole),
        children: childrenOf(definition, document),
    };
}

function childrenOf(definition: Definition, document: LangiumDocument): DocumentSymbol[] {
    return ((definition.entries ?? []) as readonly AstNode[]).flatMap((entry) => {
        const range = rangeOf(entry);
        const said = range && childOf(entry, document);
        if (!said) return [];
        const selectionRange = inside(rangeOf(entry, said.at), range);
        return [{ name: said.name, detail: said.detail ?? '', kind: said.kind, range, selectionRange }];
    });
}

interface Child {
    readonly name: string;
    readonly detail?: string;
    readonly kind: SymbolKind;
    /** The property that is its name in the text. */
    readonly at: string;
}

function childOf(entry: AstNode, document: LangiumDocument): Child | undefined {
    const { position, name, rule, word } = entry as AstNode & Record<string, never>;
    switch (entry.$type) {
        case 'PositionBlock':
            return named(position, towedAt(entry), SymbolKind.Field);
        case 'Holder': {
            const at = named(position, undefined, SymbolKind.Property);
            return at && { ...at, name: `holder ${at.name}` };
        }
        case 'NamedPoint':
        case 'ExtraPosition':
            return name && { name: `${word} ${name}`, kind: SymbolKind.Property, at: 'name' };
        case 'RuleSetting':
            return rule && { name: rule, detail: 'rule', kind: SymbolKind.Property, at: 'rule' };
        case 'Waive':
            return rule && { name: rule, detail: 'waived', kind: SymbolKind.Property, at: 'rule' };
        case 'Hour':
        case 'Condition':
            return { name: textOf(entry, document), kind: SymbolKind.Event, at: 'word' };
        case 'Event':
            return { name: textOf(entry, document), kind: SymbolKind.Event, at: 'time' };
        default:
            return undefined;
    }
}

function named(
    position: Position | undefined,
    detail: string | undefined,
    kind: SymbolKind,
): Child | undefined {
    const name = readPosition(position)?.name;
    return name === undefined ? undefined : { name, ...(detail && { detail }), kind, at: 'position' };
}

/** `ink-pusher, wave 2`: what hangs there, and how far back, as written. */
function towedAt(block: AstNode): string {
    const said = ((block as { entries?: readonly AstNode[] }).entries ?? []).flatMap((entry) => {
        const { word, of, $cstNode } = entry as AstNode & { word?: string; of?: { $refText: string } };
        if (word === 'lure' || word === 'teaser' || word === 'bait') return of?.$refText ?? [];
        return word === 'back' && $cstNode ? $cstNode.text.replace(/^back\s+/, '') : [];
    });
    return said.join(', ');
}

function textOf(node: AstNode, document: LangiumDocument): string {
    const text = node.$cstNode ? document.textDocument.getText(node.$cstNode.range) : '';
    const line = text.replace(/\s+/g, ' ');
    return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}

function unquoted(title: string | undefined): string | undefined {
    return title?.replace(/^"|"$/g, '');
}

/** The protocol refuses a selection that is not inside its whole. */
function inside(range: Range | undefined, whole: Range): Range {
    return range ?? { start: whole.start, end: whole.start };
}
