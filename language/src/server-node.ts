/// <reference path="./command/rule-pages.d.ts" />
import pages from 'layback:rule-pages';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { diskOfNode } from './editor/disk-node.ts';
import { startServer } from './editor/server.ts';
import { turnAnalysis } from './editor/turns.ts';

startServer(createConnection(ProposedFeatures.all), {
    disk: diskOfNode,
    pages,
    lateAnalyses: [turnAnalysis],
});
