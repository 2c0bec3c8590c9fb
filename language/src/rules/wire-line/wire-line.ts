import { rule } from '../rule.ts';
import { written } from '../standing.ts';
import { firstWord, writtenHere } from '../written.ts';

/** A main line of wire where the rules forbid it. */
export const wireLine = rule({
    name: 'wire-line',
    group: 'written rules',
    standing: written('The pack that the event stands on.'),
    severity: 'error',
    summary: 'A main line is wire, and the rules forbid it.',
    settings: {},

    check({ plan, lines }, _, report) {
        const word = firstWord(plan, ({ wireLine }) => wireLine);
        if (!word || word.limit.value) return;
        for (const { line } of lines) {
            const main = line.outfit?.value.line;
            const material = main?.material;
            if (!main || material?.value !== 'wire') continue;
            report({
                at: [material, main],
                what: `The main line of ${line.outfit!.value.title} is wire, and ${word.book.title} forbids it.`,
                why: 'A fish on it does not count.',
                remedy: 'Spool up with another line.',
                related: [{ at: word.limit, what: writtenHere(word.book) }],
                positions: [line],
            });
        }
    },
});
