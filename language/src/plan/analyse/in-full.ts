import type { AnalysedPlan, LineFigures } from '../figures.ts';
import { clearingsOf } from './clearing.ts';
import { strikesOn } from './strikes.ts';

/**
 * A plan with what is computed only when somebody wants to see it, but for its turns: strikes, and what is cleared.
 *
 * @param strikesOf  positions whose strikes are wanted moment by moment; of the others the key moments are
 */
export function inFull(analysed: AnalysedPlan, strikesOf: readonly string[] = []): AnalysedPlan {
    const { plan, lines } = analysed;
    return {
        ...analysed,
        clearings: clearingsOf(analysed),
        lines: lines.map((figures): LineFigures => {
            const strikes = strikesOn(figures, plan, strikesOf.includes(figures.line.position.name));
            return strikes ? { ...figures, strikes } : figures;
        }),
    };
}
