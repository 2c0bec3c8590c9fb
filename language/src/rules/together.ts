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
    const { what, remedy = first.remedy, fixes = first.fixes } = first.together!;
    const names = [...new Set(all.map(({ together }) => together!.name))];
    const { together, ...rest } = first;
    return {
        ...rest,
        at,
        what: what(listed(names)),
        remedy,
        related: all.map(({ together }) => together!.each),
        ...(fixes && { fixes }),
        positions: [...new Set(all.flatMap(({ positions = [] }) => positions))],
    };
}
