import { DocumentState, type LangiumDocument, URI } from 'langium';
import { type Diagnostic, Emitter } from 'vscode-languageserver';
import type { Finding } from '../plan/finding.ts';
import type { Checks } from './checks.ts';
import { diagnosticOf, findingAbout, source } from './diagnostic.ts';
import { followEdit, type LateFinding, type LateResult, type Remark } from './late.ts';
import type { EditorSharedServices } from './services.ts';
import { textParsed } from './sources.ts';

/** Late results of one file, and the text that they are about. */
interface Late {
    readonly text: string;
    /** False once the text, or one that it uses, has changed. */
    readonly fresh: boolean;
    readonly found: readonly LateFinding[];
    readonly remarks: readonly Remark[];
}

/** What is found in every file: the first look's findings at once, the late ones when they arrive. */
export class Findings {
    private readonly late = new Map<string, Late>();
    private readonly services: EditorSharedServices;
    private readonly checks: Checks;
    private readonly changed = new Emitter<{ readonly uri: string; readonly phase: 'first' | 'second' }>();
    /** A file has findings other than before, or may have. */
    readonly onChange = this.changed.event;

    constructor(services: EditorSharedServices) {
        this.services = services;
        // Before the listeners below: a file that goes is forgotten before anybody is told what is found in it.
        this.checks = services.editor.Checks;
        const { DocumentBuilder } = services.workspace;
        DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
            this.follow(document);
            this.changed.fire({ uri: document.uri.toString(), phase: 'first' });
        });
        DocumentBuilder.onUpdate((_, deleted) => {
            for (const uri of deleted) {
                this.late.delete(uri.toString());
                this.changed.fire({ uri: uri.toString(), phase: 'first' });
            }
        });
        DocumentBuilder.onOutcome((uris) => {
            for (const uri of uris) this.changed.fire({ uri: uri.toString(), phase: 'first' });
        });
    }

    /** Whether slower findings of a file are there, and of the text that it has now. */
    hasLate(uri: string): boolean {
        return this.late.get(uri)?.fresh === true;
    }

    /** Everything that is known now about a file, as an editor shows it. */
    diagnosticsOf(uri: string): Diagnostic[] {
        const refusal = this.services.editor.Sources.refusals.get(uri);
        if (refusal) return this.aboutRefusal(uri).map((finding) => diagnosticOf(finding, uri));
        const first = this.checks.of(uri)?.findings ?? [];
        return [...first.map((finding) => diagnosticOf(finding, uri)), ...this.lateDiagnostics(uri)];
    }

    /** The findings whose places are right in the text as it is: whatever edits by them needs no other. */
    currentOf(uri: string): Finding[] {
        const first = this.checks.of(uri)?.findings ?? [];
        const late = this.late.get(uri);
        return late?.fresh ? [...first, ...late.found.map(({ finding }) => finding)] : [...first];
    }

    /** How grave each finding is that is known now. */
    severitiesOf(uri: string): Finding['severity'][] {
        if (this.services.editor.Sources.refusals.has(uri))
            return this.aboutRefusal(uri).map(({ severity }) => severity);
        const first = this.checks.of(uri)?.findings ?? [];
        const late = this.late.get(uri)?.found ?? [];
        return [...first.map(({ severity }) => severity), ...late.map(({ finding }) => finding.severity)];
    }

    remarksOf(uri: string): readonly Remark[] {
        const late = this.late.get(uri);
        return late?.fresh ? late.remarks : [];
    }

    /** Takes what the second look found in a text. */
    takeLate(uri: string, text: string, results: ReadonlyMap<string, LateResult>): void {
        const found = [...results].flatMap(([by, { findings }]) =>
            findings.map((finding) => ({ finding, by, start: finding.at.start, end: finding.at.end })),
        );
        const remarks = [...results.values()].flatMap((result) => result.remarks ?? []);
        this.late.set(uri, { text, fresh: true, found, remarks });
        this.changed.fire({ uri, phase: 'second' });
    }

    /** Lets go of late findings that nobody will look for again. */
    dropLate(uri: string): void {
        if (this.late.delete(uri)) this.changed.fire({ uri, phase: 'second' });
    }

    private aboutRefusal(uri: string): Finding[] {
        const refusal = this.services.editor.Sources.refusals.get(uri);
        const finding = refusal && findingAbout(refusal, uri);
        return finding ? [finding] : [];
    }

    private follow(document: LangiumDocument): void {
        const uri = document.uri.toString();
        const late = this.late.get(uri);
        if (!late) return;
        const text = textParsed(document) ?? '';
        this.late.set(uri, { ...late, text, fresh: false, found: followEdit(late.found, late.text, text) });
    }

    private lateDiagnostics(uri: string): Diagnostic[] {
        const late = this.late.get(uri);
        const document = this.services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
        if (!late || !document) return [];
        const { textDocument } = document;
        return late.found.map(({ finding, by, start, end }) => {
            const range = { start: textDocument.positionAt(start), end: textDocument.positionAt(end) };
            // Until it is sought anew, what it is related to may stand elsewhere.
            const told = late.fresh ? finding : { ...finding, related: [] };
            return { ...diagnosticOf(told, uri, `${source} (${by})`), range };
        });
    }
}
