import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
    createDefaultCoreModule,
    createDefaultSharedCoreModule,
    EmptyFileSystem,
    inject,
    type LangiumCoreServices,
    type LangiumDocument,
    URI,
} from 'langium';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import {
    LaybackGeneratedModule,
    LaybackGeneratedSharedModule,
} from '../../language/grammar/generated/module.ts';
import { addLibraryFile, libraryUris } from '../../language/src/plan/load.ts';
import { Reach } from '../../language/src/plan/names/reach.ts';
import { Gathered } from '../../language/src/plan/resolve/gather.ts';
import { languageModule } from '../../language/src/plan/services.ts';
import { checkSheet, usedAnywhere } from '../../language/src/rules/check.ts';
import { defaultModule } from './default-module.ts';

/*
 * The same grammar, names and checks over the toolkit's own parser, linker, index, builder and documents: what a folder
 * costs when it is left to them. Prints how many findings there are.
 */
const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), LaybackGeneratedSharedModule, {
    names: { Reach: (services: never) => new Reach(services) },
} as never) as never as LangiumCoreServices['shared'];
const services = inject(
    createDefaultCoreModule({ shared } as never),
    LaybackGeneratedModule,
    languageModule as never,
    defaultModule(found) as never,
) as never as LangiumCoreServices;
shared.ServiceRegistry.register(services);

const gathered = new Gathered();
const loaded = { services: services as never, unread: new Map<string, string>() };
let used: ReadonlySet<unknown> | undefined;

function found(document: LangiumDocument<Sheet>): unknown[] {
    if (document.uri.scheme !== 'file') return [];
    used ??= usedAnywhere(loaded);
    const { findings } = checkSheet(document, loaded, gathered, used, { turns: true, once: true });
    return findings.map(({ rule, what, at: { start, end, range } }) => ({ rule, what, start, end, range }));
}

const folder = process.argv[2]!;
for (const uri of libraryUris()) addLibraryFile(services as never, uri);
for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.spread')) continue;
    const uri = URI.file(join(folder, name));
    const text = readFileSync(uri.fsPath, 'utf8');
    shared.workspace.LangiumDocuments.addDocument(
        shared.workspace.LangiumDocumentFactory.fromString(text, uri),
    );
}
const documents = shared.workspace.LangiumDocuments.all.toArray();
await shared.workspace.DocumentBuilder.build(documents, { validation: true });
console.log(documents.reduce((count, { diagnostics = [] }) => count + diagnostics.length, 0));
