import type { Figure, LineFigures, StrikeFigures, StrikesFigures } from '../figures.ts';
import type { Spread } from '../model.ts';
import { silent } from './figure.ts';
import { boundsOn, strikeOn, styleOf } from './strike.ts';

/**
 * A bite on one line, struck at once and with drop-back, whichever the plan means; `undefined` where nothing is fished.
 *
 * @param series  whether every moment is wanted, or the key ones
 */
export function strikesOn(figures: LineFigures, plan: Spread, series = true): StrikesFigures | undefined {
    const { line } = figures;
    if (line.role !== 'fished') return undefined;
    const told = (style: 'direct' | 'drop-back'): Figure<StrikeFigures> => {
        if (style === 'drop-back' && !line.drag.set)
            return silent(`The \`set\` drag of the ${line.position.name} is not said.`);
        if (style === 'drop-back' && style !== styleOf(line) && !line.wait)
            return silent('How long a drop-back would `wait` is not said.');
        const found = strikeOn(figures, plan, style);
        if (!found.known) return found;
        const { moments, series: every, peak } = found.value;
        const bounds = boundsOn(figures, plan, style);
        const timed = moments.map((moment) => {
            const range = bounds?.times.get(moment.name);
            return range && range.low < range.high ? { ...moment, range } : moment;
        });
        return {
            ...found,
            value: {
                moments: timed,
                ...(series && { series: every }),
                peak,
                ...(bounds && { peakRange: bounds.peak }),
            },
        };
    };
    return { planned: styleOf(line), direct: told('direct'), dropBack: told('drop-back') };
}
