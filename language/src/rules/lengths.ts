import type { AnalysedPlan } from '../plan/figures.ts';
import type { Fix } from '../plan/finding.ts';
import type { Measure } from '../plan/measure.ts';
import type { SpreadLine } from '../plan/model.ts';
import { exceeds, isSame } from '../units/compare.ts';
import { printApart } from '../units/print.ts';
import { units } from '../units/unit.ts';
import { asWritten, replaceValue } from './fixes.ts';
import type { Problem, Report, Where } from './rule.ts';
import { say, sayApart } from './say.ts';
import { firstWord, limitsFor, writtenHere } from './written.ts';

/** A length of tackle that the rules limit by line class. */
export interface LimitedLength {
    readonly which: Which;
    /** As a sentence begins: `The leader of Broad`. */
    readonly name: string;
    /** `is`, unless it is several. */
    readonly verb?: 'is' | 'are together';
    readonly at: Where;
    /** m */
    readonly length: number;
    /** Whose unit it is told in. */
    readonly like: Measure;
    /** The shortest way to mend it. */
    readonly fixes?: (room: Room) => Problem['fixes'];
}

type Which = 'double' | 'leader' | 'combined';

/** How long each may be, m, with the margin that the team keeps: nothing where nobody limits it. */
export type Room = (which: Which) => number;

/** Holds one length of every line to the limit for its class: over it an error, inside the stretch margin a warning. */
export function judgeLengths(
    { plan, lines }: AnalysedPlan,
    lengthIn: (line: SpreadLine) => LimitedLength | undefined,
    report: Report,
): void {
    const margin = plan.event?.value.stretchMargin;
    for (const { line } of lines) {
        const lineClass = line.outfit?.value.line?.lineClass;
        const found = lineClass && lengthIn(line);
        if (!found) continue;
        const wordOn = (which: Which) => firstWord(plan, (book) => limitsFor(book, lineClass)?.[which]);
        const word = wordOn(found.which);
        if (!word) continue;
        const room: Room = (which) =>
            asPublished(wordOn(which)?.limit.si ?? Number.POSITIVE_INFINITY, found.like) - (margin?.si ?? 0);
        const problem = lengthProblem(found, word.limit, word.book.title, margin, room);
        if (!problem) continue;
        const rule = { at: word.limit, what: writtenHere(word.book) };
        report({ ...problem, related: [rule, ...(problem.related ?? [])], positions: [line] });
    }
}

/**
 * A limit as the rule books print it: metres cut to the centimetre, and whole feet or inches beside them (9.14 m and
 * 30 ft in the IGFA's). To whoever measures in feet, the feet count.
 */
function asPublished(limit: number, { quantity }: Measure): number {
    if (quantity?.unit.system !== 'imperial') return limit;
    const inches = Math.round(limit / units.in.toSI) * units.in.toSI;
    return Math.abs(inches - limit) <= HALF_A_CENTIMETRE ? Math.max(limit, inches) : limit;
}

/** m; with the last digit of a computer's number. */
const HALF_A_CENTIMETRE = 0.005 + 1e-9;

function lengthProblem(
    { which, name, verb = 'is', at, length, like, fixes }: LimitedLength,
    written: Measure,
    book: string,
    margin: Measure | undefined,
    room: Room,
): Problem | undefined {
    const it = verb === 'is' ? 'it' : 'them';
    const limit = asPublished(written.si, like);
    const own = isSame(like.si, length) ? like : length;
    const [is, most] =
        limit === written.si
            ? sayApart.length(own, written)
            : printApart(length, limit, like.quantity ?? units.m);
    // Rounded as a fix would be: never up, over the limit.
    const told = asWritten(like, room(which), 'down')?.text ?? say.length(room(which), like);
    const remedy = `Cut ${it} to ${told} or less.`;
    if (exceeds(length, limit)) {
        return {
            at,
            what: `${name} ${verb} ${is} long, and ${book} allows ${most}.`,
            why: 'A fish on it does not count.',
            remedy,
            fixes: fixes?.(room),
        };
    }
    if (!margin || !exceeds(length, limit - margin.si)) return undefined;
    return {
        at,
        severity: 'warning',
        what: `${name} ${verb} ${is} long, inside the ${say.length(margin)} kept under the ${most} of ${book}.`,
        why: 'Nylon stretches in a fight and is measured after it.',
        remedy,
        related: [{ at: margin, what: 'The margin is said here.' }],
        fixes: fixes?.(room),
    };
}

/** Cuts a leader so that it is right on its own and with the double; nothing where the double alone is too long. */
export function cutLeader(line: SpreadLine, leader: Measure, room: Room): Fix | undefined {
    const double = line.outfit?.value.double?.length?.si ?? 0;
    const longest = Math.min(room('leader'), room('combined') - double);
    return longest > 0
        ? replaceValue((text) => `Cut the leader to ${text}`, leader, longest, 'down')
        : undefined;
}
