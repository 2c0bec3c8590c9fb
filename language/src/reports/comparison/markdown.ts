import { messageOf } from '../../plan/finding.ts';
import { inMarkdown } from '../../plan/wording.ts';
import { harmless } from '../width.ts';
import type { Comparison, LonePlan, PlanChange } from './comparison.ts';
import type { FindingsApart } from './findings-apart.ts';
import { caution, headingOf, orderWords, summaryOf, turnName } from './words.ts';

/** The comparison for a review of a change: headings, lists and tables, and nothing that a text of a plan could break. */
export function comparisonMarkdown(comparison: Comparison): string {
    const { before, after, changed, come, gone, findings } = comparison;
    const parts = [
        [`# ${told(before)} → ${told(after)}`],
        [told(summaryOf(comparison))],
        ...changed.flatMap(planParts),
        ...loneParts('New', come),
        ...loneParts('Gone', gone),
        findingItems(findings),
        [`_${told(caution)}_`],
    ];
    return `${parts
        .filter((lines) => lines.length > 0)
        .map((lines) => lines.join('\n'))
        .join('\n\n')}\n`;
}

function planParts(change: PlanChange): string[][] {
    const { figures, findings, turns, orders } = change;
    return [
        [`## ${told(headingOf(change))}`],
        change.told.map((words) => `- ${told(words)}`),
        rows(
            ['Where', 'Figure', 'Before', 'After'],
            figures.map(({ of, figure, before, after }) => [of, figure, before, after]),
        ),
        findingItems(findings),
        rows(
            ['Turn', 'Before', 'After'],
            turns.map((turn) => [turnName(turn), turn.before, turn.after]),
        ),
        orders.map((order) => {
            const { now, was } = orderWords(order);
            return `- ${told(now)} ${told(was)}`;
        }),
    ];
}

function loneParts(word: string, plans: readonly LonePlan[]): string[][] {
    return plans.map(({ title, name, path }) => [`## ${word}: ${told(`${title} (${name}, ${path})`)}`]);
}

function findingItems({ came, went }: FindingsApart): string[] {
    return (
        [
            ['New', came],
            ['Gone', went],
        ] as const
    ).flatMap(([word, findings]) =>
        findings.map(
            (finding) => `- **${word}** ${finding.severity} **${finding.rule}**: ${told(messageOf(finding))}`,
        ),
    );
}

function rows(heads: readonly string[], cells: readonly (readonly string[])[]): string[] {
    if (cells.length === 0) return [];
    const line = (texts: readonly string[]) => `| ${texts.map(told).join(' | ')} |`;
    return [line(heads), `|${' --- |'.repeat(heads.length)}`, ...cells.map(line)];
}

function told(words: string): string {
    return inMarkdown(harmless(words).replace(/\s+/g, ' '));
}
