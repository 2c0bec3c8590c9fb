import {
    BrowserMessageReader,
    BrowserMessageWriter,
    createConnection,
    ProposedFeatures,
} from 'vscode-languageserver/browser';
import { startServer } from './editor/server.ts';
import { turnAnalysis } from './editor/turns.ts';

const worker = self as unknown as DedicatedWorkerGlobalScope;
const connection = createConnection(
    ProposedFeatures.all,
    new BrowserMessageReader(worker),
    new BrowserMessageWriter(worker),
);
startServer(connection, { lateAnalyses: [turnAnalysis] });
