import { type URI, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { notInPackage, type Package, packageOf, versionIn } from '../plan/names/packages.ts';
import { planEnding } from '../plan/names/uses.ts';
import { bytesOf } from './base64.ts';
import { type Disk, isPassedOver } from './disk.ts';
import { kindOfFile, type Request, readFile, readFolder } from './protocol.ts';
import { decode, type Reading, stranger, unread } from './reading.ts';

/** Files as the client reads them: a web worker has no disk, and neither has a file system of an extension's. */
export function diskOfClient(connection: Connection): Disk {
    const ask = <P, R>({ method }: Request<P, R>, params: P): Promise<R> =>
        connection.sendRequest<R>(method, params);
    const entriesOf = (uri: URI) => ask(readFolder, { uri: uri.toString() }).catch(() => null);
    const missingIn = async (own: Package): Promise<Reading> => {
        const entries = (await entriesOf(own.folder)) ?? [];
        const plans = entries.map(({ name }) => name).filter(isPlan);
        // A folder that is not there is an empty one to some; a package has at least its own description.
        return entries.length > 0 ? stranger(notInPackage(own, plans.sort())) : { kind: 'missing' };
    };
    const versionOf = async ({ folder }: Package): Promise<{ readonly version?: string }> => {
        const content = await ask(readFile, { uri: UriUtils.joinPath(folder, 'package.json').toString() });
        const version = content === null ? undefined : versionIn(new TextDecoder().decode(bytesOf(content)));
        return version === undefined ? {} : { version };
    };
    return {
        async read(uri) {
            try {
                const content = await ask(readFile, { uri: uri.toString() });
                const own = packageOf(uri);
                if (content === null) return own ? await missingIn(own) : { kind: 'missing' };
                const reading = decode(bytesOf(content));
                return own && reading.kind === 'text' ? { ...reading, ...(await versionOf(own)) } : reading;
            } catch {
                return unread('cannot be read');
            }
        },

        async plansIn(folder) {
            const found: URI[] = [];
            const waiting = [folder];
            for (const at of waiting) {
                const entries = await entriesOf(at);
                for (const { name, kind } of entries ?? []) {
                    const below = UriUtils.joinPath(at, name);
                    if (kind === 'file' && isPlan(name)) found.push(below);
                    if (kind === 'folder' && !isPassedOver(name)) waiting.push(below);
                }
            }
            return found;
        },

        kindOf: (uri) => ask(kindOfFile, { uri: uri.toString() }).catch((): 'nothing' => 'nothing'),
    };
}

function isPlan(name: string): boolean {
    return name.endsWith(planEnding);
}
