/*
 * How far a rate can be trusted. Both intervals are exact: they hold the true rate at least as often as they say, also
 * where there are three bites and no more, at the price of being wide.
 */

/** Both ends of an interval. */
export interface Interval {
    readonly low: number;
    readonly high: number;
}

/** How often the intervals hold the true rate, at least. */
export const CONFIDENCE = 0.95;

/**
 * The share of which so many of so many were seen, after C. J. Clopper and E. S. Pearson, "The use of confidence or
 * fiducial limits illustrated in the case of the binomial", Biometrika 26 (1934), 404–413.
 *
 * @param hits  a whole number, not above `tries`
 * @throws RangeError for numbers that count nothing
 */
export function shareInterval(hits: number, tries: number): Interval {
    if (!Number.isInteger(hits) || !Number.isInteger(tries) || hits < 0 || hits > tries)
        throw new RangeError(`${hits} of ${tries} is no share of a count.`);
    const tail = (1 - CONFIDENCE) / 2;
    return {
        low: hits === 0 ? 0 : solve((share) => 1 - binomialUpTo(hits - 1, tries, share) - tail),
        high: hits === tries ? 1 : solve((share) => tail - binomialUpTo(hits, tries, share)),
    };
}

/**
 * The number expected where so many were seen, after F. Garwood, "Fiducial limits for the Poisson distribution",
 * Biometrika 28 (1936), 437–442; for a rate, divide by the time.
 *
 * @throws RangeError for what is no count
 */
export function countInterval(seen: number): Interval {
    if (!Number.isInteger(seen) || seen < 0) throw new RangeError(`${seen} is no count.`);
    const tail = (1 - CONFIDENCE) / 2;
    // No count is that far from its expectation at this confidence: four times its deviation and ten.
    const most = seen + 4 * Math.sqrt(seen) + 10;
    return {
        low: seen === 0 ? 0 : most * solve((part) => 1 - poissonUpTo(seen - 1, part * most) - tail),
        high: most * solve((part) => tail - poissonUpTo(seen, part * most)),
    };
}

/** Where a rising function of 0 to 1 crosses zero, to the last digits that a number holds. */
function solve(rising: (share: number) => number): number {
    let [low, high] = [0, 1];
    for (let step = 0; step < 60; step++) {
        const middle = (low + high) / 2;
        if (rising(middle) < 0) low = middle;
        else high = middle;
    }
    return (low + high) / 2;
}

/** Of seeing at most so many of so many, each with this chance. Summed by logarithms: no power underflows. */
function binomialUpTo(most: number, tries: number, share: number): number {
    if (share <= 0) return 1;
    if (share >= 1) return most >= tries ? 1 : 0;
    const [yes, no] = [Math.log(share), Math.log1p(-share)];
    let sum = 0;
    let term = tries * no;
    for (let hits = 0; hits <= most; hits++) {
        sum += Math.exp(term);
        term += Math.log((tries - hits) / (hits + 1)) + yes - no;
    }
    return Math.min(1, sum);
}

/** Of seeing at most so many where so many are expected. */
function poissonUpTo(most: number, expected: number): number {
    if (expected <= 0) return 1;
    let sum = 0;
    let term = -expected;
    for (let seen = 0; seen <= most; seen++) {
        sum += Math.exp(term);
        term += Math.log(expected / (seen + 1));
    }
    return Math.min(1, sum);
}
