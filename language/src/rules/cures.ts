import type { PairFigures } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import { capital, listed, say } from './say.ts';

/** What would clear two lines that touch, each way alone, as a sentence. */
export function cureInWords(cure: PairFigures['cure'], like: Measure | undefined): string {
    const ways = [
        cure?.stagger && `${say.length(ample(cure.stagger), like)} more stagger`,
        cure?.height && `${say.length(ample(cure.height), like)} more height on the longer line`,
        cure?.width && `${say.length(ample(cure.width), like)} more width`,
    ].filter((way) => typeof way === 'string');
    if (ways.length === 0) return 'Give the two more stagger, height or width.';
    return `${capital(listed(ways, 'or'))} would clear them.`;
}

/** Up to the next tenth of a metre: nobody moves a clip by less. */
function ample(metres: number): number {
    return Math.ceil(metres * 10 - 1e-9) / 10;
}
