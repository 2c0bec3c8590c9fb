import {
    type AstNode,
    type Cancellation,
    DefaultLinker,
    interruptAndCheck,
    isReference,
    type LangiumDocument,
    type ReferenceInfo,
} from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import { contentsOf } from '../syntax/contents.ts';

/** Links a file definition by definition; the linker that this replaces waits its turn at every node of the tree. */
export class SheetLinker extends DefaultLinker {
    override async link(document: LangiumDocument, token?: Cancellation.CancellationToken): Promise<void> {
        for (const definition of (document.parseResult.value as Sheet).definitions ?? []) {
            if (token) await interruptAndCheck(token);
            for (const info of referencesIn(definition)) this.doLink(info, document);
        }
    }
}

/** The references in a definition, in the order of the text. */
export function referencesIn(definition: AstNode): ReferenceInfo[] {
    const found: ReferenceInfo[] = [];
    for (const container of [definition, ...contentsOf(definition)]) {
        for (const property of Object.keys(container)) {
            const reference = property.startsWith('$') ? undefined : container[property as keyof AstNode];
            if (isReference(reference)) found.push({ reference, container, property });
        }
    }
    return found;
}
