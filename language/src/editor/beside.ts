import type { Connection } from 'vscode-languageserver';
import { bytesOf } from './base64.ts';
import type { Client } from './client.ts';
import { readFile } from './protocol.ts';

/** Reads a file of the folder that the server lies in, by its name there: `rule-pages.json`, `press/card.js`. */
export type Beside = (name: string) => Promise<Uint8Array<ArrayBuffer>>;

/** For a server without a disk: the client has said where the server lies, and reads for it. */
export function besideByClient(connection: Connection, client: Client): Beside {
    return async (name) => {
        const { beside } = client.options;
        if (beside === undefined) throw new Error(`The editor does not say where ${name} is.`);
        const uri = `${beside}/${name}`;
        const content = await connection.sendRequest<string | null>(readFile.method, { uri });
        if (content === null) throw new Error(`There is no ${uri}.`);
        return bytesOf(content);
    };
}

/** What failed once may be there the next time. */
export function once<T>(kept: Map<string, Promise<T>>, key: string, make: () => Promise<T>): Promise<T> {
    const before = kept.get(key);
    if (before) return before;
    const made = make();
    kept.set(key, made);
    made.catch(() => kept.delete(key));
    return made;
}
