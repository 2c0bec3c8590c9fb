import { replaceValue } from '../fixes.ts';
import { type Gear, gearOf, hooksOf, runnerOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { counted } from '../say.ts';
import { written } from '../standing.ts';
import { firstWord, type RuleBook, writtenHere } from '../written.ts';

const most: Readonly<Record<Gear, (book: RuleBook) => RuleBook['lureHooks']>> = {
    'skirted lure': ({ lureHooks }) => lureHooks,
    plug: ({ plugHooks }) => plugHooks,
    'natural bait': ({ baitHooks }) => baitHooks,
};

/** More hooks than the rules allow on a lure, a plug or a bait. */
export const hookCount = rule({
    name: 'hook-count',
    group: 'hooks',
    standing: written('The pack that the event stands on.'),
    severity: 'error',
    summary: 'A lure, a plug or a natural bait has more hooks than the rules allow.',
    settings: {},

    check(analysis, _, report) {
        for (const { line } of tackledLines(analysis)) {
            const [gear, hooks] = [gearOf(line), hooksOf(line)];
            const word = gear && firstWord(analysis.plan, most[gear]);
            if (!word || !hooks || hooks.count.si <= word.limit.si) continue;
            report({
                at: [hooks.count, hooks],
                what: `${runnerOf(line)!.value.title} has ${counted(hooks.count.si, 'hook')}, and ${word.book.title} allows ${word.limit.si} on a ${gear}.`,
                why: 'A fish on it does not count.',
                remedy: `Take off ${counted(hooks.count.si - word.limit.si, 'hook')}.`,
                related: [{ at: word.limit, what: writtenHere(word.book) }],
                fixes: [replaceValue((text) => `Rig ${text} hooks`, hooks.count, word.limit.si)],
                positions: [line],
            });
        }
    },
});
