import { DocumentState, type LangiumDocument, URI } from 'langium';
import { CancellationTokenSource } from 'vscode-languageserver';
import type { LateAnalysis, LateResult } from './late.ts';
import type { EditorSharedServices } from './services.ts';
import { textParsed } from './sources.ts';

/** After so long without an edit, ms, whoever types is taken to have paused. */
const rest = 200;

/**
 * Runs the late analyses over every file that was checked since they last ran on it: open files first, one at a
 * time, and away at the next edit.
 */
export class SecondLook {
    private readonly services: EditorSharedServices;
    private readonly analyses: readonly LateAnalysis[];
    private readonly due = new Set<string>();
    private timer: ReturnType<typeof setTimeout> | undefined;
    private running: CancellationTokenSource | undefined;

    constructor(services: EditorSharedServices, analyses: readonly LateAnalysis[]) {
        this.services = services;
        this.analyses = analyses;
        if (analyses.length === 0) return;
        const { DocumentBuilder, TextDocuments } = services.workspace;
        DocumentBuilder.onUpdate((_, deleted) => {
            this.running?.cancel();
            for (const uri of deleted) this.due.delete(uri.toString());
            this.wait();
        });
        DocumentBuilder.onDocumentPhase(DocumentState.Validated, ({ uri }) => {
            this.due.add(uri.toString());
            this.wait();
        });
        TextDocuments.onDidOpen(({ document }) => this.ask(document.uri));
        TextDocuments.onDidClose(({ document }) => this.ask(document.uri));
        services.editor.Settings.onChange(() => {
            for (const { uri } of services.editor.Checks.all()) this.ask(uri);
        });
    }

    /** Whether anything is still to be looked at. */
    get isDue(): boolean {
        return [...this.due].some((uri) => this.isWanted(uri));
    }

    /** Looks at nothing any more. */
    stop(): void {
        this.due.clear();
        this.running?.cancel();
        clearTimeout(this.timer);
    }

    private ask(uri: string): void {
        if (!this.isWanted(uri)) this.services.editor.Findings.dropLate(uri);
        this.due.add(uri);
        this.wait();
    }

    private isWanted(uri: string): boolean {
        return this.services.editor.Settings.current.slowFindings === 'all' || this.isOpen(uri);
    }

    private isOpen(uri: string): boolean {
        return this.services.workspace.TextDocuments.get(uri) !== undefined;
    }

    private wait(): void {
        clearTimeout(this.timer);
        this.timer = setTimeout(() => void this.run(), rest);
    }

    private async run(): Promise<void> {
        this.running?.cancel();
        const running = new CancellationTokenSource();
        this.running = running;
        const isOver = () => running.token.isCancellationRequested;
        for (let document = this.next(); document && !isOver(); document = this.next()) {
            if (document.state < DocumentState.Validated) return;
            if (!(await this.lookAt(document, isOver))) return;
        }
        if (!isOver()) this.running = undefined;
    }

    private next(): LangiumDocument | undefined {
        const wanted = [...this.due].filter((uri) => this.isWanted(uri));
        const uri = wanted.find((each) => this.isOpen(each)) ?? wanted[0];
        if (uri === undefined) return undefined;
        const document = this.services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
        if (document) return document;
        this.due.delete(uri);
        return this.next();
    }

    /** @returns false where an edit came in between */
    private async lookAt(document: LangiumDocument, isOver: () => boolean): Promise<boolean> {
        const uri = document.uri.toString();
        const sheet = this.services.editor.Checks.of(uri);
        const text = textParsed(document) ?? '';
        const results = new Map<string, LateResult>();
        const pause = async () => {
            await new Promise((resolve) => setTimeout(resolve));
            if (isOver()) throw new Overtaken();
        };
        for (const analysis of sheet ? this.analyses : []) {
            try {
                results.set(analysis.name, await analysis.analyse(sheet!, pause));
                await pause();
            } catch (fault) {
                if (fault instanceof Overtaken) return false;
                this.services.lsp.Connection?.console.error(
                    `${analysis.name}: ${(fault as Error).stack ?? fault}`,
                );
            }
        }
        if (isOver()) return false;
        this.due.delete(uri);
        this.services.editor.Findings.takeLate(uri, text, results);
        return true;
    }
}

class Overtaken extends Error {}
