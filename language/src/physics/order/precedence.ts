/** The first must be done before the second; things are named by their place in a list. */
export interface Before {
    readonly first: number;
    readonly second: number;
}

/** An order, and the rings of things each of which would have to be done before the next. */
export interface Ordered {
    readonly order: readonly number[];
    /** Least member first; empty when every demand is met. Within a ring the order is the preferred one. */
    readonly cycles: readonly (readonly number[])[];
}

/**
 * Puts things in an order that meets every demand, and the preferred order wherever they leave it free.
 *
 * @param count   things are 0 to count − 1; demands on others are left out
 * @param prefer  negative when the first of two should come first; the place in the list decides between equals
 */
export function arrange(
    count: number,
    demands: readonly Before[],
    prefer: (one: number, other: number) => number,
): Ordered {
    const ringOf = rings(count, demands);
    const cycles = [...new Set(ringOf)].filter((ring) => ring.length > 1);
    const binding = demands.filter(
        ({ first, second }) =>
            isThing(first, count) && isThing(second, count) && ringOf[first] !== ringOf[second],
    );
    const waiting = new Set(Array.from({ length: count }, (_, thing) => thing));
    const order: number[] = [];
    while (waiting.size > 0) {
        // A ring's members wait for what any of them waits for, so that it is entered only when it can be finished.
        const free = [...waiting].filter((thing) =>
            binding.every(({ first, second }) => ringOf[second] !== ringOf[thing] || !waiting.has(first)),
        );
        const [next] = free.sort((one, other) => prefer(one, other) || one - other);
        waiting.delete(next!);
        order.push(next!);
    }
    return { order, cycles };
}

/** For each thing, all that it has to come before and after at once, itself included: one array a ring. */
function rings(count: number, demands: readonly Before[]): number[][] {
    const after = Array.from({ length: count }, (_, start) => {
        const reached = new Set<number>();
        const open = [start];
        for (let thing = open.pop(); thing !== undefined; thing = open.pop()) {
            for (const { first, second } of demands) {
                if (first !== thing || !isThing(second, count) || reached.has(second)) continue;
                reached.add(second);
                open.push(second);
            }
        }
        return reached;
    });
    const known: number[][] = [];
    for (let thing = 0; thing < count; thing++) {
        if (known[thing]) continue;
        const ring = [thing];
        for (let other = thing + 1; other < count; other++)
            if (after[thing]!.has(other) && after[other]!.has(thing)) ring.push(other);
        for (const member of ring) known[member] = ring;
    }
    return known;
}

function isThing(thing: number, count: number): boolean {
    return Number.isInteger(thing) && thing >= 0 && thing < count;
}

/** The demands that a stated order breaks; those on things that it leaves out are not judged. */
export function broken<Demand extends Before>(
    stated: readonly number[],
    demands: readonly Demand[],
): Demand[] {
    return demands.filter(({ first, second }) => {
        const [one, other] = [stated.indexOf(first), stated.indexOf(second)];
        return one >= 0 && other >= 0 && one > other;
    });
}

/**
 * An order split into steps: what is done at once by the hands there are, one thing a hand.
 *
 * @param hands  at least 1
 * @returns a thing is in a later step than all that must be done before it; empty without hands
 */
export function atOnce(order: readonly number[], demands: readonly Before[], hands: number): number[][] {
    if (!(hands >= 1)) return [];
    const steps: number[][] = [];
    let left = [...order];
    while (left.length > 0) {
        const step: number[] = [];
        for (const thing of left) {
            if (step.length + 1 > hands) break;
            // Demands that the order itself breaks (a ring's) do not hold a thing back.
            const held = demands.some(
                ({ first, second }) =>
                    second === thing && left.includes(first) && order.indexOf(first) < order.indexOf(thing),
            );
            if (!held) step.push(thing);
        }
        steps.push(step);
        left = left.filter((thing) => !step.includes(thing));
    }
    return steps;
}
