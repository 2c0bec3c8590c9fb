import type { URI } from 'langium';
import type { FileKind } from './protocol.ts';
import type { Reading } from './reading.ts';

/** The only way to files that nobody has open. One for Node, one that asks the client. */
export interface Disk {
    /** @param roots  folders that a link may not lead out of */
    read(uri: URI, roots: readonly URI[]): Promise<Reading>;
    /** The plans in a folder and below it; folders that begin with a dot, and `node_modules`, are passed over. */
    plansIn(folder: URI): Promise<URI[]>;
    kindOf(uri: URI): Promise<FileKind>;
}

/** A file system that is not there: a client that offers none, a scheme that nobody reads. */
export const noDisk: Disk = {
    read: async () => ({ kind: 'missing' }),
    plansIn: async () => [],
    kindOf: async () => 'nothing',
};

/** Several file systems as one. */
export function diskBy(choose: (uri: URI) => Disk): Disk {
    return {
        read: (uri, roots) => choose(uri).read(uri, roots),
        plansIn: (folder) => choose(folder).plansIn(folder),
        kindOf: (uri) => choose(uri).kindOf(uri),
    };
}

export const planEnding = '.spread';

export function isPassedOver(folderName: string): boolean {
    return folderName.startsWith('.') || folderName === 'node_modules';
}

/** Whether a file is a plan that lies where plans are looked for, seen from the folder that was opened. */
export function isPlanIn(uri: URI, folder: URI): boolean {
    const below = uri.path.slice(folder.path.length).split('/').filter(Boolean);
    return uri.path.endsWith(planEnding) && !below.slice(0, -1).some(isPassedOver);
}
