import { type Kind, spoken } from '../../plan/names/kinds.ts';
import { rule } from '../rule.ts';
import { housekeeping } from '../standing.ts';

/** A definition in a file of plans that nothing names. Inventory files may hold spares. */
export const unused = rule({
    name: 'unused',
    group: 'the file itself',
    standing: housekeeping,
    severity: 'hint',
    summary: 'A definition in a file that holds plans is named by nothing.',
    settings: {},

    checkFile({ spreads, definitions }, _, report) {
        if (spreads.length === 0) return;
        for (const definition of definitions) {
            if (definition.used || ownUse.has(definition.kind)) continue;
            report({
                at: definition,
                what: `No plan uses the ${spoken(definition.kind as Kind)} ${definition.title}.`,
                why: 'In a file of plans it looks as if it were in the water.',
                remedy: 'Take it out, or keep it in a tackle file.',
                fixes: [
                    {
                        title: `Take out the ${spoken(definition.kind as Kind)} ${definition.title}`,
                        edits: [{ at: definition.place, text: '' }],
                    },
                ],
                unnecessary: true,
            });
        }
    },
});

/** What is there for the crew, and for no other definition. */
const ownUse: ReadonlySet<string> = new Set(['spread', 'day', 'log']);
