import type { Spread, Waiver } from '../plan/model.ts';
import type { Problem, WaiverOutcome } from './rule.ts';

/** The waivers of one plan at work. */
export interface WaiversAtWork {
    /**
     * Whether the plan waives the problem; every waiver that covers it counts as used, also where the problem would
     * give way to its cause: it would be told as soon as that is mended.
     */
    cover(rule: string, problem: Problem): boolean;
    /** @param judged  whether a rule was among those that spoke: a waiver of another one is not idle yet */
    outcomes(judged: (rule: string) => boolean): readonly WaiverOutcome[];
}

export function waiversOf(plan: Spread): WaiversAtWork {
    const counts = new Map(plan.waivers.map((waiver) => [waiver, 0]));
    return {
        cover(rule, problem) {
            const covering = plan.waivers.filter(
                (waiver) => !reasonToIgnore(waiver, plan) && covers(waiver, rule, problem),
            );
            for (const waiver of covering) counts.set(waiver, counts.get(waiver)! + 1);
            return covering.length > 0;
        },
        outcomes(judged) {
            return [...counts]
                .filter(([waiver]) => judged(waiver.rule.value))
                .map(([waiver, waived]) => {
                    const idle =
                        reasonToIgnore(waiver, plan) ?? (waived === 0 ? 'nothing to waive' : undefined);
                    return { waiver, waived, ...(idle && { idle }) };
                });
        },
    };
}

/** Dates are judged on the plan's own day; a plan without one has no day on which a waiver could run out. */
function reasonToIgnore({ because, until }: Waiver, { date }: Spread): WaiverOutcome['idle'] {
    if (!because?.value.trim()) return 'no reason';
    return until && date && until.value < date.value ? 'run out' : undefined;
}

function covers(waiver: Waiver, rule: string, { positions = [], together }: Problem): boolean {
    if (waiver.rule.value !== rule) return false;
    const concerned = positions.map(({ position }) => position.name);
    const named = waiver.positions.map(({ value }) => value.name);
    if (named.every((name) => concerned.includes(name))) return true;
    // What is said of several lines at once is waived for several at once.
    return together !== undefined && concerned.length > 0 && concerned.every((name) => named.includes(name));
}
