import { FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient, HandlerResult } from 'vscode-languageclient';
import {
    type FileKind,
    type FolderEntry,
    kindOfFile,
    type Request,
    readFile,
    readFolder,
} from '../../language/src/editor/protocol.ts';

/** Reads for a server that cannot: in a browser, and in folders that are on no disk. */
export function answerForFiles(client: BaseLanguageClient): void {
    answer(client, readFile, async ({ uri }) => {
        const content = await workspace.fs.readFile(Uri.parse(uri, true)).then(undefined, () => undefined);
        return content ? base64(content) : null;
    });
    answer(client, readFolder, async ({ uri }) => {
        const entries = await workspace.fs
            .readDirectory(Uri.parse(uri, true))
            .then(undefined, () => undefined);
        if (!entries) return null;
        return entries.flatMap(([name, type]): FolderEntry[] => {
            const kind = kindOf(type);
            return kind === 'nothing' ? [] : [{ name, kind }];
        });
    });
    answer(client, kindOfFile, async ({ uri }) => {
        const stat = await workspace.fs.stat(Uri.parse(uri, true)).then(undefined, () => undefined);
        return stat ? kindOf(stat.type) : 'nothing';
    });
}

function answer<P, R>(
    client: BaseLanguageClient,
    { method }: Request<P, R>,
    give: (params: P) => Promise<R>,
): void {
    client.onRequest(method, (params: P) => give(params) as HandlerResult<R, void>);
}

function kindOf(type: FileType): FileKind {
    if (type & FileType.Directory) return 'folder';
    return type & FileType.File ? 'file' : 'nothing';
}

/** `btoa` takes characters, and only so many arguments go into one call. */
function base64(bytes: Uint8Array): string {
    let characters = '';
    for (let at = 0; at < bytes.length; at += 0x8000) {
        characters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    }
    return btoa(characters);
}
