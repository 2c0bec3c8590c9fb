/** What a number measures. Mass and force are one dimension here: on deck both are read off a scale. */
export type Dimension =
    | 'length'
    | 'load'
    | 'speed'
    | 'angle'
    | 'time'
    | 'share'
    | 'temperature'
    | 'volume'
    | 'count';

export interface Unit {
    /** As it is printed, and as a plan is best written. */
    readonly symbol: string;
    readonly dimension: Dimension;
    /** SI value = (number + offset) · ratio[0] / ratio[1]. A load's SI value is its mass in kilograms. */
    readonly ratio: readonly [number, number];
    /** Zero but for temperatures. */
    readonly offset: number;
    /** The ratio as one factor, for formulas where the last binary digit does not matter. */
    readonly toSI: number;
    readonly system: 'metric' | 'imperial' | 'both';
    /** Other words for it, in lower case. Words are read without regard to case. */
    readonly aliases: readonly string[];
    /** Decimals that a crew can use: below 10, and from 10 to 100. Smaller and larger numbers follow suit. */
    readonly decimals: readonly [number, number];
    /** Symbol of the unit that stands beside it when both systems are shown. */
    readonly beside?: UnitSymbol;
}

export type UnitSymbol =
    | ('m' | 'cm' | 'mm' | 'km' | 'ft' | 'in' | 'yd' | 'fathom' | 'nmi')
    | ('kg' | 'g' | 'N' | 'lb' | 'oz')
    | ('kn' | 'km/h' | 'm/s' | 'mph')
    | 'deg'
    | ('s' | 'min' | 'h' | 'd')
    | '%'
    | ('°C' | '°F')
    | ('ml' | 'cc' | 'l')
    | 'count';

type Row = readonly [
    dimension: Dimension,
    system: Unit['system'],
    ratio: Unit['ratio'],
    decimals: Unit['decimals'],
    aliases: string,
    beside?: UnitSymbol,
    offset?: number,
];

// Ratios of integers wherever the definition is exact, so that whole numbers of two units that are one length
// are one number in SI: 6 ft 4 in and 76 in, 460 mm and 46 cm.
const rows: Readonly<Record<UnitSymbol, Row>> = {
    // Metre and prefixes: SI Brochure (BIPM). Yard of 0.9144 m: International Yard and Pound agreement, 1959;
    // foot and inch are its third and thirty-sixth part, the fathom two of it. Nautical mile of 1852 m: First
    // International Extraordinary Hydrographic Conference, Monaco 1929.
    m: ['length', 'metric', [1, 1], [1, 1], 'metre metres meter meters mtr mtrs', 'ft'],
    cm: ['length', 'metric', [1, 100], [1, 1], 'centimetre centimetres centimeter centimeters', 'in'],
    mm: ['length', 'metric', [1, 1000], [1, 0], 'millimetre millimetres millimeter millimeters', 'in'],
    km: ['length', 'metric', [1000, 1], [2, 1], 'kilometre kilometres kilometer kilometers'],
    ft: ['length', 'imperial', [3048, 10_000], [1, 0], 'foot feet', 'm'],
    in: ['length', 'imperial', [254, 10_000], [1, 1], 'inch inches', 'mm'],
    yd: ['length', 'imperial', [9144, 10_000], [1, 0], 'yds yard yards', 'm'],
    fathom: ['length', 'imperial', [18_288, 10_000], [1, 1], 'fathoms', 'm'],
    nmi: ['length', 'both', [1852, 1], [2, 1], ''],

    // Pound of 0.45359237 kg: International Yard and Pound agreement, 1959; the ounce is its sixteenth. The
    // newton is told in kilograms that weigh as much under standard gravity, 9.80665 m/s²: 3rd General
    // Conference on Weights and Measures, 1901.
    kg: [
        'load',
        'metric',
        [1, 1],
        [1, 1],
        'kgs kilo kilos kilogram kilograms kilogramme kilogrammes kgf',
        'lb',
    ],
    g: ['load', 'metric', [1, 1000], [1, 0], 'gram grams gramme grammes gf', 'oz'],
    N: ['load', 'metric', [100_000, 980_665], [1, 0], 'newton newtons', 'lb'],
    lb: ['load', 'imperial', [45_359_237, 100_000_000], [1, 0], 'lbs pound pounds lbf', 'kg'],
    oz: ['load', 'imperial', [45_359_237, 1_600_000_000], [1, 1], 'ounce ounces ozf', 'g'],

    // Knot: one international nautical mile an hour, SI Brochure, 8th edition (BIPM 2006), table 8. The mile of
    // mph is 1760 yards of 1959: 1609.344 m.
    kn: ['speed', 'both', [1852, 3600], [1, 1], 'kt kts knot knots'],
    'km/h': ['speed', 'metric', [1000, 3600], [1, 1], 'kph kmh kmph', 'mph'],
    'm/s': ['speed', 'metric', [1, 1], [1, 1], 'mps', 'mph'],
    mph: ['speed', 'imperial', [1_609_344, 3_600_000], [1, 1], 'mi/h', 'km/h'],

    // Degree, minute, hour, day and litre: SI Brochure, 8th edition (BIPM 2006), table 6.
    deg: ['angle', 'both', [Math.PI, 180], [1, 0], 'degs degree degrees ° º'],
    s: ['time', 'both', [1, 1], [1, 0], 'sec secs second seconds'],
    min: ['time', 'both', [60, 1], [1, 0], 'mins minute minutes'],
    h: ['time', 'both', [3600, 1], [1, 1], 'hr hrs hour hours'],
    d: ['time', 'both', [86_400, 1], [1, 0], 'day days'],
    '%': ['share', 'both', [1, 100], [1, 0], 'percent pct'],

    // 0 °C is 273.15 K: SI Brochure. t/°C = (t/°F - 32) / 1.8: NIST SP 811 (2008), appendix B, from memory.
    '°C': ['temperature', 'metric', [1, 1], [1, 1], 'c ºc degc celsius', '°F', 273.15],
    '°F': ['temperature', 'imperial', [5, 9], [1, 1], 'f ºf degf fahrenheit', '°C', 459.67],

    ml: ['volume', 'metric', [1, 1_000_000], [1, 0], 'millilitre millilitres milliliter milliliters'],
    cc: ['volume', 'metric', [1, 1_000_000], [1, 0], ''],
    l: ['volume', 'metric', [1, 1000], [1, 1], 'litre litres liter liters'],
    count: ['count', 'both', [1, 1], [2, 1], ''],
};

/** Every unit that a plan may use. `count` is the unit of a bare number and prints as nothing. */
export const units = Object.fromEntries(
    Object.entries(rows).map(([symbol, row]) => [symbol, unit(symbol, row)]),
) as Readonly<Record<UnitSymbol, Unit>>;

/** The unit to speak in where nobody chose one. */
export const usualUnit: Readonly<Record<Dimension, Unit>> = {
    length: units.m,
    load: units.kg,
    speed: units.kn,
    angle: units.deg,
    time: units.min,
    share: units['%'],
    temperature: units['°C'],
    volume: units.ml,
    count: units.count,
};

/** The units of a dimension, metric before imperial where both exist. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
    return Object.values(units).filter((unit) => unit.dimension === dimension);
}

function unit(symbol: string, [dimension, system, ratio, decimals, aliases, beside, offset = 0]: Row): Unit {
    return Object.freeze({
        symbol: symbol === 'count' ? '' : symbol,
        dimension,
        ratio,
        offset,
        toSI: ratio[0] / ratio[1],
        system,
        aliases: aliases.split(' ').filter(Boolean),
        decimals,
        ...(beside && { beside }),
    });
}
