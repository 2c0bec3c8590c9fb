import { rules } from './registry.ts';
import { groups, type Rule } from './rule.ts';
import { capital, listed } from './say.ts';
import { boundsText, fallbackText } from './settings.ts';
import { describe } from './standing.ts';
import { type TextCodeEntry, textCodes } from './text-codes.ts';

/**
 * A rule's page with everything that the rule itself knows brought up to date: what stands above `## Why`, and
 * the settings. The rest is its author's.
 */
export function renewed(page: string, rule: Rule): string {
    const body = page.slice(Math.max(0, page.indexOf('## Why')));
    return `${head(rule)}\n${body.replace(/## Settings\n[\s\S]*?(?=\n## |$)/, settingsSection(rule))}`;
}

/** The page of a code that is no rule, with what stands above `## Why` brought up to date. */
export function renewedTextPage(
    page: string,
    { name, group, severity, standing, summary }: TextCodeEntry,
): string {
    const body = page.slice(Math.max(0, page.indexOf('## Why')));
    return `# ${name}\n\n${summary}\n\n- Group: ${group}\n- Severity: ${severity}\n- ${standing}\n\n${body}`;
}

/** The index of all rules, by group. */
export function indexPage(): string {
    const sections = groups.map((group) => {
        const rows = rules
            .filter((rule) => rule.group === group)
            .map(({ name, severity, standing, summary }) => [
                `[${name}](${name}/${name}.md)`,
                severity,
                standing.kind,
                summary,
            ]);
        const heads = ['rule', 'severity', 'standing', 'what it says'];
        return rows.length === 0 ? '' : `\n## ${capital(group)}\n\n${table(heads, rows)}`;
    });
    return `${opening}${sections.join('')}\n${theText()}`;
}

/** The codes that are no rules. */
function theText(): string {
    const rows = textCodes.map(({ name, severity, summary }) => [
        `[${name}](the-text/${name}.md)`,
        severity,
        summary,
    ]);
    const said =
        'Faults of a file itself. They can be neither set nor waived: a plan that cannot be read cannot be judged.';
    return `## The text\n\n${said}\n\n${table(['code', 'severity', 'what it says'], rows)}`;
}

const opening = `# The rules

What a plan is judged by. A team sets severity and settings in its own \`rules\` or in a plan
(\`rule stagger { severity error  sway 5 deg }\`), and waives a finding with a reason
(\`waive stagger between port short rigger and port long rigger because "light wind"\`).

Standing says what a rule stands on: _physics_ follows from a model; _written_ stands in a published rule book, whose current
edition and the event's own rules decide; _practice_ is common practice without a source, so crews may differ;
_housekeeping_ is about the text. Figures are planning aids: a scale, a measured crest and the skipper's judgement come first.
`;

function head(rule: Rule): string {
    const gives = rule.givesWayTo
        ? `- Gives way to ${listed(rule.givesWayTo)} about the same lines, unless that is waived: one cause, one finding.\n`
        : '';
    return `# ${rule.name}

${rule.summary}

- Group: ${rule.group}
- Severity: ${rule.severity}
- ${describe(rule.standing)}
${gives}`;
}

function settingsSection({ settings }: Rule): string {
    const rows = Object.entries(settings).map(([name, setting]) => [
        `\`${name}\``,
        fallbackText(setting),
        `${setting.doc} ${capital(boundsText(setting))}.`,
    ]);
    const body = rows.length === 0 ? 'None of its own.\n' : table(['setting', 'default', 'meaning'], rows);
    return `## Settings\n\n${body}`;
}

/** In columns, so that a page is as easy to read as text. */
function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
    const widths = heads.map((head, column) =>
        Math.max(...[head, ...rows.map((row) => row[column]!)].map(({ length }) => length)),
    );
    const line = (cells: readonly string[]) =>
        `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |`;
    const rule = widths.map((width) => '-'.repeat(width));
    return `${[line(heads), line(rule), ...rows.map(line)].join('\n')}\n`;
}
