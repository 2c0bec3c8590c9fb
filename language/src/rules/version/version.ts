import { rule } from '../rule.ts';
import { housekeeping } from '../standing.ts';

/**
 * The language that this tool reads, major and minor: a word more raises the minor, a word that means something else
 * the major. `layback 1` is `layback 1.0`.
 */
const READS = '1.0';

/** A file written for a newer language than this tool reads. */
export const version = rule({
    name: 'version',
    group: 'the file itself',
    standing: housekeeping,
    severity: 'error',
    summary: 'The file is written for a newer language than this tool reads.',
    settings: {},

    checkFile({ version: asked }, _, report) {
        if (!asked || !isNewer(asked.value, READS)) return;
        report({
            at: asked,
            what: `This file needs layback ${asked.value}, and this tool reads layback ${READS.replace(/\.0$/, '')}.`,
            why: 'What it does not know it would leave out, and the plan would look safer than it is.',
            remedy: 'Use a newer version of the tool.',
        });
    },
});

function isNewer(version: string, than: string): boolean {
    const parts = (text: string) => text.split('.').map(Number) as [number, number?];
    const [major, minor = 0] = parts(version);
    const [knownMajor, knownMinor = 0] = parts(than);
    return major > knownMajor || (major === knownMajor && minor > knownMinor);
}
