import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Day } from '../plan/model.ts';
import type { Checked, Run } from '../reports/checked.ts';
import { nearest } from '../units/nearest.ts';
import { Refusal } from './refusal.ts';

export interface ChosenPlan {
    readonly file: Checked;
    readonly plan: AnalysedPlan;
    /** What concerns the plan. */
    readonly findings: readonly Finding[];
    /** The days of the file: those that fish this plan concern it too. */
    readonly days: readonly Day[];
}

/** What a file that is made of a plan is called after, behind its file: the plan, where that file makes several. */
export function suffixOf({ file, plan }: Pick<ChosenPlan, 'file' | 'plan'>): string {
    return file.plans.length > 1 || file.plansOfDays?.length ? `-${plan.plan.name}` : '';
}

/**
 * The plans of a run, in the order of the text, or the one of a name.
 *
 * @throws Refusal where there is none
 */
export function chosenPlans(run: Run, name: string | undefined): readonly ChosenPlan[] {
    const plans = run.files.flatMap((file): ChosenPlan[] => {
        const days = file.days ?? [];
        const own = file.plans.map((plan) => {
            return { plan, findings: file.concerning.get(plan.plan.name) ?? [] };
        });
        return [...own, ...(file.plansOfDays ?? [])].map((one) => ({ file, ...one, days }));
    });
    const where = run.files.map((file) => file.path).join(', ');
    if (plans.length === 0) throw new Refusal(`There is no spread in ${where}.`);
    if (name === undefined) return plans;
    const chosen = plans.filter(({ plan }) => plan.plan.name === name);
    if (chosen.length > 0) return chosen;
    const names = plans.map(({ plan }) => plan.plan.name);
    const meant = nearest(name, names);
    throw new Refusal(
        `There is no spread ${name} in ${where}. ${meant ? `Did you mean ${meant}?` : `There is ${names.join(', ')}.`}`,
    );
}

/** So many files are told of one by one. */
const few = 3;

/** Errors in the files, said where something is made of them: what is wrong in a plan is wrong in its picture. */
export function warnOfErrors(run: Run, log: (text: string) => void): void {
    const faulty = run.files.filter(({ findings }) => findings.some(({ severity }) => severity === 'error'));
    if (faulty.length > few) {
        log(`layback: ${faulty.length} files have errors: layback check says which.`);
        return;
    }
    for (const { path, findings } of faulty) {
        const errors = findings.filter((finding) => finding.severity === 'error').length;
        const what = errors === 1 ? 'an error' : `${errors} errors`;
        log(`layback: ${path} has ${what}: layback check ${path} says which.`);
    }
}
