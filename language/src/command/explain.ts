import type { Command } from 'commander';
import { capital } from '../plan/wording.ts';
import type { RuleEntry } from '../reports/sarif.ts';
import { groups } from '../rules/rule.ts';
import { knownCode } from './known-code.ts';
import { inTerminal } from './markdown.ts';
import { ruleEntries } from './rule-entries.ts';
import { terminal } from './terminal.ts';

const help = `
Examples:
  layback explain             every rule, by what it is about
  layback explain stagger     the page of one rule`;

export function declare(command: Command): void {
    command
        .description(
            'Shows what a rule says, what it stands on, what to do about it, and how a team sets it.',
        )
        .argument('[rule]', 'the name that stands beside a finding (default: list all)')
        .addHelpText('after', help)
        .action(explain);
}

async function explain(name: string | undefined): Promise<void> {
    const rules = ruleEntries();
    if (name === undefined) {
        terminal.out(await inTerminal(index(rules), terminal));
        return;
    }
    const rule = rules.find((rule) => rule.name === knownCode(name))!;
    const page = rule.page ?? `# ${rule.name}\n\n${rule.summary}\n\n${rule.standing}`;
    terminal.out(await inTerminal(page, terminal));
}

function index(rules: readonly RuleEntry[]): string {
    return [...groups, 'the text']
        .map((group) => ({ group, among: rules.filter((rule) => rule.group === group) }))
        .filter(({ among }) => among.length > 0)
        .map(({ group, among }) => {
            const rows = among.map((rule) => `| ${rule.name} | ${rule.severity} | ${rule.summary} |`);
            return [
                `# ${capital(group)}`,
                '',
                '| rule | severity | what it says |',
                '|---|---|---|',
                ...rows,
            ].join('\n');
        })
        .join('\n\n');
}
