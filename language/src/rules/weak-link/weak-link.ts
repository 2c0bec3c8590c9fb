import type { DragFigure, LineFigures, LinkFigures, WeakestFigures } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { exceeds } from '../../units/compare.ts';
import { leaderOf, runnerOf } from '../gear.ts';
import { known, tackledLines } from '../neighbours.ts';
import { type Problem, rule } from '../rule.ts';
import { capital, say, sayApart } from '../say.ts';
import { physics } from '../standing.ts';

/** A link that parts before the line does, or before the drag gives. */
export const weakLink = rule({
    name: 'weak-link',
    group: 'tackle',
    standing: physics('Every link at its rated strength, or at its share of what it joins.'),
    severity: 'warning',
    summary: 'A leader, crimp, swivel or knot is weaker than the line, or than the drag that it has to bear.',
    settings: {},

    check(analysis, _, report) {
        for (const figures of tackledLines(analysis)) {
            const weakest = figures.weakest && known(figures.weakest);
            // The weakest that is at fault, and only that: mended, the next one shows.
            for (const link of weakest?.ranked ?? []) {
                const fault = underLine(link, weakest!, figures) ?? underDrag(link, figures);
                if (!fault) continue;
                report({ ...fault, at: link, positions: [figures.line] });
                break;
            }
            const thin = thinLeader(figures.line);
            if (thin) report({ ...thin, severity: 'hint', positions: [figures.line] });
        }
    },
});

/** Of one material the thinner is the weaker, also where nobody wrote down its strength. */
function thinLeader(line: SpreadLine): Problem | undefined {
    const [leader, main] = [leaderOf(line), line.outfit?.value.line];
    if (!leader?.diameter || !main?.diameter || leader.breaks) return undefined;
    if (!leader.material || leader.material.value !== main.material?.value) return undefined;
    if (leader.diameter.si >= main.diameter.si) return undefined;
    const [thin, thick] = sayApart.length(leader.diameter, main.diameter);
    return {
        at: leader.diameter,
        what: `The leader of ${runnerOf(line)?.value.title ?? line.position.name} is ${thin} ${leader.material.value}, and the line of ${line.outfit!.value.title} is ${thick} of the same.`,
        why: 'It parts first, and the fish swims off with hook and leader.',
        remedy: 'Rig a thicker one, or write down what it breaks at.',
        related: [{ at: main.diameter, what: 'The diameter of the line is said here.' }],
    };
}

type Fault = Omit<Problem, 'at'>;

/** The knots of the line itself are always a little weaker than the line; whatever is beyond them should not be. */
function underLine(link: LinkFigures, { line }: WeakestFigures, figures: LineFigures): Fault | undefined {
    const beyond = link.piece === 'leader' || link.joint === 'swivel' || link.joint === 'crimp';
    if (!beyond || !line || !exceeds(line.holds, link.holds)) return undefined;
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

/** Drag grows as the spool empties, so a link that holds on a full spool may part at the end of a run. */
function underDrag(link: LinkFigures, figures: LineFigures): Fault | undefined {
    const most = stages.flatMap((stage) => figures.drags.find((drag) => drag.stage === stage) ?? [])[0];
    const isLine = link.piece === 'line' && !link.joint;
    if (!most || (!link.joint && !isLine)) return undefined;
    // How near an emptying spool takes the line itself to its class, `drag-over-class` tells.
    const levels = levelsOf(most).slice(0, isLine ? 1 : undefined);
    const level = levels.find(({ force }) => exceeds(force, link.holds));
    if (!level || (isLine && (level.share ?? 0) >= 1)) return undefined;
    const remedy = isLine ? 'Spool up with stronger line' : 'Tie it anew';
    const there = level.force === most.force.si ? most.force : level.force;
    const [holds, drag] = sayApart.load(link.holds, there, most.force);
    return {
        what: `${nameOf(link, figures)} holds ${holds}, and ${most.stage} drag is ${drag}${level.when}.`,
        why: 'It parts before the reel gives.',
        remedy:
            level.when === ''
                ? `${remedy}, or keep ${most.stage} drag under ${holds}.`
                : `${remedy}, or ease off as the spool empties.`,
        related: [{ at: most.force, what: `${capital(most.stage)} drag is said here.` }],
    };
}

/** The last stage that is set decides: who says no full drag stays at the one before. */
const stages = ['full', 'hooked', 'set'] as const;

/** The spool as it was filled, then as it empties: nobody fights a fish on the last quarter by choice. */
function levelsOf({ force, share, spool, afterRun }: DragFigure) {
    const emptier = spool.filter(({ left }) => left < 1 && left >= LEAST_LEFT);
    return [
        { force: force.si, share, when: '' },
        ...emptier.map((level) => ({ ...level, when: ` with ${leftWords(level.left)} of the line left` })),
        ...(typeof afterRun === 'object' ? [{ ...afterRun, when: ' after the run' }] : []),
    ];
}

/** Of what the spool holds. Estimate: the last mark that drags are told at. */
const LEAST_LEFT = 0.25;

function leftWords(left: number): string {
    return left === 0.75
        ? 'three quarters'
        : left === 0.5
          ? 'half'
          : left === 0.25
            ? 'a quarter'
            : say.share(left);
}

function nameOf({ name, piece, joint }: LinkFigures, { line }: LineFigures): string {
    const runner = runnerOf(line)?.value.title ?? line.position.name;
    if (piece === 'leader') return joint ? `The ${name} of ${runner}` : `The leader of ${runner}`;
    return `The ${name} of ${line.outfit!.value.title}`;
}
