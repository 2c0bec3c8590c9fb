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
        for (const [{ line: near }, { line: far }] of neighboursOutward(analysis)) {
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
                fixes: [swap(`Swap ${large.value.title} and ${small.value.title}`, small, large)],
                positions: [far, near],
            });
        }
    },
});
