import type { Chunk } from './chunks.ts';

export type Side = 'ours' | 'theirs';

/*
 * Conflicts are marked in comments, so that the text stays a plan that can be read, drawn and checked meanwhile. The
 * marks look like git's own, which every crew that keeps plans in git has seen.
 */

/** Opens a conflict; nothing else in a plan begins so. */
export const CONFLICT = '// <<<<<<<';
const ELSE = '// =======';
const CLOSED = '// >>>>>>>';

/** What both sides changed: ours stands, theirs beside it as comments. */
export function bothSides(ours: Chunk, theirs: Chunk): string {
    const { before, own, indent } = apart(ours);
    return lines(before, [
        `${indent}${CONFLICT} ours: both sides changed this; keep one and take these marks out`,
        own,
        `${indent}${ELSE} theirs:`,
        ...commented(apart(theirs).own, indent),
        `${indent}${CLOSED}`,
    ]);
}

/** What one side changed and the other took out: it stands. */
export function takenOut(kept: Chunk, by: Side): string {
    const { before, own, indent } = apart(kept);
    return lines(before, [
        `${indent}${CONFLICT} ${by === 'ours' ? 'theirs: our side' : 'ours: the other side'} took this out; choose and take these marks out`,
        own,
        `${indent}${CLOSED}`,
    ]);
}

/** The blank lines above a chunk, the rest of it, and how far that is indented; a chunk within a line gets its own. */
function apart({ text, opensLine }: Chunk): { before: string; own: string; indent: string } {
    const [before] = /^(?:[ \t]*\n)*/.exec(text)!;
    const own = text.slice(before.length).trimEnd();
    return { before: opensLine ? before : `${before}\n`, own, indent: /^[ \t]*/.exec(own)![0] };
}

function commented(text: string, indent: string): string[] {
    return text
        .split('\n')
        .map((line) => `${indent}// ${line.startsWith(indent) ? line.slice(indent.length) : line}`.trimEnd());
}

function lines(before: string, rows: readonly string[]): string {
    return `${before}${rows.join('\n')}\n`;
}
