import type { AnalysedPlan, CleanTurn, SideTurnFigures } from '../../plan/figures.ts';
import { spokenUnits } from '../../plan/spoken-units.ts';
import { limitWords } from '../../plan/turn-words.ts';
import { print } from '../../units/print.ts';
import { units } from '../../units/unit.ts';
import { estimateMark, type Told, toldLength } from './told.ts';

/** The turns that the plan bears, each way. */
export interface TurnOnCard {
    /** The tightest one that the helm plans to make, by its radius. */
    readonly asked?: Told;
    readonly sides: readonly SideOnCard[];
    /** Sentences: what the figures lean on, or why there are none. */
    readonly remarks: readonly string[];
}

export interface SideOnCard {
    readonly side: 'port' | 'starboard';
    /** Of the tightest turn in which no line fouls another; absent where none that was looked at is clean. */
    readonly clean?: TurnLimitOnCard;
    /** Why nothing is clean. */
    readonly never?: string;
    /** Of the tightest turn in which every lure keeps its least speed too. */
    readonly working?: TurnLimitOnCard;
    /** Why no turn keeps every lure working. */
    readonly neverWorking?: string;
    /** Whose least speed nobody said: not judged in `working`. */
    readonly unknown: readonly string[];
}

export interface TurnLimitOnCard {
    readonly radius: Told;
    /** For a half turn. */
    readonly halfTurn?: string;
    /** What goes wrong in a tighter one: completes `tighter, …`. */
    readonly limit?: string;
}

export function turnsOnCard(analysed: AnalysedPlan): TurnOnCard {
    const { plan, turns } = analysed;
    const like = plan.turn?.quantity;
    const asked = plan.turn && toldLength(plan.turn.si, like);
    if (!turns?.known) {
        return {
            ...(asked && { asked }),
            sides: [],
            remarks: [turns ? turns.reason : 'The turns of this plan were not looked at.'],
        };
    }
    const about = turns.standing === 'estimated';
    const { length } = spokenUnits(analysed);
    const limitOf = ({ radius, halfTurn, limit }: CleanTurn): TurnLimitOnCard | undefined =>
        radius === undefined
            ? undefined
            : {
                  radius: { ...toldLength(radius, like, length), ...(about && { about }) },
                  ...(halfTurn !== undefined && {
                      halfTurn: `${about ? estimateMark : ''}${print(halfTurn, units.s, { digits: 0 })}`,
                  }),
                  ...(limit && { limit: limitWords(limit) }),
              };
    const sideOf = (side: 'port' | 'starboard', { noFoul, allWorking }: SideTurnFigures): SideOnCard => {
        const clean = limitOf(noFoul);
        const working = limitOf(allWorking);
        const never = !clean && noFoul.limit && limitWords(noFoul.limit);
        const { leastKnown, leastUnknown } = turns.value;
        const differs = working && leastKnown.length > 0 && allWorking.radius !== noFoul.radius;
        const neverWorking = !working && allWorking.limit && limitWords(allWorking.limit);
        return {
            side,
            ...(clean && { clean }),
            ...(never && { never }),
            ...(differs && { working }),
            ...(neverWorking && { neverWorking }),
            unknown: leastUnknown.map(({ line }) => line.position.name),
        };
    };
    return {
        ...(asked && { asked }),
        sides: [sideOf('port', turns.value.port), sideOf('starboard', turns.value.starboard)],
        remarks: turns.leaning,
    };
}
