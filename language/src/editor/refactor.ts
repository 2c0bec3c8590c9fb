import { type LangiumDocument, URI } from 'langium';
import {
    type CodeAction,
    type CodeActionContext,
    type CodeActionKind,
    CreateFile,
    type Range,
    TextDocumentEdit,
    type TextEdit,
    type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { kindsWanted } from '../plan/names/kinds.ts';
import type { ReachScope } from '../plan/names/scope.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import { isAskedFor } from './asked-kinds.ts';
import { format } from './format.ts';
import type { EditorServices } from './services.ts';
import { definitionAround, rangeOf, spotAt } from './spot.ts';
import type { Refactoring } from './workshop/refactoring.ts';

/** What is offered where a caret stands: other ways to write the same. */
export async function refactorActions(
    document: LangiumDocument,
    range: Range,
    { only }: CodeActionContext,
    services: EditorServices,
): Promise<CodeAction[]> {
    if (only && !only.some((kind) => kind === '' || kind.split('.')[0] === 'refactor')) return [];
    const spot = document.uri.scheme === LIBRARY_SCHEME ? undefined : spotAt(document, range.start);
    const definition = spot && definitionAround(spot.node);
    if (!spot || !definition?.$cstNode) return [];
    const head = rangeOf(definition, 'name')?.start.line ?? definition.$cstNode.range.start.line;
    const { LangiumDocuments } = services.shared.workspace;
    const scope = services.references.ScopeProvider as ReachScope;
    const workshop = await services.shared.editor.Press.workshop().catch(() => undefined);
    if (!workshop) return [];
    const found = workshop.refactorings(
        {
            document: document as LangiumDocument<Sheet>,
            definition,
            node: spot.node,
            documents: LangiumDocuments.all.toArray() as LangiumDocument<Sheet>[],
            finds: (from, container, property, name) =>
                scope.scopeFrom(from, kindsWanted(container, property)).getElement(name)?.node,
            reach: (from) => services.shared.names.Reach.from(from),
            format: (text) => format(text, services),
        },
        range.start.line === head,
        services.shared.editor.Client.makesFiles,
    );
    const { disabledSupport } = services.shared.editor.Client.capabilities.textDocument?.codeAction ?? {};
    return found
        .filter(({ disabled }) => disabled === undefined || disabledSupport === true)
        .filter(({ kind }) => !only || isAskedFor(kind, only))
        .map((each) => actionOf(each, services));
}

function actionOf(
    { title, kind, changes, creates, disabled }: Refactoring,
    { shared }: EditorServices,
): CodeAction {
    const action: CodeAction = { title, kind: kind as CodeActionKind };
    if (disabled !== undefined) return { ...action, disabled: { reason: disabled } };
    const edits: Record<string, TextEdit[]> = {};
    for (const { uri, start, end, text } of changes) {
        const document = shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument;
        const zero = { line: 0, character: 0 };
        const range = document
            ? { start: document.positionAt(start), end: document.positionAt(end) }
            : { start: zero, end: zero };
        edits[uri] ??= [];
        edits[uri].push({ range, newText: text });
    }
    const edit: WorkspaceEdit =
        creates === undefined
            ? { changes: edits }
            : {
                  documentChanges: [
                      CreateFile.create(creates, { ignoreIfExists: true }),
                      ...Object.entries(edits).map(([uri, all]) =>
                          TextDocumentEdit.create({ uri, version: null }, all),
                      ),
                  ],
              };
    return { ...action, edit };
}
