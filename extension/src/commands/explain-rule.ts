import { commands, languages, Uri, window } from 'vscode';
import { type RuleEntry, ruleList } from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';

/** Opens the page of a rule: the one given, else the one that spoke at the caret, else one chosen from all. */
export async function explainRule(home: Home, ...[given]: unknown[]): Promise<void> {
    const server = await running(home);
    if (!server) return;
    const rules = (await server.ask(ruleList, {})) ?? [];
    const isRule = (name: unknown): name is string => rules.some((rule) => rule.name === name);
    const name = isRule(given) ? given : await chooseRule(rules, home, 'Which rule?');
    if (name) await openPage(Uri.parse(`layback:/rules/${name}.md`));
}

/** Asks for a rule; those that spoke in the line of the caret are offered first. */
export async function chooseRule(
    rules: readonly RuleEntry[],
    { gaze }: Home,
    title: string,
): Promise<string | undefined> {
    const spoke = rulesAtCaret(gaze);
    const first = rules.filter((rule) => spoke.has(rule.name));
    const others = rules.filter((rule) => !spoke.has(rule.name));
    const item = (rule: RuleEntry, isAtCaret: boolean) => ({
        label: rule.name,
        description: isAtCaret ? 'at the caret' : rule.group,
        detail: rule.summary,
    });
    const chosen = await window.showQuickPick(
        [...first.map((rule) => item(rule, true)), ...others.map((rule) => item(rule, false))],
        {
            title,
            placeHolder: 'A word of what it is about will do',
            matchOnDetail: true,
            matchOnDescription: true,
        },
    );
    return chosen?.label;
}

function rulesAtCaret({ place }: Home['gaze']): ReadonlySet<string> {
    if (!place) return new Set();
    const { document, caret } = place;
    return new Set(
        languages
            .getDiagnostics(document.uri)
            .filter(({ range }) => range.start.line <= caret.line && caret.line <= range.end.line)
            .map(({ code }) => String(typeof code === 'object' ? code.value : code)),
    );
}

/** As a page to read; as its text where the editor comes without a reader of Markdown. */
export async function openPage(uri: Uri): Promise<void> {
    try {
        await commands.executeCommand('markdown.showPreview', uri);
    } catch {
        await window.showTextDocument(uri, { preview: true });
    }
}
