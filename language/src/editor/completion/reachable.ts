import type { AstNode, LangiumDocument } from 'langium';
import type { Definition } from '../../../grammar/generated/ast.ts';
import { definitionsOf } from '../named.ts';
import type { EditorServices } from '../services.ts';

/** The positions that boats in reach have on top of the trade's. */
export function extraPositions(document: LangiumDocument, services: EditorServices): string[] {
    return namesIn(document, services, 'ExtraPosition');
}

/** The points that lines may be towed from: of boats in reach. */
export function namedPoints(document: LangiumDocument, services: EditorServices): string[] {
    return [...namesIn(document, services, 'NamedPoint'), ...extraPositions(document, services)];
}

/** The numbers of a pole's halyards, as many as any boat in reach has; two where none says. */
export function halyards(document: LangiumDocument, services: EditorServices): number[] {
    const inner = (of: AstNode) => ((of as { entries?: readonly AstNode[] }).entries ?? []) as Entry[];
    const counts = boatsIn(document, services)
        .flatMap(inner)
        .filter(({ word }) => word === 'outriggers')
        .flatMap(inner)
        .map(({ word, amounts = [] }) => (word?.startsWith('halyard') ? amounts.length : 0));
    return Array.from({ length: Math.max(2, ...counts) }, (_, at) => at + 1);
}

type Entry = AstNode & { readonly word?: string; readonly amounts?: readonly unknown[] };

function namesIn(document: LangiumDocument, services: EditorServices, type: string): string[] {
    const names = boatsIn(document, services).flatMap(({ entries }) =>
        (entries as readonly AstNode[]).flatMap((entry) => {
            const { name } = entry as { name?: string };
            return entry.$type === type && name ? [name] : [];
        }),
    );
    return [...new Set(names)];
}

function boatsIn(document: LangiumDocument, { shared }: EditorServices): Definition[] {
    return shared.names.Reach.from(document).flatMap(({ parseResult }) =>
        definitionsOf(parseResult.value).filter((each): each is Definition => each.kind === 'boat'),
    );
}
