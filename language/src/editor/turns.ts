import { turnsInSteps } from '../plan/analyse/turns.ts';
import type {
    AnalysedPlan,
    CleanTurn,
    Figure,
    SideTurnFigures,
    TurnFigures,
    TurnLimit,
} from '../plan/figures.ts';
import { type Finding, messageOf } from '../plan/finding.ts';
import { listed } from '../plan/wording.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { judge } from '../rules/judge.ts';
import { ruleNamed, rules } from '../rules/registry.ts';
import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import type { LateAnalysis, Remark } from './late.ts';

/** Turns take too long for a keystroke: they are computed when nobody types, one side of one plan at a time. */
export const turnAnalysis: LateAnalysis = {
    name: 'turn',
    async analyse(sheet, pause) {
        const plans: AnalysedPlan[] = [];
        for (const analysed of sheet.plans)
            plans.push(analysed.plan.turn ? { ...analysed, turns: await turned(analysed, pause) } : analysed);
        return { findings: findingsOf(plans, sheet), remarks: plans.flatMap(remarkOn) };
    },
};

/** Follows a plan through its turns, both ways, with rests between. */
export async function turned(
    analysed: AnalysedPlan,
    pause: () => Promise<void>,
): Promise<Figure<TurnFigures>> {
    const steps = turnsInSteps(analysed);
    for (;;) {
        await pause();
        const step = steps.next();
        if (step.done) return step.value;
    }
}

/** What the whole of the rules finds now and did not find before. */
function findingsOf(plans: readonly AnalysedPlan[], sheet: CheckedSheet): Finding[] {
    if (!plans.some(({ turns }) => turns)) return [];
    const known = new Set(sheet.judgement.findings.map(keyOf));
    const cannotBeRead = sheet.findings.some(
        ({ rule, severity }) => severity === 'error' && !ruleNamed(rule),
    );
    return judge(sheet.resolved, plans, rules, sheet.memory).findings.filter(
        // In a text that could not be read to the end nothing is known to be idle.
        (finding) => !known.has(keyOf(finding)) && !(cannotBeRead && finding.rule === 'waiver-idle'),
    );
}

function keyOf(finding: Finding): string {
    return `${finding.rule} ${finding.at.start} ${messageOf(finding)}`;
}

/** `Turns cleanly down to 142 m to port (shotgun too slow), 63 m to starboard (short corner and long corner touch)`. */
export function remarkOn({ plan, turns }: AnalysedPlan): Remark[] {
    if (!turns?.known) return [];
    const like = plan.turn?.quantity ?? units.m;
    const [left, right] = [ending(turns.value.port), ending(turns.value.starboard)];
    const told = ({ radius }: CleanTurn) =>
        radius === undefined ? 'none' : print(radius, like, { digits: 0 });
    const why = ({ limit }: CleanTurn) => (limit ? ` (${shortly(limit)})` : '');
    const title =
        left.radius === undefined && right.radius === undefined
            ? `No turn that was looked at is clean${why(left)}`
            : told(left) + why(left) === told(right) + why(right)
              ? `Turns cleanly down to ${told(left)}${why(left)}`
              : `Turns cleanly down to ${told(left)} to port${why(left)}, ${told(right)} to starboard${why(right)}`;
    return [{ plan: plan.name, title }];
}

/** The tightest turn that both keeps lines apart and lures working: whichever of the two ends it. */
function ending({ noFoul, allWorking }: SideTurnFigures): CleanTurn {
    const { radius = Number.POSITIVE_INFINITY } = noFoul;
    return (allWorking.radius ?? Number.POSITIVE_INFINITY) > radius ? allWorking : noFoul;
}

function shortly(limit: TurnLimit): string {
    const names = listed(limit.lines.map(({ line }) => line.position.name));
    switch (limit.kind) {
        case 'foul':
            return `${names} touch`;
        case 'slack':
            return `${names} slack`;
        case 'slow':
            return `${names} too slow`;
        case 'unsettled':
            return `${names} not settled`;
    }
}
