import type { Change, LineChange, Swappable } from './compare.ts';

type Swap = Change & { kind: 'swap' };

const swappable: readonly Swappable[] = ['gear', 'outfit', 'back'];

/** Pairs of positions that traded something, and the changes that are not part of one. */
export function swapsAmong(changes: readonly LineChange[]): { swaps: Swap[]; rest: LineChange[] } {
    const swaps: Swap[] = [];
    const taken = new Set<LineChange>();
    for (const what of swappable) {
        const traded = changes.filter(({ path }) => path.length === 1 && path[0] === what);
        for (const [index, one] of traded.entries()) {
            if (taken.has(one) || one.before === undefined || one.after === undefined) continue;
            const other = traded
                .slice(index + 1)
                .find((each) => !taken.has(each) && each.before === one.after && each.after === one.before);
            if (!other) continue;
            taken.add(one).add(other);
            swaps.push({
                kind: 'swap',
                positions: [one.position, other.position],
                what,
                before: [one.before, one.after],
                after: [one.after, one.before],
            });
        }
    }
    return { swaps, rest: changes.filter((change) => !taken.has(change)) };
}
