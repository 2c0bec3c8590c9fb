import type { Spread, SpreadLine } from '../model.ts';

/** A plan where it was found: one version of a team's folder, or of one file. */
export interface Versioned {
    /** Of its file, alike in both versions where the file kept its name. */
    readonly path: string;
    readonly plan: { readonly plan: Spread };
}

/** What became of a plan; one side is absent where it is new or gone. */
export interface Pair<P extends Versioned> {
    readonly before?: P;
    readonly after?: P;
}

/**
 * Which plan of one version is which of the other: of the same file and name; else of the same name in another file,
 * since it was moved or the file renamed; else one that is much the same under another name. In the order of the
 * later version, what is gone at the end.
 */
export function pairPlans<P extends Versioned>(before: readonly P[], after: readonly P[]): Pair<P>[] {
    const free = new Set(before);
    const found = new Map<P, P>();
    const pairUp = (choose: (plan: P, among: readonly P[]) => P | undefined) => {
        for (const plan of after) {
            if (found.has(plan)) continue;
            const old = choose(plan, [...free]);
            if (!old) continue;
            free.delete(old);
            found.set(plan, old);
        }
    };
    const isNamedAlike = (a: P, b: P) => a.plan.plan.name === b.plan.plan.name;
    pairUp((plan, among) => among.find((old) => old.path === plan.path && isNamedAlike(old, plan)));
    pairUp((plan, among) =>
        mostAlike(
            plan,
            among.filter((old) => isNamedAlike(old, plan)),
            0,
        ),
    );
    pairUp((plan, among) =>
        mostAlike(
            plan,
            among.filter((old) => old.path === plan.path),
            ENOUGH,
        ),
    );
    pairUp((plan, among) => mostAlike(plan, among, ENOUGH));
    return [
        ...after.map((plan): Pair<P> => {
            const old = found.get(plan);
            return { ...(old && { before: old }), after: plan };
        }),
        ...[...free].map((old): Pair<P> => ({ before: old })),
    ];
}

/** Plans that share less than this are two plans and not one with changes; from experience with no source. */
const ENOUGH = 0.5;

function mostAlike<P extends Versioned>(plan: P, among: readonly P[], least: number): P | undefined {
    let best: P | undefined;
    let most = least;
    for (const old of among) {
        const shared = likeness(old.plan.plan, plan.plan.plan);
        if (shared < most || (best && shared === most)) continue;
        best = old;
        most = shared;
    }
    return best;
}

/** Share of what two plans say that both say: 1 for the same words, 0 for nothing in common. */
function likeness(a: Spread, b: Spread): number {
    const [said, other] = [saidIn(a), saidIn(b)];
    const all = new Set([...said, ...other]);
    return all.size === 0 ? 0 : (said.size + other.size - all.size) / all.size;
}

function saidIn({ boat, target, lines }: Spread): Set<string> {
    return new Set([
        ...(boat ? [`boat ${boat.value.name}`] : []),
        ...(target ? [`target ${target.value.name}`] : []),
        ...lines.flatMap((line) => {
            const { name } = line.position;
            return [name, `${name}: ${gearOf(line)}`, `${name}: ${line.outfit?.value.name}`];
        }),
    ]);
}

function gearOf({ lure, teaser, bait }: SpreadLine): string | undefined {
    return (lure ?? teaser ?? bait)?.value.name;
}
