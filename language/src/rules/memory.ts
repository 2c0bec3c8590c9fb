import type { AnalysedPlan } from '../plan/figures.ts';
import type { Spread } from '../plan/model.ts';
import type { JudgedFile, Problem, Rule } from './rule.ts';
import type { Values } from './settings.ts';

/**
 * What rules said of one file and the plans in it. A rule whose inputs did not change does not run again.
 *
 * Its inputs are the figures (turns only where it reads them) and its settings; both are compared by identity, part by
 * part, which is right because nothing of them ever changes. It lives as long as the reading that it is about, and not
 * in a weak map of plans: what hangs on such a map outlives every quick sweep of the engine's, a tree a keystroke.
 */
export class Memory {
    private readonly keeps: boolean;
    private readonly ofPlans = new Map<Spread, OfPlan>();
    private readonly ofFile = new Map<Rule, Said>();

    /** @param keeps  false where nobody asks twice: a record for each rule and plan takes more than the plans do */
    constructor(keeps = true) {
        this.keeps = keeps;
    }

    /** What a rule says of a plan with these settings. */
    said(rule: Rule, analysis: AnalysedPlan, values: Given): readonly Problem[] {
        if (!rule.check) return nothing;
        const run: Run = (report) => rule.check!(analysis, values, report);
        if (!this.keeps) return heardFrom(run);
        const { said, first } = this.of(analysis);
        const inputs: Parts = rule.reads === 'turns' ? { ...analysis } : first;
        return remembered(said, { rule, inputs, values }, run);
    }

    /** What a rule says of the file as a whole. */
    saidOfFile(rule: Rule, file: JudgedFile, values: Given): readonly Problem[] {
        if (!rule.checkFile) return nothing;
        const run: Run = (report) => rule.checkFile!(file, values, report);
        if (!this.keeps) return heardFrom(run);
        const { uri, version, ...rest } = file;
        const inputs: Parts = { ...rest, version: version?.value };
        return remembered(this.ofFile, { rule, inputs, values }, run);
    }

    private of(analysis: AnalysedPlan): OfPlan {
        const known = this.ofPlans.get(analysis.plan);
        if (known?.analysis === analysis) return known;
        const { turns, ...first } = analysis;
        const now = { analysis, first, said: known?.said ?? new Map() };
        this.ofPlans.set(analysis.plan, now);
        return now;
    }
}

/** What was said of a plan, and the figures that it was last asked about; `first` without turns. */
interface OfPlan {
    readonly analysis: AnalysedPlan;
    readonly first: Parts;
    readonly said: Map<Rule, Said>;
}

type Given = Values<Rule['settings']>;
type Run = (report: (problem: Problem) => void) => void;
type Parts = Readonly<Record<string, unknown>>;

interface Said {
    readonly inputs: Parts;
    readonly values: Given;
    readonly problems: readonly Problem[];
}

function remembered(
    known: Map<Rule, Said>,
    { rule, inputs, values }: { readonly rule: Rule; readonly inputs: Parts; readonly values: Given },
    run: Run,
): readonly Problem[] {
    const before = known.get(rule);
    if (before && isSame(before.inputs, inputs) && isSame(before.values, values)) return before.problems;
    const problems = heardFrom(run);
    known.set(rule, { inputs, values, problems });
    return problems;
}

/** Most rules have nothing to say of most plans. */
const nothing: readonly Problem[] = [];

function heardFrom(run: Run): readonly Problem[] {
    let problems: Problem[] | undefined;
    run((problem) => {
        problems ??= [];
        problems.push(problem);
    });
    return problems ?? nothing;
}

function isSame(a: Parts, b: Parts): boolean {
    if (a === b) return true;
    const names = Object.keys(a);
    return names.length === Object.keys(b).length && names.every((name) => name in b && a[name] === b[name]);
}
