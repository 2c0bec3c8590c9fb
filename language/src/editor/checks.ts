import { AstUtils, DocumentState, type LangiumDocument, type URI } from 'langium';
import type { Definition, Sheet } from '../../grammar/generated/ast.ts';
import { Gathered } from '../plan/resolve/gather.ts';
import type { LaybackServices } from '../plan/services.ts';
import { type CheckedSheet, checkSheet } from '../rules/check.ts';
import type { EditorBuilder } from './builder.ts';
import type { EditorSharedServices } from './services.ts';

/** Every file as its last check left it. */
export class Checks {
    private readonly sheets = new Map<string, CheckedSheet>();
    private readonly services: EditorSharedServices;
    /** What was read and is still so, shared by all files. */
    private readonly gathered: Gathered;

    constructor(services: EditorSharedServices) {
        this.services = services;
        this.gathered = new Gathered(services.names.Reach.versions);
        services.workspace.DocumentBuilder.onUpdate((_, deleted) => {
            this.gathered.keepOnly(isAsBefore);
            for (const uri of deleted) this.sheets.delete(uri.toString());
        });
    }

    /** Checks a linked file and keeps what was found. */
    check(document: LangiumDocument): CheckedSheet {
        const { usage } = this.services.workspace.DocumentBuilder as EditorBuilder;
        const services = this.services.ServiceRegistry.getServices(document.uri) as LaybackServices;
        const sheet = checkSheet(
            document as LangiumDocument<Sheet>,
            { services, unread: this.unread() },
            this.gathered,
            { has: (definition) => usage.isUsed(definition as never) } as ReadonlySet<unknown>,
        );
        this.sheets.set(sheet.uri, sheet);
        return sheet;
    }

    /** The last check of a file that reads as it did then; undefined before the first one. */
    of(uri: URI | string): CheckedSheet | undefined {
        return this.sheets.get(uri.toString());
    }

    all(): Iterable<CheckedSheet> {
        return this.sheets.values();
    }

    private unread(): ReadonlyMap<string, string> {
        const { refusals } = this.services.editor.Sources;
        return new Map([...refusals].map(([uri, { reason }]) => [uri, reason]));
    }
}

/** Whether a definition's own file is linked as it was: an edit in its reach would have undone that. */
function isAsBefore(definition: Definition): boolean {
    const root = AstUtils.findRootNode(definition);
    const document = root.$document;
    return document?.parseResult.value === root && document.state >= DocumentState.Linked;
}
