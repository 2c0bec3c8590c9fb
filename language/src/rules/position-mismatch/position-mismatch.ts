import type { AnalysedPlan, LineFigures } from '../../plan/figures.ts';
import type { Fix } from '../../plan/finding.ts';
import type { Back, SpreadLine } from '../../plan/model.ts';
import { distances, isBehind } from '../distances.ts';
import { replaceProperty } from '../fixes.ts';
import { fishedLines } from '../neighbours.ts';
import { type Report, rule } from '../rule.ts';
import { say } from '../say.ts';
import { practice } from '../standing.ts';

/** A line does not do what its position's name says. */
export const positionMismatch = rule({
    name: 'position-mismatch',
    group: 'layout',
    standing: practice(
        'Short, long and rigger mean the same on every boat, or the crew clears the wrong line.',
    ),
    severity: 'warning',
    summary: 'A short line runs behind the long one, or a rigger line leaves a rod tip.',
    settings: {},

    check(analysis, _, report) {
        shortBehindLong(analysis, report);
        riggerFromLow(analysis, report);
    },
});

function shortBehindLong(analysis: AnalysedPlan, report: Report): void {
    const fished = fishedLines(analysis);
    for (const short of fished.filter(({ line }) => line.position.length === 'short')) {
        const long = partnerOf(short, fished);
        if (!long || !isBehind(short, long)) continue;
        const [back, other] = distances(short, long);
        report({
            at: short.line.back ?? short.line,
            what: `${short.line.position.name} runs ${back} back, behind ${long.line.position.name} at ${other}.`,
            why: 'The crew set and clear lines by their names.',
            remedy: 'Swap the two distances, or the two names.',
            related: [{ at: long.line.back ?? long.line, what: `${long.line.position.name} runs here.` }],
            fixes: [swapBacks(short.line, long.line)],
            positions: [short.line, long.line],
        });
    }
}

/** The long line of the same place: on the same side, or across where each side has but one. */
function partnerOf({ line }: LineFigures, fished: readonly LineFigures[]): LineFigures | undefined {
    const alike = fished.filter((other) => other.line.position.place === line.position.place);
    const long = alike.filter((other) => other.line.position.length === 'long');
    const beside = long.find((other) => other.line.position.side === line.position.side);
    return beside ?? (alike.length === 2 ? long[0] : undefined);
}

function riggerFromLow(analysis: AnalysedPlan, report: Report): void {
    for (const { line } of fishedLines(analysis)) {
        const { position, from } = line;
        if (position.place !== 'rigger' || (from?.kind !== 'rod tip' && from?.kind !== 'flat clip')) continue;
        report({
            at: from,
            what: `${position.name} is towed from a ${from.kind}.`,
            why: 'A rigger line runs from a halyard, high and wide of the corner lines.',
            remedy: 'Tow it from a halyard, or name the position for what it is.',
            positions: [line],
        });
    }
}

/** Lets two lines change their distances, whichever way each is said. */
function swapBacks({ back: one }: SpreadLine, { back: other }: SpreadLine): Fix | undefined {
    if (!one || !other) return undefined;
    const title = 'Swap the two distances';
    const [here, there] = [
        replaceProperty(title, one.origin, sayBack(other)),
        replaceProperty(title, other.origin, sayBack(one)),
    ];
    return here && there && { title, edits: [...here.edits, ...there.edits] };
}

function sayBack(back: Back): string {
    return back.kind === 'wave' ? `back wave ${say.count(back.wave)}` : `back ${say.length(back.distance)}`;
}
