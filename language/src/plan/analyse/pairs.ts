import type { LineFigures, PairFigures } from '../figures.ts';

/** Every pair of lines that run at a known place. */
export function pairsOf(_lines: readonly LineFigures[], _swayAsked: number, _contact: number): PairFigures[] {
    return [];
}
