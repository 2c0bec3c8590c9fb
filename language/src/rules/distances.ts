import type { LineFigures } from '../plan/figures.ts';
import { known } from './neighbours.ts';
import { sayApart } from './say.ts';

/** Whether a line runs further back than another one, as far as both are known. */
export function isBehind(a: LineFigures, b: LineFigures): boolean {
    const [far, near] = [known(a.astern), known(b.astern)];
    return far !== undefined && near !== undefined && far > near;
}

/** Two distances that a sentence sets against each other, as their authors wrote them. */
export function distances(a: LineFigures, b: LineFigures): [string, string] {
    const said = a.line.back?.kind === 'distance' ? a.line.back.distance : known(a.astern)!;
    const other = b.line.back?.kind === 'distance' ? b.line.back.distance : known(b.astern)!;
    return sayApart.length(said, other);
}
