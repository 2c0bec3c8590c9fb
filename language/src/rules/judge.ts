import type { AnalysedPlan } from '../plan/figures.ts';
import { type Finding, messageOf, type Severity } from '../plan/finding.ts';
import type { Spread } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';
import { Memory } from './memory.ts';
import { placeInPlan } from './placing.ts';
import { rules as everyRule } from './registry.ts';
import { type JudgedFile, originOf, type Problem, placeOf, type Rule, type Where } from './rule.ts';
import { capital } from './say.ts';
import { type Strictness, strictness } from './severities.ts';
import { saidOnce } from './together.ts';
import { waiversOf } from './waivers.ts';

/** What was found in one file. */
export interface Judgement {
    /** Each cause once, in the order of the text. */
    readonly findings: readonly Finding[];
    /** What concerns each plan, by its name, also where another plan shares the cause. */
    readonly plans: ReadonlyMap<string, readonly Finding[]>;
}

/**
 * Judges a file and the plans in it. Pure: the same text gives the same findings, on any day.
 *
 * @param these  a part of the rules, where some are to speak sooner than others
 * @param memory  of what they said of this very reading of the file
 */
export function judge(
    file: JudgedFile,
    analyses: readonly AnalysedPlan[],
    these: readonly Rule[] = everyRule,
    memory = new Memory(),
): Judgement {
    const causes = new Map<string, Finding>();
    const plans = new Map<string, readonly Finding[]>();
    const taken = new Set(
        file.definitions.flatMap((each) => (each.kind === 'spread' && each.used ? each.name : [])),
    );
    // A plan before those that are like it, so that what they share is shown where it was said.
    for (const analysis of [...analyses].sort((a, b) => a.plan.like.length - b.plan.like.length)) {
        const heard = isPreset(analysis.plan, taken)
            ? these.filter(({ spares }) => spares !== 'presets')
            : these;
        const found = findingsIn(analysis, heard, memory);
        plans.set(analysis.plan.name, found.map(({ finding }) => finding).sort(inTextOrder));
        for (const { cause, finding } of found) {
            // What one plan takes lightly may disqualify the other.
            const before = causes.get(cause);
            if (!before || isGraver(finding, before)) causes.set(cause, finding);
        }
    }
    for (const { cause, finding } of findingsAbout(file, these, memory)) causes.set(cause, finding);
    return { findings: [...causes.values()].sort(inTextOrder), plans };
}

const gravity: readonly Severity[] = ['off', 'hint', 'warning', 'error'];

function isGraver(a: Finding, b: Finding): boolean {
    return gravity.indexOf(a.severity) > gravity.indexOf(b.severity);
}

/** Whether others are like a plan that could not be fished as it stands. */
function isPreset({ name, boat, speed }: Spread, taken: ReadonlySet<string>): boolean {
    return !(boat && speed) && taken.has(name);
}

interface Found {
    /** Equal for the same thing said about the same words, whichever plan it was found in. */
    readonly cause: string;
    readonly finding: Finding;
}

function findingsIn(analysis: AnalysedPlan, these: readonly Rule[], memory: Memory): readonly Found[] {
    const { plan } = analysis;
    const found = new Map<string, Found>();
    const waivers = waiversOf(plan);
    const collect = (rule: Rule, strict: Strictness, problem: Problem) => {
        const one = asFinding(rule, strict, problem, plan);
        found.set(one.cause, joined(found.get(one.cause), one));
    };
    const heard = these
        .map((rule) => ({ rule, strict: strictness(rule, plan.settings) }))
        .filter(({ strict }) => strict.severity !== 'off');
    const said = new Map<string, readonly Problem[]>();
    for (const { rule, strict } of heard) {
        const problems = memory.said(rule, analysis, strict.values);
        if (problems.length > 0) said.set(rule.name, problems);
    }
    const waived = new Set<Problem>();
    for (const { rule } of heard) {
        for (const problem of said.get(rule.name) ?? []) {
            if (waivers.cover(rule.name, problem)) waived.add(problem);
        }
    }
    const givesWay = ({ givesWayTo = [] }: Rule, problem: Problem): boolean =>
        givesWayTo.some((name) =>
            said.get(name)?.some((cause) => concernsAll(cause, problem) && isTold(name, cause)),
        );
    // A cause that the crew waived is not told, and whoever waived it did not speak of its effects.
    const isTold = (name: string, cause: Problem) => !waived.has(cause) || givesWay(ruleOf(name), cause);
    const ruleOf = (name: string) => heard.find(({ rule }) => rule.name === name)!.rule;
    for (const { rule, strict } of heard) {
        const told = said
            .get(rule.name)
            ?.filter((problem) => !waived.has(problem) && !givesWay(rule, problem));
        if (!told) continue;
        for (const problem of saidOnce(told, (one) => shownIn(one, plan))) collect(rule, strict, problem);
    }
    // Of a plan that says no turn the rules about turns have nothing to say, sooner or later.
    const outcomes = waivers.outcomes((name) => {
        const isIt = (rule: Rule) => rule.name === name && rule.check !== undefined;
        return (
            these.some(isIt) || (!plan.turn && everyRule.some((rule) => rule.reads === 'turns' && isIt(rule)))
        );
    });
    for (const { rule, strict } of heard) {
        rule.checkWaivers?.(plan, outcomes, (problem) => collect(rule, strict, problem));
    }
    return [...found.values()];
}

