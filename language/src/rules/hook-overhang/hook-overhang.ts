import { gearOf, hooksOf, runnerOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { sayApart } from '../say.ts';
import { written } from '../standing.ts';
import { firstWord, writtenHere } from '../written.ts';

/** The trailing hook further beyond the skirt than it is long. */
export const hookOverhang = rule({
    name: 'hook-overhang',
    group: 'hooks',
    standing: written('The pack that the event stands on, where it has a rule for skirted lures.'),
    severity: 'error',
    summary: 'The trailing hook stands further beyond the skirt than it is long.',
    settings: {},

    check(analysis, _, report) {
        const word = firstWord(analysis.plan, ({ lureHooks }) => lureHooks);
        if (!word) return;
        for (const { line } of tackledLines(analysis)) {
            const hooks = hooksOf(line);
            if (gearOf(line) !== 'skirted lure' || !hooks?.overhang || !hooks.length) continue;
            if (hooks.overhang.si <= hooks.length.si) continue;
            const [overhang, most] = sayApart.length(hooks.overhang, hooks.length);
            report({
                at: hooks.overhang,
                what: `The trailing hook of ${runnerOf(line)!.value.title} stands ${overhang} beyond the skirt, and ${word.book.title} allows its own length, ${most}.`,
                why: 'A fish on it does not count.',
                remedy: 'Rig it further forward.',
                related: [{ at: word.limit, what: writtenHere(word.book) }],
                positions: [line],
            });
        }
    },
});
