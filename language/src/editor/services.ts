import { createDefaultCoreModule, EmptyFileSystem, inject, type Module, OperationCancelled } from 'langium';
import {
    createDefaultSharedModule,
    type LangiumServices,
    type LangiumSharedServices,
    type PartialLangiumServices,
    type PartialLangiumSharedServices,
} from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { LaybackGeneratedModule, LaybackGeneratedSharedModule } from '../../grammar/generated/module.ts';
import { type LaybackSharedAdditions, languageModule, sharedModule } from '../plan/services.ts';
import { type Beside, besideByClient } from './beside.ts';
import { EditorBuilder } from './builder.ts';
import { LaybackServer } from './capabilities.ts';
import { Checks } from './checks.ts';
import { Client } from './client.ts';
import { completion } from './completion/completion.ts';
import { definition } from './definition.ts';
import { type Disk, diskBy, noDisk } from './disk.ts';
import { diskOfClient } from './disk-client.ts';
import { ReferenceIndex, RememberedReach, TeamDocuments } from './documents.ts';
import { fileRename } from './file-rename.ts';
import { Findings } from './findings.ts';
import { folding } from './folding.ts';
import { help } from './help.ts';
import { highlights } from './highlights.ts';
import { hints } from './hints.ts';
import { hover } from './hover/hover.ts';
import type { LateAnalysis } from './late.ts';
import { lenses } from './lenses.ts';
import { likes } from './likes.ts';
import { links } from './links.ts';
import { outline } from './outline.ts';
import { type RulePages, rulePages } from './pages.ts';
import { Pictures } from './pictures.ts';
import { Press } from './press.ts';
import { quickFixes } from './quick-fixes.ts';
import { references } from './references.ts';
import { rename } from './rename.ts';
import { Seasons } from './seasons.ts';
import { SecondLook } from './second-look.ts';
import { SettingsInForce } from './settings.ts';
import { SourcedDocuments, Sources } from './sources.ts';
import { TeamFolders } from './team-folders.ts';
import { tidy } from './tidy.ts';
import { tokens } from './tokens.ts';
import { updates } from './updates.ts';
import { workspaceSymbols } from './workspace-symbols.ts';

/** What differs from one home of the server to the next. */
export interface Home {
    /** For files of the `file` scheme; without one the client is asked, as it is for every other scheme. */
    readonly disk?: Disk;
    /** Reads what lies beside the server; without it the client is asked. */
    readonly beside?: Beside;
    readonly lateAnalyses: readonly LateAnalysis[];
    /** Sweeps memory of what the last keystrokes left; called when nobody waits. */
    readonly sweep?: (() => void) | undefined;
}

export interface EditorAdditions extends LaybackSharedAdditions {
    readonly editor: {
        readonly Home: Home;
        readonly Disk: Disk;
        readonly Client: Client;
        readonly Settings: SettingsInForce;
        readonly Sources: Sources;
        readonly Checks: Checks;
        readonly Findings: Findings;
        readonly SecondLook: SecondLook;
        readonly Pictures: Pictures;
        readonly Beside: Beside;
        readonly Press: Press;
        readonly Pages: () => Promise<RulePages>;
        readonly Seasons: Seasons;
    };
}

export type EditorSharedServices = LangiumSharedServices &
    EditorAdditions & { readonly workspace: { readonly DocumentBuilder: EditorBuilder } };
export type EditorServices = LangiumServices & { shared: EditorSharedServices };

/** The language with an editor at the other end of a connection. */
export function createEditorServices(connection: Connection, home: Home): EditorServices {
    const editorModule: Module<
        EditorSharedServices,
        PartialLangiumSharedServices & Pick<EditorAdditions, 'editor' | 'names'>
    > = {
        editor: {
            Home: () => home,
            Disk: (services) => diskOf(home, connection, services.editor.Client),
            Client: () => new Client(),
            Settings: (services) => new SettingsInForce(services),
            Sources: (services) => new Sources(services, services.editor.Disk),
            Checks: (services) => new Checks(services),
            Findings: (services) => new Findings(services),
            SecondLook: (services) => new SecondLook(services, home.lateAnalyses),
            Pictures: (services) => new Pictures(services),
            Beside: (services) => home.beside ?? besideByClient(connection, services.editor.Client),
            Press: (services) => new Press(services.editor.Beside),
            Pages: (services) => rulePages(services.editor.Beside),
            Seasons: (services) => new Seasons(services),
        },
        names: { Reach: (services) => new RememberedReach(services) },
        workspace: {
            WorkspaceManager: (services) => new TeamFolders(services),
            LangiumDocuments: (services) => new TeamDocuments(services),
            IndexManager: (services) => new ReferenceIndex(services, services.names.Reach),
            LangiumDocumentFactory: (services) => new SourcedDocuments(services, services.editor.Sources),
            DocumentBuilder: (services) =>
                new EditorBuilder(services, services.names.Reach, services.editor.Sources),
        },
        lsp: {
            LanguageServer: (services) => new LaybackServer(services),
            DocumentUpdateHandler: updates,
            FileOperationHandler: fileRename,
            WorkspaceSymbolProvider: workspaceSymbols,
        },
    };
    const shared = inject(
        createDefaultSharedModule({ connection, ...EmptyFileSystem }),
        LaybackGeneratedSharedModule,
        sharedModule as never,
        editorModule as never,
    ) as unknown as EditorSharedServices;
    const services = inject(
        createDefaultCoreModule({ shared }),
        LaybackGeneratedModule,
        languageModule as never,
        featureModule as never,
    ) as unknown as EditorServices;
    shared.ServiceRegistry.register(services);
    return services;
}

function diskOf({ disk }: Home, connection: Connection, client: Client): Disk {
    const asked = diskOfClient(connection);
    return diskBy(({ scheme }) => {
        if (scheme === 'file' && disk) return disk;
        return client.options.files ? asked : noDisk;
    });
}

const featureModule: Module<EditorServices, PartialLangiumServices> = {
    lsp: {
        DefinitionProvider: definition,
        ReferencesProvider: references,
        CodeActionProvider: quickFixes,
        CompletionProvider: completion,
        DocumentHighlightProvider: highlights,
        HoverProvider: hover,
        InlayHintProvider: hints,
        CodeLensProvider: lenses,
        SignatureHelp: help,
        DocumentLinkProvider: links,
        RenameProvider: rename,
        DocumentSymbolProvider: outline,
        FoldingRangeProvider: folding,
        SemanticTokenProvider: tokens,
        Formatter: tidy,
        TypeHierarchyProvider: likes,
    },
    validation: {
        DocumentValidator: ({ shared }) => ({
            // Findings are kept and told by their own ways; the builder only wants to know when.
            validateDocument: async (document) => {
                // The editor's text may be ahead of the syntax tree: then another update is on its way.
                if (shared.workspace.DocumentBuilder.isBehind(document.uri)) throw OperationCancelled;
                shared.editor.Checks.check(document);
                return [];
            },
        }),
    },
};
