import type { LangiumDocument } from 'langium';
import type { Finding } from '../finding.ts';
import { placeIn } from '../place.ts';
import { problem } from './problem.ts';

/** A line that opens a conflict: ours, in a comment, or git's own. */
const opening = /^[ \t]*(?:\/\/ )?<{7}(?: .*)?$/gm;

/** Git's own marks, which are no text of the language. */
const mark = /^(?:<{7}|={7}|>{7}|\|{7})(?: |$)/;

/** What two branches changed alike, and nobody has chosen yet. */
export function checkConflicts({ textDocument }: LangiumDocument): Finding[] {
    const text = textDocument.getText();
    if (!text.includes('<<<<<<<')) return [];
    return [...text.matchAll(opening)].map(({ index, 0: line }) =>
        problem(
            'conflict',
            placeIn(textDocument, index + /^[ \t]*/.exec(line)![0].length, index + line.length),
            {
                what: 'Two branches changed this, each otherwise, and nobody has chosen yet.',
                why: 'Until then the crew fishes what one of them says, by chance.',
                remedy: 'Keep one, and take out the other with the marks: `<<<<<<<`, `=======`, `>>>>>>>`.',
            },
        ),
    );
}

/** Whether a place is on one of git's own marks: that it cannot be read is no news beside the conflict. */
export function isOnMark({ textDocument }: LangiumDocument, line: number): boolean {
    const text = textDocument.getText({ start: { line, character: 0 }, end: { line, character: 9 } });
    return mark.test(text.split(/[\r\n]/, 1)[0]!);
}
