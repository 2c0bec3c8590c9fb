import type { Spread, SpreadLine } from '../../plan/model.ts';
import { holdOf } from '../clips.ts';
import { type Problem, rule } from '../rule.ts';
import { housekeeping } from '../standing.ts';

/** One thing in two places. */
export const usedTwice = rule({
    name: 'used-twice',
    group: 'tackle',
    standing: housekeeping,
    severity: 'error',
    summary: 'An outfit, a lure, a clip or a rod holder is used twice in one plan.',
    settings: {},

    check(analysis, _, report) {
        const lines = analysis.lines.map(({ line }) => line);
        for (const { of, most = () => 1, problem } of things) {
            const users = new Map<string, SpreadLine[]>();
            for (const line of lines) {
                const key = of(line, analysis.plan);
                if (key === undefined) continue;
                const before = users.get(key) ?? [];
                users.set(key, [...before, line]);
                const first = before[0];
                if (!first || before.length < most(line)) continue;
                report({
                    ...problem(line, first),
                    related: [{ at: first, what: `${first.position.name} has it first.` }],
                    positions: [line, first],
                });
            }
        }
    },
});

interface Thing {
    /** What two lines may not share; `undefined` where a line has none. */
    of(line: SpreadLine, plan: Spread): string | undefined;
    /** How many lines may have it. */
    most?(line: SpreadLine): number;
    problem(line: SpreadLine, first: SpreadLine): Problem;
}

const things: readonly Thing[] = [
    {
        of: ({ outfit }) => outfit?.value.name,
        problem: ({ outfit }, { position }) => ({
            at: outfit!,
            what: `${outfit!.value.title} is already in use at ${position.name}.`,
            remedy: 'Put another outfit here.',
        }),
    },
    {
        of: ({ lure }) => lure?.value.name,
        most: ({ lure }) => 1 + (lure!.value.spares?.si ?? 0),
        problem: ({ lure }, { position }) => ({
            at: lure!,
            severity: 'warning',
            what: `${lure!.value.title} already runs at ${position.name}.`,
            remedy: 'Choose another lure here, or write down how many spares of it are on board.',
        }),
    },
    {
        of: (line, plan) => (line.from?.kind === 'rod tip' ? undefined : holdOf(line, plan)),
        problem: ({ position, from }, first) => ({
            at: from!,
            what: `${position.name} hangs on the same ${from!.kind === 'point' ? `clip, ${from!.name},` : from!.kind} as ${first.position.name}.`,
            why: 'A clip holds one line.',
            remedy: 'Say for each of the two where it is towed from.',
        }),
    },
    {
        of: (line, plan) => (line.from?.kind === 'rod tip' ? holdOf(line, plan) : undefined),
        problem: ({ position, from }, first) => ({
            at: from!,
            severity: 'warning',
            what: `${position.name} is towed from the same rod holder as ${first.position.name}.`,
            why: 'A holder takes one rod.',
            remedy: `Write down the holder of each (holder ${position.name} { ... } in the boat), or tow one of the two from elsewhere.`,
        }),
    },
];
