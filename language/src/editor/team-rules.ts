import { GrammarUtils, type LangiumDocument, URI } from 'langium';
import { TextEdit, type WorkspaceEdit } from 'vscode-languageserver';
import type { RuleSetting, Rules, Sheet } from '../../grammar/generated/ast.ts';
import { blockEnd } from './block-end.ts';
import type { RuleSeverityWanted, Severity, TeamRules } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';
import type { TeamFolders } from './team-folders.ts';

/** The team's own `rules`, with what they say about one rule. */
export function teamRulesOn(rule: string, services: EditorSharedServices): TeamRules[] {
    const { LangiumDocuments, WorkspaceManager } = services.workspace;
    const folders = WorkspaceManager as TeamFolders;
    return LangiumDocuments.all
        .filter(({ uri }) => folders.holds(uri) || services.editor.Sources.isOpen(uri))
        .flatMap((document) => rulesIn(document).map((rules) => ({ document, rules })))
        .map(({ document, rules }) => {
            const severity = severityOf(settingOf(rule, rules));
            return {
                uri: document.uri.toString(),
                name: rules.name,
                title: (rules.title ?? rules.name).replace(/^"|"$/g, ''),
                ...(severity && { severity }),
            };
        })
        .toArray();
}

/** Writes a severity: over the one that stands there, into the block about the rule, or as a block of its own. */
export function severityEdit(
    { uri, name, rule, severity }: RuleSeverityWanted,
    services: EditorSharedServices,
): WorkspaceEdit | undefined {
    const document = services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    const rules = document && rulesIn(document).find((each) => each.name === name);
    const edit = rules && writeSeverity(rules, rule, severity, document);
    return edit && { changes: { [uri]: [edit] } };
}

function writeSeverity(
    rules: Rules,
    rule: string,
    severity: Severity,
    document: LangiumDocument,
): TextEdit | undefined {
    const said = settingOf(rule, rules);
    const choice = said && choiceOf(said);
    if (choice) return TextEdit.replace(choice.range, severity);
    const brace = said && GrammarUtils.findNodeForKeyword(said.$cstNode, '{');
    if (brace) return TextEdit.insert(brace.range.end, ` severity ${severity} `);
    const end = blockEnd(rules, document.textDocument);
    return end && TextEdit.insert(end.at, `${end.before}rule ${rule} { severity ${severity} }${end.after}`);
}

function rulesIn(document: LangiumDocument): Rules[] {
    const { definitions = [] } = document.parseResult.value as Sheet;
    return definitions.filter((each) => each.kind === 'rules' && each.name !== undefined) as Rules[];
}

function settingOf(rule: string, { entries = [] }: Rules): RuleSetting | undefined {
    return entries.find(
        (entry): entry is RuleSetting => entry.$type === 'RuleSetting' && entry.rule === rule,
    );
}

/** The word behind `severity`, as it stands in the text. */
function choiceOf({ settings }: RuleSetting) {
    const setting = settings.find(({ key }) => key === 'severity');
    return setting && GrammarUtils.findNodeForProperty(setting.$cstNode, 'choice');
}

function severityOf(said: RuleSetting | undefined): Severity | undefined {
    const word = said && choiceOf(said)?.text;
    return (['error', 'warning', 'hint', 'off'] as const).find((each) => each === word);
}
