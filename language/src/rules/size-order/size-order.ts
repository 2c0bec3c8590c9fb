import type { SpreadLine } from '../../plan/model.ts';
import { swap } from '../fixes.ts';
import { neighboursOutward } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { length } from '../settings.ts';
import { practice } from '../standing.ts';

/** A larger lure runs nearer the boat than a smaller one beside it. */
export const sizeOrder = rule({
    name: 'size-order',
    group: 'layout',
    standing: practice('Mass and face area hold in the turbulent water close in.'),
    severity: 'warning',
    summary: 'A larger lure runs further back than a smaller one on the same side or next to it.',
    settings: { slack: length('15 mm', ['0 mm', '300 mm'], 'Lures this close in length count as equal.') },
    givesWayTo: ['position-mismatch', 'shotgun-inside'],

    check(analysis, { slack }, report) {
        const blamed = new Set<string>();
        const pairs = [...neighboursOutward(analysis)].map(([near, far]): Two => [near.line, far.line]);
        for (const [near, far] of pairs) {
            const [small, large] = [near.lure, far.lure];
            if (!small?.value.length || !large?.value.length || blamed.has(far.position.name)) continue;
            if (large.value.length.si <= small.value.length.si + slack) continue;
            blamed.add(far.position.name);
            const size = say.length(small.value.length, large.value.length);
            report({
                at: large,
                what: `${large.value.title} (${say.length(large.value.length)}) runs outside ${small.value.title} (${size}).`,
                why: 'Larger lures work closer to the boat.',
                remedy: 'Swap the two, or choose a smaller lure here.',
                related: [{ at: small, what: `${small.value.title} runs nearer the boat.` }],
                fixes: [
                    clears(near, far, pairs, slack)
                        ? swap(`Swap ${large.value.title} and ${small.value.title}`, small, large)
                        : undefined,
                ],
                positions: [far, near],
            });
        }
    },
});

type Two = readonly [near: SpreadLine, far: SpreadLine];

/** Whether no larger lure is outside a smaller one at either of the two once they have changed places. */
function clears(a: SpreadLine, b: SpreadLine, pairs: readonly Two[], slack: number): boolean {
    const lengthAt = (line: SpreadLine) => (line === a ? b : line === b ? a : line).lure?.value.length?.si;
    return pairs
        .filter((two) => two.includes(a) || two.includes(b))
        .every(([near, far]) => {
            const [small, large] = [lengthAt(near), lengthAt(far)];
            return small === undefined || large === undefined || large <= small + slack;
        });
}
