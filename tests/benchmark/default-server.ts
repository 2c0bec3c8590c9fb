import { createDefaultCoreModule, inject } from 'langium';
import { createDefaultSharedModule, startLanguageServer } from 'langium/lsp';
import { NodeFileSystem } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
    LaybackGeneratedModule,
    LaybackGeneratedSharedModule,
} from '../../language/grammar/generated/module.ts';
import { diagnosticOf } from '../../language/src/editor/diagnostic.ts';
import { addLibraryFile, libraryUris } from '../../language/src/plan/load.ts';
import { Reach } from '../../language/src/plan/names/reach.ts';
import { Gathered } from '../../language/src/plan/resolve/gather.ts';
import { languageModule } from '../../language/src/plan/services.ts';
import { checkSheet } from '../../language/src/rules/check.ts';
import { defaultModule } from './default-module.ts';

/*
 * The same grammar, names and checks over the toolkit's own parser, linker, builder, index and workspace: what an edit
 * costs when it is left to them how a file is read, and which files are touched.
 */
const connection = createConnection(ProposedFeatures.all);
const shared = inject(
    createDefaultSharedModule({ connection, ...NodeFileSystem }),
    LaybackGeneratedSharedModule,
    { names: { Reach: (services: never) => new Reach(services) } } as never,
) as never as Record<string, never> & { names: { Reach: Reach } };
const services = inject(
    createDefaultCoreModule({ shared } as never),
    LaybackGeneratedModule,
    languageModule as never,
    defaultModule((document) => {
        const { findings, uri } = checkSheet(
            document,
            { services: services as never, unread: new Map() },
            new Gathered(),
            new Set(),
        );
        return findings.map((finding) => diagnosticOf(finding, uri));
    }) as never,
) as never as { shared: never };
const workspace = (shared as never as { workspace: Record<string, never> }).workspace;
(shared as never as { ServiceRegistry: { register(services: unknown): void } }).ServiceRegistry.register(
    services,
);
const { DocumentBuilder, WorkspaceManager } = workspace as never as {
    DocumentBuilder: { onUpdate(listener: () => void): void; updateBuildOptions: unknown };
    WorkspaceManager: { initialBuildOptions: unknown; loadAdditionalDocuments: unknown };
};
DocumentBuilder.onUpdate(() => shared.names.Reach.forget());
DocumentBuilder.updateBuildOptions = { validation: true };
WorkspaceManager.initialBuildOptions = { validation: true };
WorkspaceManager.loadAdditionalDocuments = async (_: unknown, collect: (document: unknown) => void) => {
    for (const uri of libraryUris()) collect(addLibraryFile(services as never, uri));
};
startLanguageServer(shared as never);
