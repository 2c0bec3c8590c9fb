import { turnsInSteps } from '../plan/analyse/turns.ts';
import type { AnalysedPlan, CleanTurn, Figure, TurnFigures } from '../plan/figures.ts';
import { type Finding, messageOf } from '../plan/finding.ts';
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

/** `Turns cleanly down to 48 m to port, 52 m to starboard`. */
export function remarkOn({ plan, turns }: AnalysedPlan): Remark[] {
    if (!turns?.known) return [];
    const { port, starboard } = turns.value;
    const radius = ({ radius }: CleanTurn) =>
        radius === undefined ? undefined : print(radius, plan.turn?.quantity ?? units.m);
    const [left, right] = [radius(port.noFoul), radius(starboard.noFoul)];
    const title =
        left === right
            ? left === undefined
                ? 'No turn that was looked at is clean'
                : `Turns cleanly down to ${left}`
            : `Turns cleanly down to ${left ?? 'none'} to port, ${right ?? 'none'} to starboard`;
    return [{ plan: plan.name, title }];
}
