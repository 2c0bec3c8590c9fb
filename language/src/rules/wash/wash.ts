import { fishedLines, known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { practice } from '../standing.ts';

/** A lure runs inside the propeller wash. */
export const wash = rule({
    name: 'wash',
    group: 'waves and speed',
    standing: practice(
        'Fish and crew find a lure in clean water. The wash is a trapezoid astern of the transom, its width and length estimates unless the boat says them.',
    ),
    severity: 'hint',
    summary: 'A lure runs inside the propeller wash, where it is hard to see.',
    settings: {},

    check(analysis, _, report) {
        const reach = analysis.wash && known(analysis.wash)?.length;
        if (reach === undefined) return;
        for (const { line, inWash, astern } of fishedLines(analysis)) {
            if (!line.lure || !known(inWash) || !astern.known) continue;
            const like = line.back?.kind === 'distance' ? line.back.distance : undefined;
            report({
                at: line.back ?? line,
                what: `${line.position.name} runs ${say.length(astern.value, like)} back, inside the propeller wash, which reaches ${say.length(reach, like)}.`,
                why: 'In white water neither fish nor crew see what the lure does.',
                remedy: 'Let it back, or tow it from further out.',
                positions: [line],
            });
        }
    },
});
