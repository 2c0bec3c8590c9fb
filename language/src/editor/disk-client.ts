import { type URI, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { type Disk, isPassedOver, planEnding } from './disk.ts';
import { kindOfFile, type Request, readFile, readFolder } from './protocol.ts';
import { decode, unread } from './reading.ts';

/** Files as the client reads them: a web worker has no disk, and neither has a file system of an extension's. */
export function diskOfClient(connection: Connection): Disk {
    const ask = <P, R>({ method }: Request<P, R>, params: P): Promise<R> =>
        connection.sendRequest<R>(method, params);
    return {
        async read(uri) {
            try {
                const content = await ask(readFile, { uri: uri.toString() });
                return content === null ? { kind: 'missing' } : decode(bytesOf(content));
            } catch {
                return unread('cannot be read');
            }
        },

        async plansIn(folder) {
            const found: URI[] = [];
            const waiting = [folder];
            for (const at of waiting) {
                const entries = await ask(readFolder, { uri: at.toString() }).catch(() => null);
                for (const { name, kind } of entries ?? []) {
                    const below = UriUtils.joinPath(at, name);
                    if (kind === 'file' && name.endsWith(planEnding)) found.push(below);
                    if (kind === 'folder' && !isPassedOver(name)) waiting.push(below);
                }
            }
            return found;
        },

        kindOf: (uri) => ask(kindOfFile, { uri: uri.toString() }).catch((): 'nothing' => 'nothing'),
    };
}

function bytesOf(base64: string): Uint8Array {
    return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}
