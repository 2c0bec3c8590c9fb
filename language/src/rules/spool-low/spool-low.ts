import { fishedLines, known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { length } from '../settings.ts';
import { physics } from '../standing.ts';

/** Line out and the expected run leave too little on the spool. */
export const spoolLow = rule({
    name: 'spool-low',
    group: 'tackle',
    standing: physics(
        'What the spool holds, less the line out, less the run.',
        'The run, 400 m unless the outfit says one, and how much should be left.',
    ),
    severity: 'warning',
    summary: 'Line out and the expected run leave too little on the spool.',
    settings: { left: length('100 m', ['0 m', '1000 m'], 'Least line left on the spool after the run.') },

    check(analysis, { left: least }, report) {
        for (const { line, reel } of fishedLines(analysis)) {
            const figures = reel && known(reel);
            if (!figures || !line.outfit || figures.left >= least) continue;
            const { run, runSaid } = figures;
            // Nobody knows these to less than a metre.
            const [holds, out, left] = [figures.holds, figures.out, figures.left].map(Math.round) as Three;
            const { title } = line.outfit.value;
            const like = line.outfit.value.reel?.capacity?.length;
            const told = runSaid ? say.length(runSaid) : `${say.length(run, like)} (estimate)`;
            const whatIsLeft = left > 0 ? `leaves ${say.length(left, like)}` : 'empties it';
            report({
                at: line.outfit,
                what: `${title} holds ${say.length(holds, like)} of line, and a run of ${told} with ${say.length(out, like)} out ${whatIsLeft}, where ${say.length(least, like)} should be left.`,
                why: 'At the end of the line something parts, and near it the drag has doubled.',
                remedy: `Use a reel that holds ${say.length(out + run + least, like)}, or follow the fish sooner.`,
                related: [
                    { at: like, what: 'What the reel holds is said here.' },
                    { at: runSaid, what: 'The run is said here.' },
                ],
                positions: [line],
            });
        }
    },
});

type Three = [number, number, number];
