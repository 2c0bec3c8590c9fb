import { rules } from './registry.ts';
import { groups, type Rule } from './rule.ts';
import { capital } from './say.ts';
import { fallbackText, type Setting } from './settings.ts';
import { describe } from './standing.ts';

/**
 * A rule's page with everything that the rule itself knows brought up to date: what stands above `## Why`, and
 * the settings. The rest is its author's.
 */
export function renewed(page: string, rule: Rule): string {
    const body = page.slice(Math.max(0, page.indexOf('## Why')));
    return `${head(rule)}\n${body.replace(/## Settings\n[\s\S]*?(?=\n## |$)/, settingsSection(rule))}`;
}

/** The index of all rules, by group. */
export function indexPage(): string {
    const sections = groups.map((group) => {
        const rows = rules
            .filter((rule) => rule.group === group)
            .map(
                (rule) =>
                    `| [${rule.name}](${rule.name}/${rule.name}.md) | ${rule.severity} | ${rule.standing.kind} | ${rule.summary} |`,
            );
        return rows.length === 0
            ? ''
            : `\n## ${capital(group)}\n\n${table(['rule', 'severity', 'standing', 'what it says'], rows)}`;
    });
    return `${opening}${sections.join('')}`;
}

const opening = `# The rules

What a plan is judged by. A team sets severity and settings in its own \`rules\` or in a plan
(\`rule stagger { severity error  sway 5 deg }\`), and waives a finding with a reason
(\`waive stagger between port short rigger and port long rigger because "light wind"\`).

Standing says what a rule stands on: *physics* follows from a model; *written* stands in a published rule book, whose current
edition and the event's own rules decide; *practice* is common practice without a source, so crews may differ;
*housekeeping* is about the text. Figures are planning aids: a scale, a measured crest and the skipper's judgement come first.
`;

function head(rule: Rule): string {
    return `# ${rule.name}

${rule.summary}

- Group: ${rule.group}
- Severity: ${rule.severity}
- ${describe(rule.standing)}
`;
}

function settingsSection({ settings }: Rule): string {
    const rows = Object.entries(settings).map(
        ([name, setting]) => `| \`${name}\` | ${fallbackText(setting)} | ${docOf(setting)} |`,
    );
    const body = rows.length === 0 ? 'None of its own.\n' : table(['setting', 'default', 'meaning'], rows);
    return `## Settings\n\n${body}`;
}

function docOf(setting: Setting): string {
    return setting.kind === 'choice' ? `${setting.doc} One of ${setting.options.join(', ')}.` : setting.doc;
}

function table(heads: readonly string[], rows: readonly string[]): string {
    const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
    return `${[line(heads), line(heads.map(() => '---')), ...rows].join('\n')}\n`;
}