/** Whether a problem is about every line that another one is about. */
function concernsAll({ positions = [] }: Problem, other: Problem): boolean {
    const names = positions.map(({ position }) => position.name);
    return (other.positions ?? []).every(({ position }) => names.includes(position.name));
}

/** One cause that two lines share is one finding about both. */
function joined(before: Found | undefined, one: Found): Found {
    if (!before) return one;
    const positions = [...new Set([...before.finding.positions, ...one.finding.positions])];
    return { cause: one.cause, finding: { ...before.finding, positions } };
}

/**
 * A file takes the settings of the plans in it, the first plan's word before the next one's; what is said of a log
 * those of the plan in use, which the log's own file seldom holds.
 */
function findingsAbout(file: JudgedFile, these: readonly Rule[], memory: Memory): readonly Found[] {
    const said = file.spreads.flatMap((spread) => spread.settings);
    const found: Found[] = [];
    for (const rule of these) {
        if (!rule.checkFile) continue;
        const ofFile = strictness(rule, said);
        for (const problem of memory.saidOfFile(rule, file, ofFile.values)) {
            const strict = problem.judgedBy ? strictness(rule, problem.judgedBy.settings) : ofFile;
            if (strict.severity !== 'off') found.push(asFinding(rule, strict, problem));
        }
    }
    return found;
}

function asFinding(rule: Rule, strict: Strictness, problem: Problem, plan?: Spread): Found {
    const { what, why, remedy, unnecessary } = problem;
    const said = placeOf(wheresOf(problem)[0]!);
    const names = (problem.positions ?? []).map(({ position }) => position.name);
    const at = plan ? shownIn(problem, plan) : said;
    const related = (problem.related ?? []).flatMap((one) =>
        one.at ? [{ at: placeOf(one.at), what: capital(one.what) }] : [],
    );
    const finding: Finding = {
        rule: rule.name,
        severity: severityOf(strict, problem),
        at,
        what: capital(what),
        ...(why !== undefined && { why }),
        ...(remedy !== undefined && { remedy }),
        related: isSame(at, said) ? related : [{ at: said, what: 'It is said here.' }, ...related],
        fixes: (problem.fixes ?? []).filter((fix) => fix !== undefined),
        positions: names,
        ...(unnecessary && { unnecessary }),
        ...(plan && { plan: plan.name }),
    };
    return { cause: [rule.name, said.uri, said.start, said.end, messageOf(finding)].join('\n'), finding };
}

/** Where in the plan a problem is shown. */
function shownIn(problem: Problem, plan: Spread): Place {
    const wheres = wheresOf(problem);
    const origins = wheres.flatMap((where: Where) => originOf(where) ?? []);
    if (origins.length === 0) return placeOf(wheres[0]!);
    const concerned = (problem.positions ?? []).flatMap(
        (one) => plan.lines.find(({ position }) => position.name === one.position.name) ?? [],
    );
    return placeInPlan(origins, plan, concerned);
}

function wheresOf({ at }: Problem): readonly Where[] {
    return isOne(at) ? [at] : at;
}

/** A leader is a place to point at, and it has a length: only a list is a list. */
function isOne(at: Problem['at']): at is Where {
    return !Array.isArray(at);
}

function severityOf({ severity, chosen }: Strictness, problem: Problem): Exclude<Severity, 'off'> {
    return (chosen ? severity : (problem.severity ?? severity)) as Exclude<Severity, 'off'>;
}

function isSame(a: Place, b: Place): boolean {
    return a.uri === b.uri && a.start === b.start && a.end === b.end;
}

function inTextOrder(a: Finding, b: Finding): number {
    return (
        compare(a.at.uri, b.at.uri) ||
        a.at.start - b.at.start ||
        compare(a.rule, b.rule) ||
        compare(messageOf(a), messageOf(b))
    );
}

function compare(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
