import type { DragFigure } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import { replaceValue, toldAs } from '../fixes.ts';
import { type Problem, rule } from '../rule.ts';
import { capital, say } from '../say.ts';
import { share } from '../settings.ts';
import { practice } from '../standing.ts';

/** A stage of drag is above the class, or above the share agreed. */
export const dragOverClass = rule({
    name: 'drag-over-class',
    group: 'drag and strike',
    standing: practice(
        'The shares are practice. That drag grows as the spool empties is physics: force goes as one over the radius of the line left.',
    ),
    severity: 'warning',
    summary: 'A stage of drag is above the line class at some spool level, or above the share agreed.',
    settings: {
        hooked: share('33.3 %', ['5 %', '100 %'], 'Most hooked drag, of the line class.'),
        full: share('70 %', ['10 %', '100 %'], 'Most full drag, of the line class.'),
    },

    check(analysis, agreed, report) {
        for (const figures of analysis.lines) {
            const outfit = figures.line.outfit?.value;
            const lineClass = outfit?.line?.lineClass;
            if (!lineClass) continue;
            for (const drag of figures.drags) {
                const most = drag.stage === 'full' ? agreed.full : agreed.hooked;
                const fault = gravest(drag, most, lineClass);
                if (!fault) continue;
                const { where, ...wrong } = fault;
                const { name } = figures.line.position;
                report({
                    at: drag.force,
                    related: [{ at: lineClass, what: `The class of ${outfit.title}.` }],
                    positions: [figures.line],
                    ...wrong,
                    together: {
                        kind: `${drag.stage} ${where}`,
                        name,
                        what: (names) => `${capital(drag.stage)} drag at ${names} ${where}.`,
                        why: where === AGREED ? `The most agreed is ${say.share(most)}.` : wrong.why!,
                        each: { at: lineClass, what: `At ${name}: ${wrong.what}` },
                    },
                });
            }
        }
    },
});

/** The gravest thing that is wrong with a stage, and only that: they have one cause and one cure. */
function gravest(drag: DragFigure, most: number, lineClass: Measure): Wrong | undefined {
    const { stage, force, share: ofClass, spool } = drag;
    if (ofClass === undefined) return undefined;
    // An empty spool holds no fish, so what the drag would be there does not matter.
    const levels = spool.filter(({ left }) => left > 0);
    const level = levels.find(({ share }) => isOver(share, 1));
    if (!level && !isOver(ofClass, Math.min(most, 1))) return undefined;

    const whole = force.si / ofClass;
    const holds = force.si / Math.max(ofClass, ...levels.map(({ share = 0 }) => share));
    const cure = Math.min(whole * most * SLACK, holds);
    const fixes = [lower(drag, cure)];
    const lowered = toldAs(force, cure, 'down');
    const [name, theClass] = [
        `${capital(stage)} drag ${say.load(force)}`,
        `the ${say.lineClass(lineClass)} class`,
    ];
    const what = `${name} is ${say.share(ofClass)} of ${theClass}.`;
    if (isOver(ofClass, 1)) {
        const why = 'A line that keeps its class breaks before the reel gives.';
        const remedy = `Lower it to ${lowered} or use a heavier outfit.`;
        return { where: 'is above the line class', severity: 'error', what, why, remedy, fixes };
    }
    if (isOver(ofClass, most)) {
        const why = agreedInWords(stage, most, whole, force);
        return { where: AGREED, what, why, remedy: 'Lower it or use a heavier outfit.', fixes };
    }
    const { left, force: there, share = 0 } = level!;
    return {
        where: 'grows above the line class as the spool empties',
        what: `${name} grows to ${say.load(there, force)} with ${say.share(left)} of the line left, ${say.share(share)} of ${theClass}.`,
        why: 'Drag grows as the spool empties, and the line breaks at the end of a long run.',
        remedy: `Lower it to ${lowered}, or ease it as line goes out.`,
        fixes,
    };
}

interface Wrong extends Pick<Problem, 'what' | 'why' | 'remedy' | 'fixes' | 'severity'> {
    /** The same in short, as a sentence about several lines ends. */
    readonly where: string;
}

const AGREED = 'is above the share agreed';

/** Usual shares, common practice: a quarter to a third hooked, half to 70 % at the lever's end. */
function agreedInWords(stage: DragFigure['stage'], most: number, whole: number, like: Measure): string {
    const [least, greatest] = stage === 'full' ? [0.5, 0.7] : [0.25, 0.333];
    if (Math.abs(most - greatest) > 1e-9)
        return `The most agreed is ${say.share(most)} (${atMost(whole * most, like)}).`;
    const from = say.load(whole * least, like).split(' ')[0];
    const range = `${least * 100}–${say.share(greatest)} (${from}–${atMost(whole * greatest, like)})`;
    return `Common practice is ${range}${stage === 'set' ? ', and that with a fish on' : ''}.`;
}

/** A limit as a load, rounded so that it is kept by whoever sets what is said: 17 lb, and not 18, of 17.6. */
function atMost(load: number, like: Measure): string {
    if (like.quantity?.unit.dimension === 'share') return say.load(load, like);
    return toldAs(like, load * SLACK, 'down');
}

/** Crews agree on whole per cents, and half of one more is not over; the class itself is a limit. */
function isOver(part: number | undefined, limit: number): boolean {
    return part !== undefined && part > limit + (limit < 1 ? 0.005 : 1e-9);
}

/** A hair, so that a third of 24 kg is 8 kg and not 7.9. */
const SLACK = 1.002;

function lower({ stage, force }: DragFigure, to: number) {
    return replaceValue((text) => `Lower ${stage} drag to ${text}`, force, to, 'down');
}
