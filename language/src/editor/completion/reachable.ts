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

function namesIn(document: LangiumDocument, { shared }: EditorServices, type: string): string[] {
    const boats = shared.names.Reach.from(document).flatMap(({ parseResult }) =>
        definitionsOf(parseResult.value).filter((each): each is Definition => each.kind === 'boat'),
    );
    const names = boats.flatMap(({ entries }) =>
        (entries as readonly AstNode[]).flatMap((entry) => {
            const { name } = entry as { name?: string };
            return entry.$type === type && name ? [name] : [];
        }),
    );
    return [...new Set(names)];
}
