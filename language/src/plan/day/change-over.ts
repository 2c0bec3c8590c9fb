import { analyse } from '../analyse.ts';
import type { Difference } from '../compare/differences.ts';
import type { AnalysedPlan, LineFigures } from '../figures.ts';
import type { Spread } from '../model.ts';
import { doingsOf } from './doings.ts';

/** One thing to do on the way from one spread to another. */
export type Step =
    /** Of the helm or of everybody: speed, course, method, who does what. */
    | { readonly kind: 'all'; readonly difference: Difference }
    /** A line comes in: for good, for another place, or to be rigged anew. */
    | {
          readonly kind: 'in';
          readonly line: LineFigures;
          readonly why: 'out' | 'moves' | 'changes';
          /** Where it goes, for one that moves. */
          readonly to?: string;
      }
    /** A line goes out as the other spread has it. */
    | { readonly kind: 'set'; readonly line: LineFigures; readonly from?: string }
    /** A line stays out and is handled where it is. */
    | {
          readonly kind: 'adjust';
          readonly line: LineFigures;
          readonly was: LineFigures;
          readonly differences: readonly Difference[];
      };

/** What has to be done to get from one spread to another, first to last. */
export interface ChangeOver {
    readonly before: AnalysedPlan;
    readonly after: AnalysedPlan;
    readonly steps: readonly Step[];
    /** Sentences: what was not known about the orders. */
    readonly remarks: readonly string[];
}

/**
 * The way from one spread to another, from their comparison and their own orders: what is in the way comes in first, in
 * the order in which the first spread is taken in; then everything goes where the second one has it, in the order in
 * which that one is set. A stated order of setting goes before the computed one.
 */
export function changeOver(from: Spread | AnalysedPlan, to: Spread | AnalysedPlan): ChangeOver {
    const [before, after] = [analysed(from), analysed(to)];
    const doings = doingsOf(before.plan, after.plan);
    const was = byPosition(before);
    const taken = ordered(before, 'take in').flatMap((line): Step[] => {
        const doing = doings.lines.get(nameOf(line));
        if (!doing?.in) return [];
        return [{ kind: 'in', line, why: doing.in, ...(doing.to !== undefined && { to: doing.to }) }];
    });
    const out = ordered(after, 'set').flatMap((line): Step[] => {
        const doing = doings.lines.get(nameOf(line)) ?? { differences: [] };
        if (doing.set) return [{ kind: 'set', line, ...(doing.from !== undefined && { from: doing.from }) }];
        const old = was.get(nameOf(line));
        if (doing.in || !old || (doing.differences.length === 0 && !isElsewhere(old, line))) return [];
        return [{ kind: 'adjust', line, was: old, differences: doing.differences }];
    });
    const unknown = [before, after].filter(
        ({ order }) => !order.known && (taken.length > 1 || out.length > 1),
    );
    return {
        before,
        after,
        steps: [...doings.all.map((difference): Step => ({ kind: 'all', difference })), ...taken, ...out],
        remarks: [
            ...new Set(
                unknown.map(
                    ({ plan, order }) =>
                        `${plan.title}: no order was computed. ${order.known ? '' : order.reason}`,
                ),
            ),
        ],
    };
}

/** Less than this, m, nobody lets a line back. */
const worthIt = 0.5;

/** Whether a line that is counted in waves runs elsewhere: with another speed its wave has another place. */
export function isElsewhere(was: LineFigures, is: LineFigures): boolean {
    if (!was.astern.known || !is.astern.known || is.line.back?.kind !== 'wave') return false;
    return Math.abs(is.astern.value - was.astern.value) >= worthIt;
}

const analyses = new WeakMap<Spread, AnalysedPlan>();

function analysed(plan: Spread | AnalysedPlan): AnalysedPlan {
    if (!('kind' in plan)) return plan;
    const known = analyses.get(plan) ?? analyse(plan);
    analyses.set(plan, known);
    return known;
}

/** The lines of a plan in the order in which they are handled; those of which no order is known come last. */
function ordered({ plan, lines, order }: AnalysedPlan, what: 'set' | 'take in'): LineFigures[] {
    const computed = !order.known ? [] : what === 'set' ? order.value.set : order.value.takeIn;
    const stated = plan.orders
        .findLast((each) => each.what === 'set')
        ?.positions.map(({ value }) => value.name);
    const first = (stated ?? []).flatMap((name) => lines.find((line) => nameOf(line) === name) ?? []);
    // Set backwards, where the team says how to set.
    const own = what === 'set' ? first : [...first].reverse();
    const rest = [...computed, ...lines].filter((line) => !own.includes(line));
    return [
        ...new Set(
            what === 'set'
                ? [...own, ...rest]
                : [...rest.filter((line) => computed.includes(line)), ...own, ...rest],
        ),
    ];
}

function byPosition({ lines }: AnalysedPlan): ReadonlyMap<string, LineFigures> {
    return new Map(lines.map((line) => [nameOf(line), line]));
}

function nameOf({ line }: LineFigures): string {
    return line.position.name;
}
