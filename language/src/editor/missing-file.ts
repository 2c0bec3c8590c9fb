import type { LangiumDocument } from 'langium';
import { type CodeAction, CodeActionKind, type Diagnostic } from 'vscode-languageserver';
import type { Sheet } from '../../grammar/generated/ast.ts';
import type { Finding } from '../plan/finding.ts';
import { pathOf, planEnding, usesOf } from '../plan/names/uses.ts';
import { placeOfProperty } from '../plan/place.ts';
import type { EditorSharedServices } from './services.ts';

/** Makes the file that a `use` names and that is not there, in an editor that can. */
export function makingFile(
    { rule, at }: Finding,
    document: LangiumDocument,
    diagnostics: readonly Diagnostic[],
    { names, workspace, editor }: EditorSharedServices,
): CodeAction[] {
    if (rule !== 'use' || !editor.Client.makesFiles) return [];
    const use = usesOf(document.parseResult.value as Sheet).find(
        (each) => placeOfProperty(each, 'path').start === at.start,
    );
    const target = use && names.Reach.target(document.uri, pathOf(use));
    if (target?.kind !== 'file' || !target.uri.path.endsWith(planEnding)) return [];
    const uri = target.uri.toString();
    if (workspace.LangiumDocuments.hasDocument(target.uri) || editor.Sources.refusals.has(uri)) return [];
    return [
        {
            title: `Make ${pathOf(use!)}`,
            kind: CodeActionKind.QuickFix,
            diagnostics: [...diagnostics],
            edit: { documentChanges: [{ kind: 'create', uri, options: { ignoreIfExists: true } }] },
        },
    ];
}
