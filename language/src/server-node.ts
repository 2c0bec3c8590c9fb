import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { diskOfNode } from './editor/disk-node.ts';
import { startServer } from './editor/server.ts';
import { sweepOfNode } from './editor/sweep.ts';
import { turnAnalysis } from './editor/turns.ts';

const connection = createConnection(ProposedFeatures.all);
// A server that ends takes everything with it that was found; what went wrong is better told.
process.on('unhandledRejection', (fault) =>
    connection.console.error(`Something failed. ${(fault as Error | undefined)?.stack ?? fault}`),
);
startServer(connection, {
    disk: diskOfNode,
    beside: async (name) => Uint8Array.from(await readFile(join(import.meta.dirname, name))),
    lateAnalyses: [turnAnalysis],
    sweep: sweepOfNode(),
});
