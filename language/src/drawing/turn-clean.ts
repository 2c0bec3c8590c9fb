import type { TurnInTime } from '../plan/analyse/turn-in-time.ts';
import type { CleanTurn, SideTurnFigures, TurnLimit } from '../plan/figures.ts';
import { limitWords } from '../plan/turn-words.ts';
import { print } from '../units/print.ts';
import type { Quantity } from '../units/quantity.ts';
import { units } from '../units/unit.ts';
import { asWritten } from './words.ts';

export interface CleanTurnWords {
    /** The tightest turn that keeps every two lines apart and every lure working; absent where none is clean. */
    readonly radius?: number;
    /** The radius in its author's unit. */
    readonly told?: string;
    /** s */
    readonly halfTurn?: number;
    /** `48 m to port, 37 s for a half turn` */
    readonly words: string;
    /** `Tighter, port short corner and centre shotgun touch.` */
    readonly limit?: string;
}

/** Neither a foul nor a lure that stops working. */
export function cleanRadius({ noFoul, allWorking }: SideTurnFigures): number | undefined {
    if (noFoul.radius === undefined || allWorking.radius === undefined) return undefined;
    return Math.max(noFoul.radius, allWorking.radius);
}

export function cleanWords(
    of: SideTurnFigures | undefined,
    side: TurnInTime['side'],
    like: Quantity | undefined,
): CleanTurnWords {
    if (!of) return { words: `not known to ${side}` };
    const radius = cleanRadius(of);
    const limiting: CleanTurn =
        of.noFoul.radius === undefined ||
        (of.allWorking.radius ?? Number.POSITIVE_INFINITY) < of.noFoul.radius
            ? of.noFoul
            : of.allWorking;
    const limit = limiting.limit && troubleOf(limiting.limit);
    if (radius === undefined) {
        return {
            words: `none to ${side} of those looked at`,
            ...(limit && { limit: `To ${side}: ${limit} in all of them.` }),
        };
    }
    const { halfTurn } = limiting;
    const seconds = halfTurn === undefined ? '' : `, ${print(halfTurn, units.s)} for a half turn`;
    return {
        radius,
        told: asWritten(radius, like),
        ...(halfTurn !== undefined && { halfTurn }),
        words: `${asWritten(radius, like)} to ${side}${seconds}`,
        ...(limit && { limit: `Tighter to ${side}, ${limit}.` }),
    };
}

/** Beside a picture the lure is what one sees stop. */
function troubleOf(limit: TurnLimit): string {
    const [figures] = limit.lines;
    return limit.kind === 'slow' && figures
        ? `the lure of the ${figures.line.position.name} stops working`
        : limitWords(limit);
}
