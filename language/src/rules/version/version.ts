import { rule } from '../rule.ts';
import { housekeeping } from '../standing.ts';

/** The language that this tool reads. */
const READS = 1;

/** A file written for a newer language than this tool reads. */
export const version = rule({
    name: 'version',
    group: 'the file itself',
    standing: housekeeping,
    severity: 'error',
    summary: 'The file is written for a newer language than this tool reads.',
    settings: {},

    checkFile({ version: asked }, _, report) {
        if (!asked || asked.value <= READS) return;
        report({
            at: asked,
            what: `This file needs layback ${asked.value}, and this tool reads layback ${READS}.`,
            why: 'What it does not know it would leave out, and the plan would look safer than it is.',
            remedy: 'Use a newer version of the tool.',
        });
    },
});
