import type { LineFigures } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { leaderOf, runnerOf } from '../gear.ts';
import { fishedLines, known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { length } from '../settings.ts';
import { written } from '../standing.ts';
import { ruleBooks } from '../written.ts';

/** A lure so close that its clip can only hold the double or the leader. */
export const clipOnDouble = rule({
    name: 'clip-on-double',
    group: 'written rules',
    standing: written('IGFA International Angling Rules, from memory: a release holds the main line alone.'),
    severity: 'error',
    summary: 'A lure runs so close to its clip that the clip can only hold the double or the leader.',
    settings: { room: length('0.5 m', ['0 m', '5 m'], 'Main line that the clip has to have to hold on to.') },

    check(analysis, { room }, report) {
        if (ruleBooks(analysis.plan).length === 0) return;
        for (const figures of fishedLines(analysis)) {
            const { line } = figures;
            const out = lineOut(figures);
            const [double, leader] = [line.outfit?.value.double?.length, leaderOf(line)?.length];
            if (!figures.clip || out === undefined || (!double && !leader)) continue;
            // A leader is measured with the lure on it, which hangs behind where the line ends.
            const rigged = (double?.si ?? 0) + Math.max(0, (leader?.si ?? 0) - lureLength(line));
            if (out >= rigged + room) continue;
            const [is, most] = sayApart.length(out, rigged);
            report({
                at: line.back ?? line,
                severity: out < rigged ? 'error' : 'warning',
                what: `From its clip to ${runnerOf(line)?.value.title ?? 'its lure'} the line is ${is} long, and double and leader take ${most} of it.`,
                why: 'A clip or band may hold the main line only: on the double or the leader a fish does not count.',
                remedy: `Let it back until the clip has ${say.length(room)} of main line, or shorten the double.`,
                related: [
                    { at: double, what: 'The double is said here.' },
                    { at: leader, what: 'The leader is said here.' },
                ],
                positions: [line],
            });
        }
    },
});

/** From the clip to the lure, m: as it hangs, or else as straight as it can be. */
function lineOut({ rest, towPoint, astern }: LineFigures): number | undefined {
    const [settled, from, back] = [known(rest), known(towPoint), known(astern)];
    if (settled) return settled.lineOut;
    return from && back !== undefined ? Math.hypot(back + from[0], from[2]) : undefined;
}

function lureLength(line: SpreadLine): number {
    return (line.lure ?? line.bait)?.value.length?.si ?? 0;
}
