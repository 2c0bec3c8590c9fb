import type { Measure } from '../../plan/measure.ts';
import { exceeds } from '../../units/compare.ts';
import { rule } from '../rule.ts';
import { sayApart } from '../say.ts';
import { written } from '../standing.ts';
import { firstWord, writtenHere } from '../written.ts';

/** A rod whose tip is too short or whose butt is too long. */
export const rodLength = rule({
    name: 'rod-length',
    group: 'written rules',
    standing: written('The pack that the event stands on.'),
    severity: 'error',
    summary: "A rod's tip is shorter, or its butt longer, than the rules allow.",
    settings: {},

    check({ plan, lines }, _, report) {
        const tip = firstWord(plan, ({ rodTip }) => rodTip);
        const butt = firstWord(plan, ({ rodButt }) => rodButt);
        for (const { line } of lines) {
            const outfit = line.outfit?.value;
            const judge = (part: string, found: Measure | undefined, word: typeof tip, sign: 1 | -1) => {
                if (!found || !word || !exceeds(sign * found.si, sign * word.limit.si)) return;
                const [is, limit] = sayApart.length(found, word.limit);
                report({
                    at: found,
                    what: `The ${part} of ${outfit!.title}'s rod is ${is}, and ${word.book.title} wants ${limit} at ${sign > 0 ? 'most' : 'least'}.`,
                    why: 'A fish on it does not count.',
                    remedy: 'Put the reel on another rod.',
                    related: [{ at: word.limit, what: writtenHere(word.book) }],
                    positions: [line],
                });
            };
            judge('tip', outfit?.rod?.tip, tip, -1);
            judge('butt', outfit?.rod?.butt, butt, 1);
        }
    },
});
