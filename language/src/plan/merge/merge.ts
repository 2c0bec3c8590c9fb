import type { Block, Chunk } from './chunks.ts';
import { bothSides, type Side, takenOut } from './conflict.ts';

export interface Merged {
    readonly text: string;
    /** What both sides changed, each otherwise: how often. */
    readonly conflicts: number;
}

/**
 * Two versions of a text that come from one, put together by what each entry is about and not by its line. What only
 * one side changed is taken from that side; what both changed alike is taken once. Where both changed one thing
 * otherwise, ours stands and theirs stays beside it in comments, so that no side is lost.
 */
export function merge(base: readonly Chunk[], ours: readonly Chunk[], theirs: readonly Chunk[]): Merged {
    const [was, our, their] = [byKey(base), byKey(ours), byKey(theirs)];
    let conflicts = 0;
    const parts = orderOf(base, ours, theirs).map((key): string => {
        const merged = mergeOne(was.get(key), our.get(key), their.get(key));
        conflicts += merged.conflicts;
        return merged.text;
    });
    return { text: joined(parts), conflicts };
}

function mergeOne(base: Chunk | undefined, ours: Chunk | undefined, theirs: Chunk | undefined): Merged {
    if (isSame(ours, theirs)) return only(ours);
    if (isSame(base, ours)) return only(theirs);
    if (isSame(base, theirs)) return only(ours);
    if (ours?.block && theirs?.block) {
        const within = mergeBlocks(base?.block, ours.block, theirs.block);
        if (within) return within;
    }
    if (ours && theirs) return { text: bothSides(ours, theirs), conflicts: 1 };
    const [kept, side]: [Chunk, Side] = ours ? [ours, 'theirs'] : [theirs!, 'ours'];
    return { text: takenOut(kept, side), conflicts: 1 };
}

/** Nothing where the heads themselves do not merge: a name, a title, a preset. */
function mergeBlocks(base: Block | undefined, ours: Block, theirs: Block): Merged | undefined {
    const heads = [base?.head, ours.head, theirs.head] as const;
    const [was, our, their] = heads.map((head) => head?.split(/\s+/).join(' '));
    const head = our === their || their === was ? heads[1] : our === was ? heads[2] : undefined;
    if (head === undefined) return undefined;
    const { text, conflicts } = merge(base?.chunks ?? [], ours.chunks, theirs.chunks);
    return { text: joined([head, text]), conflicts };
}

function only(chunk: Chunk | undefined): Merged {
    return { text: chunk?.text ?? '', conflicts: 0 };
}

/** How a text is laid out is nobody's change. */
function isSame(a: Chunk | undefined, b: Chunk | undefined): boolean {
    return a === b || (a !== undefined && b !== undefined && bare(a.text) === bare(b.text));
}

function bare(text: string): string {
    return text.split(/\s+/).filter(Boolean).join(' ');
}

/**
 * Every key once: what the base had in the order of the side that changed it, what came behind whatever it was put
 * behind; where both put something there, by key, so that it does not matter which side is ours.
 */
function orderOf(base: readonly Chunk[], ours: readonly Chunk[], theirs: readonly Chunk[]): string[] {
    const known = new Set(base.map(({ key }) => key));
    const kept = (side: readonly Chunk[]) => side.map(({ key }) => key).filter((key) => known.has(key));
    const isInOrder = (side: readonly Chunk[]) => {
        const own = new Set(kept(side));
        return (
            kept(side).join('\n') ===
            base
                .map(({ key }) => key)
                .filter((key) => own.has(key))
                .join('\n')
        );
    };
    const lead = isInOrder(ours) ? (isInOrder(theirs) ? base : theirs) : ours;
    const skeleton = [...new Set([...kept(lead), ...kept(base)])];
    const behind = new Map<string, string[][]>();
    for (const side of [ours, theirs]) {
        let anchor = START;
        for (const { key } of side) {
            if (known.has(key)) anchor = key;
            else {
                const runs = behind.get(anchor) ?? behind.set(anchor, []).get(anchor)!;
                const run = runs.find(
                    (each) => each.at(-1) !== undefined && follows(side, each.at(-1)!, key),
                );
                if (run) run.push(key);
                else runs.push([key]);
            }
        }
    }
    const after = (anchor: string) =>
        (behind.get(anchor) ?? []).sort((a, b) => (a[0]! < b[0]! ? -1 : 1)).flat();
    return [
        ...new Set([START, ...skeleton].flatMap((key) => [...(key === START ? [] : [key]), ...after(key)])),
    ];
}

const START = '';

/** Whether the one stands right behind the other: a run of new entries stays together. */
function follows(side: readonly Chunk[], first: string, second: string): boolean {
    const at = side.findIndex(({ key }) => key === second);
    return at > 0 && side[at - 1]!.key === first;
}

function byKey(chunks: readonly Chunk[]): Map<string, Chunk> {
    return new Map(chunks.map((chunk) => [chunk.key, chunk]));
}

/** Pieces of a text in a row; two that met on no line of their own do not run into each other. */
function joined(parts: readonly string[]): string {
    return parts
        .filter((part) => part !== '')
        .reduce(
            (text, part) =>
                text === '' || /\s$/.test(text) || /^\s/.test(part) ? text + part : `${text}\n${part}`,
            '',
        );
}
