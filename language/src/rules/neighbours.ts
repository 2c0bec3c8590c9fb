import type { AnalysedPlan, Figure, LineFigures, PairFigures } from '../plan/figures.ts';

/**
 * Every pair of fished lines that a crew would compare, the one nearer the boat first: neighbours seen from
 * astern, and lines that follow one another on the same side. Pairs at the same distance have no order.
 */
export function* neighboursOutward(analysis: AnalysedPlan): Generator<readonly [LineFigures, LineFigures]> {
    const fished = fishedLines(analysis).filter(({ astern }) => astern.known);
    const byDistance = [...fished].sort((a, b) => known(a.astern)! - known(b.astern)!);
    const besides = new Set(analysis.pairs.filter((pair) => pair.neighbours).map(({ a, b }) => keyOf(a, b)));
    for (const [index, far] of byDistance.entries()) {
        const inner = byDistance.slice(0, index);
        const ahead = inner.findLast(({ line }) => line.position.side === far.line.position.side);
        for (const near of inner) {
            if (near !== ahead && !besides.has(keyOf(near, far)) && !besides.has(keyOf(far, near))) continue;
            if (known(near.astern)! < known(far.astern)!) yield [near, far];
        }
    }
}

/** The lines that fish: neither teasers nor gear that stands by. */
export function fishedLines(analysis: AnalysedPlan): readonly LineFigures[] {
    return analysis.lines.filter(({ line }) => line.role === 'fished');
}

/** Whatever a fish may take: the lines that fish, and the gear that stands by to be pitched to one. */
export function tackledLines(analysis: AnalysedPlan): readonly LineFigures[] {
    return analysis.lines.filter(({ line }) => line.role !== 'teaser');
}

/** Pairs of two fished lines. */
export function fishedPairs(analysis: AnalysedPlan): readonly PairFigures[] {
    return analysis.pairs.filter(({ a, b }) => a.line.role === 'fished' && b.line.role === 'fished');
}

/** The pair with the line that runs nearer the boat first; in the plan's order where that is not known. */
export function nearFirst({ a, b }: PairFigures): readonly [near: LineFigures, far: LineFigures] {
    return a.astern.known && b.astern.known && a.astern.value > b.astern.value ? [b, a] : [a, b];
}

/** The greater sway of two lines, which is what their clearance was computed for, rad. */
export function swayOf({ a, b }: { readonly a: LineFigures; readonly b: LineFigures }): number {
    return Math.max(known(a.sway) ?? 0, known(b.sway) ?? 0);
}

/** A figure's value, or `undefined` where it is silent. */
export function known<T>(figure: Figure<T>): T | undefined {
    return figure.known ? figure.value : undefined;
}

function keyOf(a: LineFigures, b: LineFigures): string {
    return `${a.line.position.name}\n${b.line.position.name}`;
}
