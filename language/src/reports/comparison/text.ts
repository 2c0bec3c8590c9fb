import { type Finding, messageOf } from '../../plan/finding.ts';
import { type Ink, noColours } from '../ink.ts';
import { table } from '../table.ts';
import { readable, type Width, widthFor, wrap } from '../width.ts';
import type { Comparison, LonePlan, PlanChange } from './comparison.ts';
import type { FindingsApart } from './findings-apart.ts';
import { headingOf, orderWords, summaryOf, turnName } from './words.ts';

interface Page {
    readonly ink: Ink;
    readonly columns: number | undefined;
    readonly width: Width;
}

/** The comparison as a person reads it in a terminal. */
export async function comparisonText(
    comparison: Comparison,
    { ink = noColours, columns }: { readonly ink?: Ink; readonly columns?: number | undefined } = {},
): Promise<string> {
    const page = {
        ink,
        columns,
        width: await widthFor([JSON.stringify(comparison.changed.map(({ told }) => told))]),
    };
    const { changed, come, gone, findings } = comparison;
    const blocks = [
        ...changed.map((change) => planLines(change, page)),
        ...loneLines('New', come, page),
        ...loneLines('Gone', gone, page),
        findingLines(findings, page),
    ].filter((lines) => lines.length > 0);
    return [...blocks.map((lines) => `${lines.join('\n')}\n\n`), `${summaryOf(comparison)}\n`].join('');
}

function planLines(change: PlanChange, page: Page): string[] {
    const { told, figures, findings, turns, orders } = change;
    const { ink, width } = page;
    return [
        ink.strong(readable(headingOf(change))),
        ...told.flatMap((words) => item(words, page)),
        ...block(
            'What follows:',
            figures.length === 0
                ? []
                : table(
                      [{ head: 'Where' }, { head: 'Figure' }, { head: 'Before' }, { head: 'After' }],
                      figures.map(({ of, figure, before, after }) => [of, figure, before, after]),
                      ink,
                      width,
                  ).map((line) => `    ${line}`),
        ),
        ...block('', findingLines(findings, page)),
        ...block(
            '',
            turns.flatMap((turn) => [
                ...item(`${turnName(turn)}: ${turn.after}.`, page),
                ...item(`it was: ${turn.before}.`, page, '    '),
            ]),
        ),
        ...block(
            '',
            orders.flatMap((order) => {
                const { now, was } = orderWords(order);
                return [...item(now, page), ...item(was, page, '    ')];
            }),
        ),
    ];
}

function block(title: string, lines: readonly string[]): string[] {
    return lines.length === 0 ? [] : ['', ...(title ? [`  ${title}`] : []), ...lines];
}

function findingLines({ came, went }: FindingsApart, page: Page): string[] {
    const told = (mark: string) => (finding: Finding) =>
        item(
            `${mark} ${page.ink.severity(finding.severity, finding.severity)} ${page.ink.strong(finding.rule)}: ${readable(messageOf(finding))}`,
            page,
        );
    return [...came.flatMap(told('New')), ...went.flatMap(told('Gone'))];
}

function loneLines(word: string, plans: readonly LonePlan[], { ink }: Page): string[][] {
    return plans.map(({ title, name, path }) => [
        ink.strong(readable(`${word}: ${title} (${name}, ${path})`)),
    ]);
}

function item(words: string, { columns, width }: Page, indent = '  '): string[] {
    const lines = columns === undefined ? [words] : wrap(words, Math.max(24, columns - indent.length), width);
    return lines.map((line, index) => `${indent}${index === 0 ? '' : '  '}${line}`);
}
