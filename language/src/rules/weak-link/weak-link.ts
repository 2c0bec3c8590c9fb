import type { LineFigures, LinkFigures, WeakestFigures } from '../../plan/figures.ts';
import { runnerOf } from '../gear.ts';
import { fishedLines, known } from '../neighbours.ts';
import { type Problem, rule } from '../rule.ts';
import { say } from '../say.ts';
import { physics } from '../standing.ts';

/** A link that parts before the line does, or before the drag gives. */
export const weakLink = rule({
    name: 'weak-link',
    group: 'tackle',
    standing: physics('Every link at its rated strength, or at its share of what it joins.'),
    severity: 'warning',
    summary: 'A leader, crimp, swivel or knot is weaker than the line, or than full drag.',
    settings: {},

    check(analysis, _, report) {
        for (const figures of fishedLines(analysis)) {
            const weakest = figures.weakest && known(figures.weakest);
            // The weakest that is at fault, and only that: mended, the next one shows.
            for (const link of weakest?.ranked ?? []) {
                const fault = underLine(link, weakest!, figures) ?? underDrag(link, figures);
                if (!fault) continue;
                report({ ...fault, at: link, positions: [figures.line] });
                break;
            }
        }
    },
});

type Fault = Omit<Problem, 'at'>;

/** The knots of the line itself are always a little weaker than the line; whatever is beyond them should not be. */
function underLine(link: LinkFigures, { line }: WeakestFigures, figures: LineFigures): Fault | undefined {
    const beyond = link.piece === 'leader' || link.joint === 'swivel' || link.joint === 'crimp';
    if (!beyond || !line || link.holds >= line.holds - HAIR) return undefined;
    const { title, line: main } = figures.line.outfit!.value;
    const { said } = line;
    const strength =
        said === main?.breaks ? `breaks at ${say.load(said)}` : `is of the ${say.lineClass(said)} class`;
    return {
        what: `${nameOf(link, figures)} holds ${say.load(link.holds, main?.breaks)}, and the line of ${title} ${strength}.`,
        why: 'It parts first, and the fish swims off with hook and leader.',
        remedy: `Rig one that holds more than ${say.load(line.holds, main?.breaks)}.`,
        related: [{ at: said, what: 'The strength of the line is said here.' }],
    };
}

function underDrag(link: LinkFigures, figures: LineFigures): Fault | undefined {
    const full = figures.drags.find(({ stage }) => stage === 'full')?.force;
    if (!link.joint || !full || link.holds >= full.si - HAIR) return undefined;
    return {
        what: `${nameOf(link, figures)} holds ${say.load(link.holds, full)}, and full drag is ${say.load(full)}.`,
        why: 'It parts before the reel gives.',
        remedy: `Tie it anew, or keep full drag under ${say.load(link.holds, full)}.`,
        related: [{ at: full, what: 'Full drag is said here.' }],
    };
}

/** N: what is equal on paper is equal. */
const HAIR = 1e-6;

function nameOf({ name, piece, joint }: LinkFigures, { line }: LineFigures): string {
    const runner = runnerOf(line)?.value.title ?? line.position.name;
    if (piece === 'leader') return joint ? `The ${name} of ${runner}` : `The leader of ${runner}`;
    return `The ${name} of ${line.outfit!.value.title}`;
}
