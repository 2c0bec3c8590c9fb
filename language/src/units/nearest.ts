/**
 * The candidate that a misspelt word was most likely meant to be.
 *
 * Case does not count. Of equally near candidates one with the same first letter wins, then the earlier one.
 *
 * @param limit  most slips allowed; by default about one for every three letters
 * @returns `undefined` where nothing is near enough, or where no letter of the word would be left
 */
export function nearest(
    word: string,
    candidates: Iterable<string>,
    limit = Math.max(1, Math.floor((word.length + 1) / 3)),
): string | undefined {
    const meant = word.toLowerCase();
    let best: string | undefined;
    let least = Infinity;
    for (const candidate of candidates) {
        const other = candidate.toLowerCase();
        // The length alone already tells that these are too far apart.
        if (Math.abs(other.length - meant.length) > limit) continue;
        const slips = editDistance(meant, other, limit) + (other[0] === meant[0] ? 0 : 0.5);
        if (slips >= least || Math.floor(slips) > limit) continue;
        if (Math.floor(slips) >= Math.max(meant.length, other.length)) continue;
        best = candidate;
        least = slips;
    }
    return best;
}

/**
 * Least number of slips that turn one word into the other: a letter left out, added or mistaken, or two
 * neighbours swapped (optimal string alignment).
 *
 * @param most  where there are more, they need not be counted to the end: Infinity
 */
export function editDistance(a: string, b: string, most = Infinity): number {
    let beforeLast: number[] = [];
    let last = Array.from({ length: b.length + 1 }, (_, j) => j);
    // Of two neighbours swapped the row before the last one tells.
    let leastBefore = 0;
    for (let i = 1; i <= a.length; i++) {
        const row = [i];
        let least = i;
        for (let j = 1; j <= b.length; j++) {
            const same = a[i - 1] === b[j - 1];
            let slips = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
            const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
            if (swapped) slips = Math.min(slips, beforeLast[j - 2]! + 1);
            row.push(slips);
            least = Math.min(least, slips);
        }
        if (least > most && leastBefore > most) return Infinity;
        leastBefore = least;
        beforeLast = last;
        last = row;
    }
    return last[b.length]!;
}
