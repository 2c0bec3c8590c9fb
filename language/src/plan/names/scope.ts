import {
    type AstNodeDescription,
    EMPTY_STREAM,
    type LangiumCoreServices,
    type LangiumDocument,
    MultiMap,
    type ReferenceInfo,
    type Scope,
    type ScopeComputation,
    type ScopeProvider,
    stream,
} from 'langium';
import type { Definition, Sheet } from '../../../grammar/generated/ast.ts';
import { type Kind, kindsWanted } from './kinds.ts';
import type { Reach } from './reach.ts';

/** The definitions of one file: kind → name → first definition of that name. */
type NameTable = ReadonlyMap<Kind, ReadonlyMap<string, AstNodeDescription>>;

/**
 * Finds names in the files that a file reaches, nearest first.
 *
 * One table a file, which holds as long as its syntax tree: an edit elsewhere costs no file its table.
 */
export class ReachScope implements ScopeProvider {
    private readonly tables = new WeakMap<
        LangiumDocument,
        { readonly of: Sheet; readonly names: NameTable }
    >();
    private readonly services: LangiumCoreServices;
    private readonly reach: Reach;

    constructor(services: LangiumCoreServices, reach: Reach) {
        this.services = services;
        this.reach = reach;
    }

    getScope(context: ReferenceInfo): Scope {
        const document = documentOf(context);
        if (!document)
            return {
                getElement: () => undefined,
                getElements: () => EMPTY_STREAM,
                getAllElements: () => EMPTY_STREAM,
            };
        return this.scopeFrom(document, kindsWanted(context.container, context.property));
    }

    /** Everything of some kinds that a document sees. */
    scopeFrom(document: LangiumDocument, kinds: readonly Kind[]): Scope {
        const find = (name: string): AstNodeDescription[] => {
            const found: AstNodeDescription[] = [];
            for (const reached of this.reach.from(document)) {
                for (const kind of kinds) {
                    const description = this.tableOf(reached).get(kind)?.get(name);
                    if (description) found.push(description);
                }
            }
            return found;
        };
        return {
            getElement: (name) => find(name)[0],
            getElements: (name) => stream(find(name)),
            getAllElements: () =>
                stream(this.reach.from(document)).flatMap((reached) =>
                    kinds.flatMap((kind) => [...(this.tableOf(reached).get(kind)?.values() ?? [])]),
                ),
        };
    }

    private tableOf(document: LangiumDocument<Sheet>): NameTable {
        const sheet = document.parseResult.value;
        let table = this.tables.get(document);
        if (table?.of !== sheet) {
            table = { of: sheet, names: this.build(sheet, document) };
            this.tables.set(document, table);
        }
        return table.names;
    }

    private build(sheet: Sheet, document: LangiumDocument): NameTable {
        const table = new Map<Kind, Map<string, AstNodeDescription>>();
        for (const definition of sheet.definitions ?? []) {
            const name = nameOf(definition);
            if (!name) continue;
            let names = table.get(definition.kind);
            if (!names) {
                names = new Map();
                table.set(definition.kind, names);
            }
            if (names.has(name)) continue;
            const descriptions = this.services.workspace.AstNodeDescriptionProvider;
            names.set(name, descriptions.createDescription(definition, name, document));
        }
        return table;
    }
}

/** The name of a definition; a log has a date instead. */
export function nameOf(definition: Definition): string | undefined {
    return 'name' in definition ? definition.name : undefined;
}

/** Lays out no symbols beforehand: names are looked up by file, in the tables that the scope makes when it is asked. */
export class NoSymbols implements ScopeComputation {
    async collectExportedSymbols(): Promise<AstNodeDescription[]> {
        return [];
    }

    async collectLocalSymbols(): Promise<MultiMap<never, never>> {
        return new MultiMap();
    }
}

function documentOf(context: ReferenceInfo): LangiumDocument | undefined {
    let node = context.container;
    while (node.$container) node = node.$container;
    return node.$document;
}
