import type { AnalysedPlan } from '../plan/figures.ts';
import type { JudgedFile, Problem, Rule } from './rule.ts';
import type { Values } from './settings.ts';

/*
 * A rule whose inputs did not change does not run again. Its inputs are the figures (turns only where it reads them)
 * and its settings; both are compared by identity, part by part, which is right because nothing of them ever changes.
 */

type Given = Values<Rule['settings']>;
type Parts = Readonly<Record<string, unknown>>;

interface Said {
    readonly inputs: Parts;
    readonly values: Given;
    readonly problems: readonly Problem[];
}

const ofPlans = new WeakMap<object, Map<Rule, Said>>();
const ofFiles = new WeakMap<object, Map<Rule, Said>>();

/** What a rule says of a plan with these settings. */
export function said(rule: Rule, analysis: AnalysedPlan, values: Given): readonly Problem[] {
    if (!rule.check) return [];
    const { turns, ...first } = analysis;
    const inputs: Parts = { ...first, ...(rule.reads === 'turns' && { turns }) };
    return remembered(ofPlans, analysis.plan, { rule, inputs, values }, (report) =>
        rule.check!(analysis, values, report),
    );
}

/** What a rule says of a file as a whole. */
export function saidOfFile(rule: Rule, file: JudgedFile, values: Given): readonly Problem[] {
    if (!rule.checkFile) return [];
    const { uri, version, ...inputs } = file;
    return remembered(
        ofFiles,
        file.spreads,
        { rule, inputs: { ...inputs, version: version?.value }, values },
        (report) => rule.checkFile!(file, values, report),
    );
}

function remembered(
    memory: WeakMap<object, Map<Rule, Said>>,
    about: object,
    { rule, inputs, values }: { readonly rule: Rule; readonly inputs: Parts; readonly values: Given },
    run: (report: (problem: Problem) => void) => void,
): readonly Problem[] {
    const known = memory.get(about) ?? new Map<Rule, Said>();
    memory.set(about, known);
    const before = known.get(rule);
    if (before && isSame(before.inputs, inputs) && isSame(before.values, values)) return before.problems;
    const problems: Problem[] = [];
    run((problem) => problems.push(problem));
    known.set(rule, { inputs, values, problems });
    return problems;
}

function isSame(a: Parts, b: Parts): boolean {
    const names = Object.keys(a);
    return names.length === Object.keys(b).length && names.every((name) => name in b && a[name] === b[name]);
}
