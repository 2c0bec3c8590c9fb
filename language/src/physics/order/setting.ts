import { CONTACT_DISTANCE } from '../sway.ts';
import { type Crossing, crossing, type HandledLine } from './crossing.ts';
import { arrange, type Before, type Ordered } from './precedence.ts';

/**
 * Why one line is handled before another: handled after it, the mover would sweep across it. Lines are named by
 * their place in the list.
 */
export interface Demand extends Before, Crossing {
    /** The line that would sweep across the other: the first when setting, the second when taking in. */
    readonly mover: number;
}

export interface HandlingOrder extends Ordered {
    readonly demands: readonly Demand[];
}

/**
 * The order in which to set lines: a line that on its way out would sweep across another goes first, and the longest
 * first where that leaves it free (common practice, no source).
 */
export function settingOrder(lines: readonly HandledLine[], contact = CONTACT_DISTANCE): HandlingOrder {
    const demands = sweeps(lines, contact).map(({ mover, other, ...crossed }): Demand => {
        return { first: mover, second: other, mover, ...crossed };
    });
    return { ...arrange(lines.length, demands, (one, other) => longer(lines, one, other)), demands };
}

/**
 * The order in which to take lines in: setting backwards. A line that others would be swept across by comes in
 * before them, and the shortest first where that leaves it free.
 */
export function retrievingOrder(lines: readonly HandledLine[], contact = CONTACT_DISTANCE): HandlingOrder {
    const demands = sweeps(lines, contact).map(({ mover, other, ...crossed }): Demand => {
        return { first: other, second: mover, mover, ...crossed };
    });
    return { ...arrange(lines.length, demands, (one, other) => longer(lines, other, one)), demands };
}

/** Every line that sweeps across another on its way. */
function sweeps(
    lines: readonly HandledLine[],
    contact: number,
): (Crossing & { mover: number; other: number })[] {
    return lines.flatMap((line, mover) =>
        lines.flatMap((set, other) => {
            const crossed = mover === other ? undefined : crossing(line, set, contact);
            return crossed ? [{ mover, other, ...crossed }] : [];
        }),
    );
}

function longer(lines: readonly HandledLine[], one: number, other: number): number {
    return lines[other]!.astern - lines[one]!.astern;
}
