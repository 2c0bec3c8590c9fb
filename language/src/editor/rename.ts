import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { RenameProvider } from 'langium/lsp';
import { LSPErrorCodes, ResponseError, TextEdit, type WorkspaceEdit } from 'vscode-languageserver';
import type { Definition } from '../../grammar/generated/ast.ts';
import { one, spoken } from '../plan/names/kinds.ts';
import type { ReachScope } from '../plan/names/scope.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import type { PlaceAwareLexer } from '../plan/syntax/lexer.ts';
import { definitionNamed, targetOf } from './named.ts';
import type { EditorServices } from './services.ts';
import { spotAt } from './spot.ts';

/** Gives a definition another name, and whoever names it, in every file. */
export function rename(services: EditorServices): RenameProvider {
    return {
        prepareRename(document, { position }) {
            const spot = spotAt(document, position);
            const definition = spot && definitionNamed(spot, services);
            if (!spot || !definition || !targetOf(definition)) return undefined;
            mustBeOurs(definition);
            return spot.leaf.range;
        },

        rename(document, { position, newName }) {
            const spot = spotAt(document, position);
            const definition = spot && definitionNamed(spot, services);
            if (!definition) return undefined;
            mustBeOurs(definition);
            mustBeName(newName, services);
            mustBeFree(newName, definition, services);
            return editsFor(definition, newName, services);
        },
    };
}

function editsFor(definition: Definition, newName: string, services: EditorServices): WorkspaceEdit {
    const changes: Record<string, TextEdit[]> = {};
    const found = services.references.References.findReferences(definition, { includeDeclaration: true });
    for (const { sourceUri, sourcePath, segment } of found) {
        const uri = sourceUri.toString();
        const document = services.shared.workspace.LangiumDocuments.getDocument(sourceUri);
        const node =
            document && services.workspace.AstNodeLocator.getAstNode(document.parseResult.value, sourcePath);
        changes[uri] ??= [];
        changes[uri].push(TextEdit.replace(segment.range, asWritten(newName, node, services)));
    }
    return { changes };
}

/** A fish may be named in a log without `species` before it, unless it is called as a word of the language. */
function asWritten(newName: string, node: AstNode | undefined, { parser }: EditorServices): string {
    const isBare = node?.$type === 'Referred' && (node as { word?: string }).word === undefined;
    const isWord = (parser.Lexer as PlaceAwareLexer).isKeyword(newName);
    return isBare && isWord ? `species ${newName}` : newName;
}

function mustBeOurs(definition: Definition): void {
    if (AstUtils.getDocument(definition).uri.scheme !== LIBRARY_SCHEME) return;
    throw refused(
        `This ${spoken(definition.kind)} belongs to the built-in library. Write one \`like\` it under a name of your own.`,
    );
}

function mustBeName(name: string, { parser }: EditorServices): void {
    const { ID } = parser.Lexer.definition as unknown as Record<string, { PATTERN: RegExp }>;
    const isName = new RegExp(`^(?:${ID!.PATTERN.source})$`).test(name);
    if (isName) return;
    throw refused(
        `“${name}” cannot be a name. A name begins with a letter and holds letters, digits and hyphens, and no blanks.`,
    );
}

/** Free in every file that sees the definition: there the new name would mean two things, or another one. */
function mustBeFree(name: string, definition: Definition, services: EditorServices): void {
    const home = AstUtils.getDocument(definition);
    const scope = services.references.ScopeProvider as ReachScope;
    const { names, workspace } = services.shared;
    const isSeenFrom = (document: LangiumDocument) => names.Reach.from(document).includes(home as never);
    for (const document of workspace.LangiumDocuments.all.filter(isSeenFrom)) {
        const taken = scope.scopeFrom(document, [definition.kind]).getElement(name);
        if (!taken || taken.node === definition) continue;
        const where = taken.documentUri.path.slice(taken.documentUri.path.lastIndexOf('/') + 1);
        throw refused(`There is already ${one(definition.kind)} called ${name} in ${where}.`);
    }
}

function refused(why: string): ResponseError<void> {
    return new ResponseError(LSPErrorCodes.RequestFailed, why);
}
