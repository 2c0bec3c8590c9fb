import { DocumentState, type LangiumDocument, URI } from 'langium';
import type { FileOperationHandler } from 'langium/lsp';
import {
    type FileOperationRegistrationOptions,
    type RenameFilesParams,
    TextEdit,
} from 'vscode-languageserver';
import type { Sheet, Use } from '../../grammar/generated/ast.ts';
import { isInside, pathBetween, pathOf, planEnding, targetOf, usesOf } from '../plan/names/uses.ts';
import type { EditorSharedServices } from './services.ts';
import { rangeOf } from './spot.ts';

const plansAndFolders: FileOperationRegistrationOptions = {
    filters: [
        { pattern: { glob: '**/*.spread', matches: 'file' } },
        { pattern: { glob: '**', matches: 'folder' } },
    ],
};

/** Keeps `use` lines leading where they led when files or folders get another name or place. */
export function fileRename(services: EditorSharedServices): FileOperationHandler {
    const { DocumentUpdateHandler } = services.lsp;
    const options: FileOperationHandler['fileOperationOptions'] = {
        willRename: plansAndFolders,
        didRename: plansAndFolders,
        didCreate: plansAndFolders,
        didDelete: plansAndFolders,
    };
    const tell = (changes: readonly (readonly [uri: string, type: 1 | 3])[]) =>
        DocumentUpdateHandler.didChangeWatchedFiles?.({
            changes: changes.map(([uri, type]) => ({ uri, type })),
        });
    return {
        fileOperationOptions: options,
        async willRenameFiles({ files }) {
            await services.workspace.WorkspaceManager.ready;
            await services.workspace.DocumentBuilder.waitUntil(DocumentState.Parsed);
            const changes: Record<string, TextEdit[]> = {};
            for (const document of services.workspace.LangiumDocuments.all) {
                const edits = editsIn(document, files, services);
                if (edits.length > 0) changes[document.uri.toString()] = edits;
            }
            return { changes };
        },
        // Not every client watches files, and those that do tell the same again.
        didRenameFiles: ({ files }) =>
            tell(files.flatMap(({ oldUri, newUri }) => [[oldUri, 3] as const, [newUri, 1] as const])),
        didCreateFiles: ({ files }) => tell(files.map(({ uri }) => [uri, 1] as const)),
        didDeleteFiles: ({ files }) => tell(files.map(({ uri }) => [uri, 3] as const)),
    };
}

function editsIn(
    document: LangiumDocument,
    moves: RenameFilesParams['files'],
    { names }: EditorSharedServices,
): TextEdit[] {
    const { roots } = names.Reach;
    const from = moved(document.uri, moves);
    return usesOf(document.parseResult.value as Sheet).flatMap((use) => {
        const before = targetOf(document.uri, pathOf(use), roots);
        const range = rangeOf(use, 'path');
        if (before.kind !== 'file' || !range) return [];
        const to = moved(before.uri, moves);
        const after = targetOf(from, pathOf(use), []);
        if ('uri' in after && after.uri.toString() === to.toString()) return [];
        const path = pathWritten(from, to, use);
        // Where no line could use it, this one stays: the finding then tells which file it was.
        if (!to.path.endsWith(planEnding) || targetOf(from, path, roots).kind !== 'file') return [];
        return [TextEdit.replace(range, `"${path}"`)];
    });
}

function moved(uri: URI, moves: RenameFilesParams['files']): URI {
    for (const { oldUri, newUri } of moves) {
        const [old, next] = [URI.parse(oldUri), URI.parse(newUri)];
        if (uri.toString() === old.toString()) return next;
        if (isInside(uri, old)) return uri.with({ path: next.path + uri.path.slice(old.path.length) });
    }
    return uri;
}

/** The path as this author writes paths: with or without `./` before what lies beside. */
function pathWritten(from: URI, to: URI, use: Use): string {
    const path = pathBetween(from, to);
    return pathOf(use).startsWith('./') && !path.startsWith('../') ? `./${path}` : path;
}
