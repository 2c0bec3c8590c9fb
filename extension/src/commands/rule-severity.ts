import { commands, Uri, type WorkspaceEdit, window, workspace } from 'vscode';
import {
    type RuleEntry,
    ruleList,
    ruleSeverity,
    type Severity,
    type TeamRules,
    teamRules,
} from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';
import { editOf } from '../edits.ts';
import { chooseRule } from './explain-rule.ts';

/** Sets how grave a rule is for every plan that stands under a team's rules. */
export async function setRuleSeverity(home: Home): Promise<void> {
    const server = await running(home);
    if (!server) return;
    const rules = ((await server.ask(ruleList, {})) ?? []).filter(({ group }) => group !== 'the text');
    const name = await chooseRule(rules, home, 'How grave is which rule?');
    const rule = rules.find((each) => each.name === name);
    if (!rule) return;
    const team = await chooseTeam((await server.ask(teamRules, { rule: rule.name })) ?? []);
    const severity = team && (await chooseSeverity(rule, team));
    if (!severity) return;
    const wanted = { uri: team.uri, name: team.name, rule: rule.name, severity };
    const answer = await server.ask(ruleSeverity, wanted);
    const edit = answer && editOf(answer);
    if (!edit || !(await workspace.applyEdit(edit))) {
        void window.showWarningMessage(`${team.title} could not be changed. Is its block closed?`);
        return;
    }
    const showIt = 'Show It';
    const said = `${team.title} says ${rule.name} { severity ${severity} } now. The file is not saved yet.`;
    const chosen = await window.showInformationMessage(said, showIt);
    if (chosen === showIt) await showEdit(edit);
}

async function chooseTeam(found: readonly TeamRules[]): Promise<TeamRules | undefined> {
    if (found.length <= 1) {
        if (found.length === 0) {
            const begin = 'New Team Folder…';
            const chosen = await window.showInformationMessage(
                'The workspace has no `rules` block yet. A team’s rules stand in one, and plans name it as their event.',
                begin,
            );
            if (chosen) await commands.executeCommand('layback.newTeamFolder');
        }
        return found[0];
    }
    const chosen = await window.showQuickPick(
        found.map((team) => ({
            label: team.title,
            description: workspace.asRelativePath(Uri.parse(team.uri, true)),
            detail: team.severity && `says ${team.severity}`,
            team,
        })),
        { title: 'In whose rules?' },
    );
    return chosen?.team;
}

const meanings: Readonly<Record<Severity, string>> = {
    error: 'The plan must not go to sea so: the command fails.',
    warning: 'Somebody should look at it.',
    hint: 'House style, a line in the list.',
    off: 'The team does not want to hear of it.',
};

async function chooseSeverity(rule: RuleEntry, team: TeamRules): Promise<Severity | undefined> {
    const now = team.severity ?? rule.severity;
    const chosen = await window.showQuickPick(
        (Object.keys(meanings) as Severity[]).map((severity) => ({
            label: severity,
            description: severity === now ? `${team.severity ? 'as it is' : 'usual'}` : undefined,
            detail: meanings[severity],
            severity,
        })),
        { title: `How grave is ${rule.name}?`, placeHolder: rule.summary },
    );
    return chosen?.severity;
}

async function showEdit(edit: WorkspaceEdit): Promise<void> {
    for (const [uri, [first]] of edit.entries()) {
        if (first) await window.showTextDocument(uri, { selection: first.range });
    }
}
