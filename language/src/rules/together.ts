import type { Fix } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import type { Problem } from './rule.ts';
import { listed } from './say.ts';

/**
 * What a plan hears of one rule: problems of one kind and one severity that lie in one place become one.
 *
 * @param placeIn  the plan, where a problem is shown
 */
export function saidOnce(problems: readonly Problem[], placeIn: (problem: Problem) => Place): Problem[] {
    const alike = new Map<string | Problem, Problem[]>();
    for (const problem of problems) {
        const { together, severity } = problem;
        const { uri, start, end } = together ? placeIn(problem) : { uri: '', start: 0, end: 0 };
        const key = together ? [together.kind, severity, uri, start, end].join('\n') : problem;
        alike.set(key, [...(alike.get(key) ?? []), problem]);
    }
    return [...alike.values()].map((all) => (all.length < 2 ? all[0]! : ofSeveral(all, placeIn(all[0]!))));
}

function ofSeveral(all: readonly Problem[], at: Place): Problem {
    const [first] = all as [Problem];
    const { together, why, remedy, fixes, related, ...rest } = first;
    const { what, ...own } = together!;
    const names = [...new Set(all.map(({ together }) => together!.name))];
    const said = {
        why: own.why ?? shared(all, (problem) => problem.why),
        remedy: own.remedy ?? shared(all, (problem) => problem.remedy),
        fixes: own.fixes ?? (shared(all, ({ fixes = [] }) => JSON.stringify(fixes.map(editsOf))) && fixes),
    };
    return {
        ...rest,
        at,
        what: what(listed(names)),
        ...(said.why !== undefined && { why: said.why }),
        remedy: said.remedy,
        related: all.map(({ together }) => together!.each),
        ...(said.fixes && { fixes: said.fixes }),
        positions: [...new Set(all.flatMap(({ positions = [] }) => positions))],
    };
}

/** What all of them say; `undefined` where they differ. */
function shared<T>(all: readonly Problem[], of: (problem: Problem) => T): T | undefined {
    const [first, ...others] = all.map(of);
    return others.every((other) => other === first) ? first : undefined;
}

function editsOf(fix: Fix | undefined) {
    return fix?.edits;
}
