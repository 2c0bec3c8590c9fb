import type { LangiumDocument, URI } from 'langium';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { Gathered } from '../plan/resolve/gather.ts';
import type { LaybackServices } from '../plan/services.ts';
import { type CheckedSheet, checkSheet } from '../rules/check.ts';
import type { EditorBuilder } from './builder.ts';
import type { EditorSharedServices } from './services.ts';

/** Every file as its last check left it. */
export class Checks {
    private readonly sheets = new Map<string, CheckedSheet>();
    private readonly services: EditorSharedServices;
    /** What was read in one update, shared by the files in it; an edit anywhere may make it wrong. */
    private gathered = new Gathered();

    constructor(services: EditorSharedServices) {
        this.services = services;
        services.workspace.DocumentBuilder.onUpdate((_, deleted) => {
            this.gathered = new Gathered();
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
