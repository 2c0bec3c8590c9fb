import type { AnalysedPlan } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import type { SpreadLine, TackleLimits } from '../plan/model.ts';
import type { Problem, Report, Where } from './rule.ts';
import { say, sayApart } from './say.ts';
import { firstWord, limitsFor, writtenHere } from './written.ts';

/** A length of tackle that the rules limit by line class. */
export interface LimitedLength {
    readonly which: 'double' | 'leader' | 'combined';
    /** As a sentence begins: `The leader of Broad`. */
    readonly name: string;
    /** `is`, unless it is several. */
    readonly verb?: 'is' | 'are together';
    readonly at: Where;
    readonly length: Measure | number;
    /** The shortest way to mend it. */
    readonly fixes?: (limit: number) => Problem['fixes'];
}

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
        const word = firstWord(plan, (book) => limitsFor(book, lineClass)?.[found.which]);
        const problem = word && lengthProblem(found, word.limit, word.book.title, margin);
        if (!problem) continue;
        const rule = { at: word.limit, what: writtenHere(word.book) };
        report({ ...problem, related: [rule, ...(problem.related ?? [])], positions: [line] });
    }
}

function lengthProblem(
    { name, verb = 'is', at, length, fixes }: LimitedLength,
    limit: NonNullable<TackleLimits['leader']>,
    book: string,
    margin: Measure | undefined,
): Problem | undefined {
    const si = typeof length === 'number' ? length : length.si;
    const it = verb === 'is' ? 'it' : 'them';
    if (si > limit.si + 1e-9) {
        const [is, most] = sayApart.length(length, limit);
        return {
            at,
            what: `${name} ${verb} ${is} long, and ${book} allows ${most}.`,
            why: 'A fish on it does not count.',
            remedy: `Cut ${it} to ${most} or less.`,
            fixes: fixes?.(limit.si),
        };
    }
    if (!margin || si <= limit.si - margin.si + 1e-9) return undefined;
    const [is, most] = sayApart.length(length, limit);
    return {
        at,
        severity: 'warning',
        what: `${name} ${verb} ${is} long, inside the ${say.length(margin)} kept under the ${most} of ${book}.`,
        why: 'Nylon stretches in a fight and is measured after it.',
        remedy: `Cut ${it} to ${say.length(limit.si - margin.si, typeof length === 'number' ? undefined : length)}.`,
        related: [{ at: margin, what: 'The margin is said here.' }],
        fixes: fixes?.(limit.si - margin.si),
    };
}
