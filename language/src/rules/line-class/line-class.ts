import type { Measure } from '../../plan/measure.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { exceeds } from '../../units/compare.ts';
import { standardGravity } from '../../units/quantity.ts';
import { type Report, rule } from '../rule.ts';
import { listed, say, sayApart } from '../say.ts';
import { written } from '../standing.ts';
import { firstWord } from '../written.ts';

/** A line is of no class that the event allows, or breaks above its class. */
export const lineClass = rule({
    name: 'line-class',
    group: 'written rules',
    standing: written('The pack that the event stands on, and the classes that it allows.'),
    severity: 'error',
    summary: 'A line is of a class that the event does not allow, breaks above its class, or says none.',
    settings: {},

    check({ plan, lines }, _, report) {
        if (!plan.event) return;
        const allowed = plan.event.value.classes?.among;
        const book = firstWord(plan, ({ classes }) => (classes.length > 0 ? classes : undefined));
        for (const { line } of lines.filter(({ line }) => line.role !== 'teaser')) {
            const found = line.outfit?.value.line?.lineClass;
            if (!found) {
                unsaid(line, report);
                continue;
            }
            const row = book?.limit.find(({ lineClass }) => lineClass.si === found.si);
            if (allowed && !allowed.some(({ si }) => si === found.si)) {
                notAmong(line, found, plan.event.value.title, allowed, report);
            } else if (book && !row) {
                const classes = book.limit.map(({ lineClass }) => lineClass);
                notAmong(line, found, book.book.title, classes, report);
            } else if (row?.tests) {
                tooStrong(line, found, row.tests, report);
            }
        }
    },
});

/** Silence would read as a clean plan. */
function unsaid(line: SpreadLine, report: Report) {
    if (!line.outfit?.value.line) return;
    report({
        at: line.outfit,
        severity: 'hint',
        what: `The line of ${line.outfit.value.title} says no class, so nothing of it was held to the rules.`,
        why: 'Class, double, leader and drag all go by it.',
        remedy: 'Write it down: line { class 24 kg }.',
        positions: [line],
    });
}

function notAmong(line: SpreadLine, found: Measure, book: string, among: readonly Measure[], report: Report) {
    report({
        at: found,
        what: `${line.outfit!.value.title} is of the ${say.lineClass(found)} class, and ${book} knows ${listed(among.map(say.lineClass))}.`,
        why: 'A fish on it does not count.',
        remedy: 'Put an outfit of one of those classes here.',
        related: [{ at: among[0], what: 'The classes are listed here.' }],
        positions: [line],
    });
}

function tooStrong(line: SpreadLine, found: Measure, tests: Measure, report: Report) {
    const breaks = line.outfit?.value.line?.breaks;
    // The table has a class in kilograms and in pounds, one of them cut short: the greater of the two counts.
    const limit = Math.max(tests.si, found.si * standardGravity);
    if (!breaks || !exceeds(breaks.si, limit)) return;
    const [is, most] = sayApart.load(breaks, tests);
    report({
        at: breaks,
        what: `${line.outfit!.value.title} breaks at ${is}, and the ${say.lineClass(found)} class tests to ${most}.`,
        why: 'Line that tests above its class counts as the next class up.',
        remedy: 'Spool up with line that breaks under its class.',
        related: [{ at: found, what: 'The class is said here.' }],
        positions: [line],
    });
}
