import type { Measure } from '../plan/measure.ts';
import type { Rules, Spread, TackleLimits, WrittenRules } from '../plan/model.ts';

/** One book of rules that applies to a plan: what the event wrote itself, or a published pack. */
export interface RuleBook extends WrittenRules {
    readonly title: string;
}

/** The books that apply to a plan, the event's own word first. */
export function ruleBooks({ event }: Spread): readonly RuleBook[] {
    if (!event) return [];
    const { title, own, written }: Rules = event.value;
    return [{ ...own, title }, ...written];
}

/** The first word that the books have on something. */
export function firstWord<T>(
    plan: Spread,
    of: (book: RuleBook) => T | undefined,
): { readonly book: RuleBook; readonly limit: T } | undefined {
    for (const book of ruleBooks(plan)) {
        const limit = of(book);
        if (limit !== undefined) return { book, limit };
    }
    return undefined;
}

/** The row of a book for a line class in kilograms: the least class that it still covers. */
export function limitsFor(book: RuleBook, lineClass: Measure): TackleLimits | undefined {
    const rows = book.limits.filter(({ upTo }) => upTo === undefined || lineClass.si <= upTo.si);
    return rows.sort((a, b) => (a.upTo?.si ?? Infinity) - (b.upTo?.si ?? Infinity))[0];
}

/** What stands beside a limit where it is written: the edition decides, and editions change. */
export function writtenHere({ title, edition }: RuleBook): string {
    return edition ? `${title} writes it here, after ${edition.value}.` : `${title} writes it here.`;
}
