import { type LangiumDocument, URI } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import {
    type CodeAction,
    type CodeActionContext,
    CodeActionKind,
    type Diagnostic,
    type Range,
    type SnippetTextEdit,
    type TextEdit,
    type WorkspaceEdit,
} from 'vscode-languageserver';
import { type Edit, type Finding, type Fix, messageOf } from '../plan/finding.ts';
import { isAskedFor } from './asked-kinds.ts';
import { makingFile } from './missing-file.ts';
import { refactorActions } from './refactor.ts';
import { textEditOf } from './removal.ts';
import type { EditorServices, EditorSharedServices } from './services.ts';
import { escaped } from './snippets.ts';
import { type WaiverWanted, waiverFor, waiverWords } from './waive.ts';

/** Applies every fix of a file that changes no decision of the crew's. */
export const fixAllKind = `${CodeActionKind.SourceFixAll}.layback`;

/** What to do about findings: mend them, as the findings themselves say, or accept them with a reason. */
export function quickFixes(services: EditorServices): CodeActionProvider {
    const { shared } = services;
    return {
        async getCodeActions(document, { range, context }) {
            const uri = document.uri.toString();
            const found = shared.editor.Findings.currentOf(uri).filter(({ at }) => at.uri === uri);
            const here = found.filter(({ at }) => touches(at.range, range));
            return [
                ...(isWanted(CodeActionKind.QuickFix, context)
                    ? here.flatMap((finding) => actionsFor(finding, document, context.diagnostics, shared))
                    : []),
                ...(isWanted(fixAllKind, context) ? fixAll(found, shared) : []),
                ...(await refactorActions(document, range, context, services)),
            ];
        },
    };
}

/** The edits of all safe fixes; of two that would overlap, the first. */
export function safeEdits(
    findings: readonly Finding[],
    shared: EditorSharedServices,
): WorkspaceEdit | undefined {
    const taken: Edit[] = [];
    for (const fix of findings.flatMap(({ fixes }) => fixes.filter(({ safe }) => safe).slice(0, 1))) {
        if (!fix.edits.some(({ at }) => taken.some((other) => overlap(at, other.at))))
            taken.push(...fix.edits);
    }
    return taken.length > 0 ? editBy(taken, shared) : undefined;
}

function actionsFor(
    finding: Finding,
    document: LangiumDocument,
    diagnostics: readonly Diagnostic[],
    shared: EditorSharedServices,
): CodeAction[] {
    const message = messageOf(finding);
    const about = diagnostics.filter((each) => each.code === finding.rule && each.message === message);
    const fixes = [
        ...finding.fixes.map(
            (fix): CodeAction => ({
                title: fix.title,
                kind: CodeActionKind.QuickFix,
                diagnostics: about,
                ...(isObvious(fix, finding) && { isPreferred: true }),
                edit: editBy(fix.edits, shared),
            }),
        ),
        ...makingFile(finding, document, about, shared),
    ];
    const sheet = shared.editor.Checks.of(document.uri);
    const waiver = sheet && waiverFor(finding, sheet, document);
    if (!waiver) return fixes;
    const title = `Waive ${waiver.rule} ${waiver.scope || 'for the whole plan'} with a reason`;
    return [
        ...fixes,
        { title, kind: CodeActionKind.QuickFix, diagnostics: about, edit: waiving(waiver, document, shared) },
    ];
}

/** What is found in a spelling, of a word, a name, a unit or a path. */
const spellings: ReadonlySet<string> = new Set(['unknown-word', 'unknown-name', 'quantity', 'use']);

/**
 * A misspelt word has one right spelling. Which day was meant, which of two lines counts, and all that is in a plan
 * is for the crew to say: what is preferred is done at a key press.
 */
function isObvious(fix: Fix, { fixes, plan, rule }: Finding): boolean {
    return fixes.length === 1 && (fix.safe === true || (plan === undefined && spellings.has(rule)));
}

function fixAll(found: readonly Finding[], shared: EditorSharedServices): CodeAction[] {
    const edit = safeEdits(found, shared);
    return edit ? [{ title: 'Apply the fixes that change no decision', kind: fixAllKind, edit }] : [];
}

function editBy(edits: readonly Edit[], { workspace }: EditorSharedServices): WorkspaceEdit {
    const changes: Record<string, TextEdit[]> = {};
    for (const edit of edits) {
        const document = workspace.LangiumDocuments.getDocument(URI.parse(edit.at.uri));
        changes[edit.at.uri] ??= [];
        changes[edit.at.uri]!.push(textEditOf(edit, document?.textDocument));
    }
    return { changes };
}

/**
 * The waiver at the end of its plan, the caret where its reason goes. An editor that cannot place a caret gets an
 * empty reason, which waives nothing until it is filled in.
 */
function waiving(
    waiver: WaiverWanted,
    document: LangiumDocument,
    shared: EditorSharedServices,
): WorkspaceEdit {
    const uri = document.uri.toString();
    const { at, before, after } = waiver.end;
    const range = { start: at, end: at };
    const words = `${before}${waiverWords(waiver)}`;
    if (!shared.editor.Client.takesSnippetEdits)
        return { changes: { [uri]: [{ range, newText: `${words} ""${after}` }] } };
    const edit: SnippetTextEdit = {
        range,
        snippet: { kind: 'snippet', value: `${escaped(words)} "$1"${escaped(after)}` },
    };
    const version = shared.workspace.TextDocuments.get(document.uri)?.version ?? null;
    return { documentChanges: [{ textDocument: { uri, version }, edits: [edit] }] };
}

function isWanted(kind: string, { only }: CodeActionContext): boolean {
    if (!only) return kind === CodeActionKind.QuickFix;
    return isAskedFor(kind, only);
}

function touches(a: Range, b: Range): boolean {
    return !isBefore(a.end, b.start) && !isBefore(b.end, a.start);
}

function isBefore(a: Range['start'], b: Range['start']): boolean {
    return a.line < b.line || (a.line === b.line && a.character < b.character);
}

function overlap(a: Edit['at'], b: Edit['at']): boolean {
    return a.uri === b.uri && a.start < b.end && b.start < a.end;
}
