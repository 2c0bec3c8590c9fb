import { nearest } from './nearest.ts';
import { type Dimension, type Unit, units } from './unit.ts';

const bySymbol = new Map(Object.values(units).map((unit) => [unit.symbol, unit]));
const byWord = new Map(
    Object.values(units).flatMap((unit) =>
        [unit.symbol.toLowerCase(), ...unit.aliases].map((word) => [word, unit] as const),
    ),
);
bySymbol.delete('');
byWord.delete('');

/** Every accepted word in lower case, symbols first for each unit. */
export const unitWords: readonly string[] = [...byWord.keys()];

/** A word that looks like a unit and is refused, because two people may read it differently. */
export interface UnclearUnit {
    readonly word: string;
    /** Completes "… could be". */
    readonly readings: string;
    /** What to write instead, the likeliest first. */
    readonly instead: readonly Unit[];
}

const unclear = new Map<string, UnclearUnit>(
    (
        [
            ['nm', 'nautical miles, nanometres or newton metres', [units.nmi]],
            ['NM', 'nautical miles or newton metres', [units.nmi]],
            ['Nm', 'newton metres or nautical miles', [units.nmi, units.N]],
            ['M', 'metres or nautical miles', [units.m, units.nmi]],
            ['mi', 'statute or nautical miles', [units.nmi, units.km]],
            ['mile', 'statute or nautical miles', [units.nmi, units.km]],
            ['miles', 'statute or nautical miles', [units.nmi, units.km]],
            ['kN', 'kilonewtons or knots', [units.N, units.kn]],
            ['#', 'pounds or a number', [units.lb]],
            ["'", 'feet or minutes of arc', [units.ft]],
            ['′', 'feet or minutes of arc', [units.ft]],
            ['"', 'inches or seconds of arc', [units.in]],
            ['″', 'inches or seconds of arc', [units.in]],
        ] as const
    ).map(([word, readings, instead]) => [word, { word, readings, instead }]),
);

const longest = Math.max(...unitWords.map((word) => word.length));

/** The unit that a word means: its exact symbol first, then any accepted word whatever its case. */
export function unitOf(word: string): Unit | undefined {
    if (word.length > longest) return undefined;
    const exact = bySymbol.get(word);
    if (exact) return exact;
    return unclear.has(word) ? undefined : byWord.get(word.toLowerCase());
}

/** Whether a word standing after a number is a unit. */
export function isUnitWord(word: string): boolean {
    return unitOf(word) !== undefined;
}

/** Why a word that looks like a unit is refused, if it is one of those. */
export function unclearUnit(word: string): UnclearUnit | undefined {
    return unclear.get(word) ?? unclear.get(word.toLowerCase());
}

/** The unit that an unknown or misplaced word was most likely meant to be, of the dimension wanted. */
export function nearestUnit(word: string, dimension?: Dimension): Unit | undefined {
    const fits = (unit: Unit) => dimension === undefined || unit.dimension === dimension;
    const known = unitOf(word);
    if (known && fits(known)) return known;
    const meant = unclearUnit(word)?.instead.find(fits);
    if (meant) return meant;
    const words = unitWords.filter((candidate) => fits(byWord.get(candidate)!));
    const near = nearest(word, words) ?? words.find((candidate) => candidate.startsWith(word.toLowerCase()));
    return near === undefined ? undefined : byWord.get(near);
}
