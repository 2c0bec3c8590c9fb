import type { Measure } from '../../plan/measure.ts';
import type { Hooks } from '../../plan/model.ts';
import { type Gear, gearOf, hooksOf, runnerOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { sayApart } from '../say.ts';
import { written } from '../standing.ts';
import { firstWord, type RuleBook, writtenHere } from '../written.ts';

/** The eyes of two hooks nearer to each other than a hook is long, or too far apart. */
export const hookSpacing = rule({
    name: 'hook-spacing',
    group: 'hooks',
    standing: written('The pack that the event stands on.'),
    severity: 'error',
    summary: 'The eyes of two hooks are closer than one hook is long, or further apart than the rules allow.',
    settings: {},

    check(analysis, _, report) {
        for (const { line } of tackledLines(analysis)) {
            const [gear, hooks] = [gearOf(line), hooksOf(line)];
            const word = gear && firstWord(analysis.plan, (book) => limitOf(book, gear));
            if (!word || !hooks?.spacing || hooks.count.si < 2) continue;
            const fault = faultIn(hooks, hooks.spacing, word.limit);
            if (!fault) continue;
            report({
                at: hooks.spacing,
                what: `The eyes of the hooks in ${runnerOf(line)!.value.title} are ${fault.is} apart, and ${word.book.title} wants ${fault.wanted}.`,
                why: 'A fish on it does not count.',
                remedy: 'Rig the hooks anew.',
                related: [{ at: word.limit, what: writtenHere(word.book) }],
                positions: [line],
            });
        }
    },
});

function limitOf({ lureHookSpacing, baitHookSpacing }: RuleBook, gear: Gear): Measure | undefined {
    if (gear === 'plug') return undefined;
    return gear === 'natural bait' ? baitHookSpacing : lureHookSpacing;
}

function faultIn({ length, linked }: Hooks, spacing: Measure, most: Measure) {
    if (spacing.si > most.si) {
        const [is, limit] = sayApart.length(spacing, most);
        return { is, wanted: `${limit} at most` };
    }
    if (!length || spacing.si >= length.si || linked?.value) return undefined;
    const [is, limit] = sayApart.length(spacing, length);
    return { is, wanted: `a hook's length, ${limit}, at least` };
}
