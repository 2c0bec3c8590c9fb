import { type ToldChange, tell } from '../../drawing/scene-compare.ts';
import { withTurns } from '../../plan/analyse/turns.ts';
import { compare } from '../../plan/compare/compare.ts';
import type { Pair, Versioned } from '../../plan/compare/pairs.ts';
import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Finding } from '../../plan/finding.ts';
import { speechOf } from '../figures-speech.ts';
import { type FigureChange, figuresApart } from './figures-apart.ts';
import { type FindingsApart, findingsApart } from './findings-apart.ts';
import { type TurnChange, turnsApart } from './turns-apart.ts';

/** A plan in one version, with all that follows from it. */
export interface Version extends Versioned {
    readonly plan: AnalysedPlan;
    /** Its path as reports print it. */
    readonly shown: string;
    /** What concerns it. */
    readonly findings: readonly Finding[];
}

/** A plan that only one version has. */
export interface LonePlan {
    readonly path: string;
    readonly name: string;
    readonly title: string;
}

/** What became of one plan, and what follows from it. */
export interface PlanChange {
    readonly before: LonePlan;
    readonly after: LonePlan;
    /** What was decided otherwise, the plan's own names and place included. */
    readonly told: readonly string[];
    readonly changes: readonly ToldChange[];
    /** Computed figures that can be read to be others. */
    readonly figures: readonly FigureChange[];
    readonly findings: FindingsApart;
    /** The tightest clean turns, where they are others. */
    readonly turns: readonly TurnChange[];
    /** The orders of setting and taking in, where they are others. */
    readonly orders: readonly OrderChange[];
}

export interface OrderChange {
    readonly of: 'setting' | 'taking in';
    /** Positions; none where no order is known. */
    readonly before: readonly string[];
    readonly after: readonly string[];
}

/** Two versions of a team's plans. */
export interface Comparison {
    /** What the versions are called: a file, a folder, a revision. */
    readonly before: string;
    readonly after: string;
    readonly changed: readonly PlanChange[];
    readonly come: readonly LonePlan[];
    readonly gone: readonly LonePlan[];
    /** Plans in which nothing is otherwise. */
    readonly same: readonly LonePlan[];
    /** Of files, and not of a plan: a text that cannot be read. */
    readonly findings: FindingsApart;
}

/** Versions compared by what they mean and by what follows, pair by pair. */
export function comparisonOf(
    names: Pick<Comparison, 'before' | 'after'>,
    pairs: readonly Pair<Version>[],
    findings: FindingsApart,
): Comparison {
    const both = pairs.flatMap(({ before, after }) => (before && after ? [changeOf(before, after)] : []));
    return {
        ...names,
        changed: both.filter(isChange),
        come: pairs.flatMap(({ before, after }) => (after && !before ? [lone(after)] : [])),
        gone: pairs.flatMap(({ before, after }) => (before && !after ? [lone(before)] : [])),
        same: both.filter((one) => !isChange(one)).map(({ after }) => after),
        findings,
    };
}

/** Whether the two versions differ in anything that a crew would notice. */
export function isDifferent({ changed, come, gone, findings }: Comparison): boolean {
    return [changed, come, gone, findings.came, findings.went].some((list) => list.length > 0);
}

function changeOf(before: Version, after: Version): PlanChange {
    const changes = compare(before.plan.plan, after.plan.plan).map(tell);
    const speech = speechOf(after.plan);
    // Where nothing was decided otherwise nothing else follows, and turns are what takes long.
    const turns = changes.length === 0 ? [] : turnsApart(turning(before.plan), turning(after.plan), speech);
    return {
        before: lone(before),
        after: lone(after),
        told: [...renamings(before, after), ...changes.map(({ words }) => words)],
        changes,
        figures: figuresApart(before.plan, after.plan, speech),
        findings: findingsApart(before.findings, after.findings),
        turns,
        orders: ordersApart(before.plan, after.plan),
    };
}

function isChange({ told, figures, findings, turns, orders }: PlanChange): boolean {
    return [told, figures, findings.came, findings.went, turns, orders].some((list) => list.length > 0);
}

/** A plan is what it is whatever it is called, so its names are told apart from its changes. */
function renamings(before: Version, after: Version): string[] {
    const [was, is] = [lone(before), lone(after)];
    const isMoved = before.path !== after.path;
    return [
        ...(isMoved ? [`File: ${was.path} → ${is.path}.`] : []),
        ...(was.name === is.name ? [] : [`Name: ${was.name} → ${is.name}.`]),
        ...(was.title === is.title ? [] : [`Title: ${was.title} → ${is.title}.`]),
    ];
}

function ordersApart(before: AnalysedPlan, after: AnalysedPlan): OrderChange[] {
    return (
        [
            ['setting', 'set'],
            ['taking in', 'takeIn'],
        ] as const
    ).flatMap(([of, key]): OrderChange[] => {
        const [was, is] = [before, after].map(({ order }) =>
            order.known ? order.value[key].map(({ line }) => line.position.name) : [],
        ) as [string[], string[]];
        return was.join() === is.join() ? [] : [{ of, before: was, after: is }];
    });
}

function turning(plan: AnalysedPlan): AnalysedPlan {
    return plan.turns ? plan : withTurns(plan);
}

function lone({ shown, plan: { plan } }: Version): LonePlan {
    return { path: shown, name: plan.name, title: plan.title };
}
