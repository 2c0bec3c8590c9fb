import type { SpreadLine } from '../../plan/model.ts';
import { fishedLines } from '../neighbours.ts';
import { personOf } from '../people.ts';
import { rule } from '../rule.ts';
import { counted } from '../say.ts';
import { written } from '../standing.ts';

/** An angler with more lines than the event allows each, and lines that nobody could count. */
export const anglerLines = rule({
    name: 'angler-lines',
    group: 'written rules',
    standing: written("The event's own rules, as the team wrote them down."),
    severity: 'error',
    summary: 'An angler has more lines than the event allows each, or a line names none.',
    settings: {},

    check(analysis, _, report) {
        const { event } = analysis.plan;
        const most = event?.value.mostLinesPerAngler;
        if (!event || !most) return;
        const { title } = event.value;
        const related = [{ at: most, what: 'The rule is written here.' }];
        const fished = fishedLines(analysis).map(({ line }) => line);
        for (const lines of byAngler(fished)) {
            const over = lines[most.si];
            if (!over?.angler) continue;
            report({
                at: over.angler,
                what: `${over.angler.value.trim()} has ${counted(lines.length, 'line')}, and ${title} allows ${most.si} for each angler.`,
                why: 'A fish on the line too many does not count.',
                remedy: 'Give the line to another angler, or leave it out.',
                related,
                positions: lines,
            });
        }
        const nobodys = fished.filter(({ angler }) => !angler);
        if (nobodys.length === 0) return;
        report({
            at: event,
            severity: 'hint',
            what: `${counted(nobodys.length, 'line names', 'lines name')} no angler, and ${title} allows ${counted(most.si, 'line')} for each.`,
            why: 'What nobody is named for was not counted.',
            remedy: 'Name the angler of each line: angler "Ines".',
            related,
            positions: nobodys,
        });
    },
});

function byAngler(fished: readonly SpreadLine[]): Iterable<readonly SpreadLine[]> {
    const lines = new Map<string, SpreadLine[]>();
    for (const line of fished) {
        if (!line.angler) continue;
        const person = personOf(line.angler);
        lines.set(person, [...(lines.get(person) ?? []), line]);
    }
    return lines.values();
}
