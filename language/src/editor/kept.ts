/** A stretch of a text that stands in the next one too, so many letters farther on. */
export interface Kept {
    readonly start: number;
    readonly end: number;
    readonly by: number;
}

/** What two texts have in common, in order: letters from both ends, and between two changes the lines that each has once. */
export function keptStretches(before: string, after: string): Kept[] {
    let head = 0;
    let [from, to] = [before.length, after.length];
    const shorter = Math.min(from, to);
    while (head < shorter && before[head] === after[head]) head++;
    while (from > head && to > head && before[from - 1] === after[to - 1]) {
        from--;
        to--;
    }
    const between = linesOnce(before, head, from);
    const others = linesOnce(after, head, to);
    const kept: Kept[] = [];
    const keep = (start: number, end: number, by: number) => {
        const last = kept.at(-1);
        if (last?.end === start && last.by === by) kept[kept.length - 1] = { ...last, end };
        else kept.push({ start, end, by });
    };
    keep(0, head, 0);
    let reached = head;
    for (const [line, start] of between) {
        const there = others.get(line);
        // Of lines that changed places, the one that stood first is taken to have stayed.
        if (there === undefined || there < reached) continue;
        reached = there + line.length;
        keep(start, start + line.length, there - start);
    }
    keep(from, before.length, after.length - before.length);
    return kept;
}

/** The whole lines of a stretch that stand in it once, with where each begins. */
function linesOnce(text: string, from: number, to: number): Map<string, number> {
    const found = new Map<string, number>();
    const twice = new Set<string>();
    let start = from;
    for (const line of text.slice(from, to).split(/(?<=\n)/)) {
        if (found.has(line)) twice.add(line);
        else if (line.endsWith('\n')) found.set(line, start);
        start += line.length;
    }
    for (const line of twice) found.delete(line);
    return found;
}
