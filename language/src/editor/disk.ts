import type { URI } from 'langium';
import type { FileKind } from './protocol.ts';
import type { Reading } from './reading.ts';

/** The only way to files that nobody has open. One for Node, one that asks the client. */
export interface Disk {
    /** @param roots  folders that a link may not lead out of */
    read(uri: URI, roots: readonly URI[], links?: LinksOfPackages): Promise<Reading>;
    /** The plans in a folder and below it; folders that begin with a dot, and `node_modules`, are passed over. */
    plansIn(folder: URI): Promise<URI[]>;
    kindOf(uri: URI): Promise<FileKind>;
}

/** Whether packages are read that are linked from outside the folder. */
export type LinksOfPackages = 'refused' | 'allowed';

export function isPassedOver(folderName: string): boolean {
    return folderName.startsWith('.') || folderName === 'node_modules';
}

/** Whether an address lies where plans are looked for, seen from a folder that was opened. */
export function isLookedAt(uri: URI, folder: URI): boolean {
    return !uri.path.slice(folder.path.length).split('/').filter(Boolean).some(isPassedOver);
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
        read: (uri, roots, links) => choose(uri).read(uri, roots, links),
        plansIn: (folder) => choose(folder).plansIn(folder),
        kindOf: (uri) => choose(uri).kindOf(uri),
    };
}
