import { KNOT } from '../../language/src/physics/constants.ts';
import { backWave, rideAt, speedBand } from '../../language/src/physics/waves/ride.ts';
import { waveTrain } from '../../language/src/physics/waves/train.ts';
import { usualWash } from '../../language/src/physics/waves/wash.ts';
import type {
    AnalysedPlan,
    Figure,
    LineFigures,
    Point,
    PoleFigures,
    WavePart,
    WavePlace,
} from '../../language/src/plan/figures.ts';
import type { Finding } from '../../language/src/plan/finding.ts';
import type { Measure } from '../../language/src/plan/measure.ts';
import type {
    Boat,
    From,
    HeadKind,
    Lure,
    Position,
    Side,
    Spread,
    SpreadLine,
} from '../../language/src/plan/model.ts';
import type { Origin, Place, Said } from '../../language/src/plan/origin.ts';
import { quantity } from '../../language/src/units/quantity.ts';
import { type UnitSymbol, units } from '../../language/src/units/unit.ts';

/** A line of a hand-made plan, in metres. */
export interface Towed {
    readonly position: string;
    readonly role?: SpreadLine['role'];
    readonly gear?: string;
    readonly kind?: HeadKind;
    readonly length?: number;
    readonly wave?: number;
    readonly back?: number;
    readonly from?: From['kind'];
    /** Ahead of the transom, to port, up. */
    readonly tow?: Point;
    readonly rodTip?: Point;
    /** The last stretch of the line that is in the water, m. */
    readonly under?: number;
}

export interface Made {
    readonly name?: string;
    readonly title?: string;
    readonly boat?: { readonly title: string; readonly length?: number; readonly beam?: number } | null;
    readonly knots?: number | null;
    readonly firstCrest?: number;
    readonly sea?: number;
    readonly poles?: readonly (readonly [side: Side, foot: Point, tip: Point, ...halyards: Point[]])[];
    readonly lines: readonly Towed[];
}

let next = 0;

/** A stretch of text of its own for everything that is said. */
export function somePlace(): Place {
    const start = next;
    next += 10;
    return {
        uri: 'file:///plan.spread',
        start,
        end: start + 8,
        range: { start: { line: start / 10, character: 4 }, end: { line: start / 10, character: 12 } },
    };
}

export function someOrigin(): Origin {
    const place = somePlace();
    return { place, property: place, voice: 'position' };
}

export function said<T>(value: T): Said<T> {
    return { value, origin: someOrigin() };
}

export function written(number: number, unit: UnitSymbol): Measure {
    const told = quantity(number, units[unit]);
    return { si: number * units[unit].toSI, quantity: told, origin: someOrigin(), standing: 'written' };
}

export function known<T>(value: T): Figure<T> {
    return { known: true, value, standing: 'computed', leaning: [] };
}

export function silent<T>(reason: string): Figure<T> {
    return { known: false, reason };
}

export function positionOf(name: string): Position {
    const [side, ...rest] = name.split(' ');
    const length = rest[0] === 'short' || rest[0] === 'long' ? rest[0] : undefined;
    return {
        name,
        side: side as Side,
        ...(length && { length }),
        place: rest.slice(length ? 1 : 0).join(' '),
        extra: false,
    };
}

/**
 * An analysed plan without a text: what is given is known, what is not is silent with a reason. Waves come from
 * the physics, lures run straight astern of their tow points.
 */
export function makePlan(made: Made): AnalysedPlan {
    const speed = made.knots === null ? undefined : (made.knots ?? 8) * KNOT;
    const train = speed === undefined ? undefined : waveTrain(speed)!;
    const waves = train && { ...train, firstCrest: made.firstCrest ?? train.firstCrest };
    const boat = made.boat ?? undefined;
    const whole: Boat | undefined = boat && {
        name: 'boat',
        title: boat.title,
        origin: someOrigin(),
        ...(boat.length && { length: written(boat.length, 'm') }),
        ...(boat.beam && { beam: written(boat.beam, 'm') }),
        holders: [],
        points: new Map(),
        positions: new Map(),
    };
    const lines = made.lines.map((towed): LineFigures => {
        const line = lineOf(towed);
        const lateral: Figure = towed.tow ? known(towed.tow[1]) : silent('The boat has no such tow point.');
        const aside = lateral.known ? lateral.value : 0;
        const metres =
            towed.back ??
            (towed.wave !== undefined && waves ? backWave(waves, towed.wave, aside) : undefined);
        const astern: Figure =
            metres === undefined ? silent('The plan does not say how far back it runs.') : known(metres);
        const place = metres !== undefined && waves && rideAt(waves, metres, aside);
        const wave: Figure<WavePlace> = place
            ? known({
                  wave: place.wave,
                  part: place.part.replace(', ', ' ') as WavePart,
                  onFace: place.part.startsWith('front'),
                  ideal: metres! + place.toIdeal,
                  faces: [],
                  ...(speedBand(place.wave, metres!, aside) && {
                      band: speedBand(place.wave, metres!, aside)!,
                  }),
              })
            : silent('The wave it runs on is not known.');
        const standby = towed.role === 'standby';
        return {
            line,
            towPoint: towed.tow ? known(towed.tow) : silent('The boat has no such tow point.'),
            ...(towed.rodTip && { rodTip: known(towed.rodTip) }),
            ...(metres !== undefined &&
                towed.tow && { entry: known<Point>([-(metres - (towed.under ?? 0)), towed.tow[1], 0]) }),
            astern: standby ? silent('It stands by on board.') : astern,
            lateral: standby ? silent('It stands by on board.') : lateral,
            wave,
            inWash: silent('Not looked at.'),
            drags: [],
            pull: silent('Not looked at.'),
            towing: silent('Not looked at.'),
            rest: silent('Not looked at.'),
            sway: known(metres ? Math.min((4 * Math.PI) / 180, Math.asin(Math.min(1, 3 / metres))) : 0.07),
        };
    });
    const plan: Spread = {
        kind: 'spread',
        name: made.name ?? 'plan',
        title: made.title ?? 'Four-line diamond',
        origin: someOrigin(),
        like: [],
        ...(whole && { boat: said(whole) }),
        target: said({ name: 'white-marlin', title: 'White marlin', origin: someOrigin() }),
        date: said('2026-02-14'),
        ...(speed !== undefined && { speed: written(made.knots ?? 8, 'kn') }),
        ...(made.sea && { sea: written(made.sea, 'm') }),
        crew: written(3, 'count'),
        lines: lines.map(({ line }) => line),
        waivers: [],
        orders: [],
        roles: [],
        fallbacks: [],
        spares: [],
        steps: [],
        notes: [],
        settings: [],
    };
    return {
        plan,
        waves: waves
            ? known({
                  speed: speed!,
                  wavelength: waves.length,
                  firstCrest: waves.firstCrest,
                  firstCrestMeasured: made.firstCrest !== undefined,
                  height: known(0.45),
              })
            : silent('The plan has no speed, so its waves are not known.'),
        ...(boat?.beam && { wash: known(usualWash(boat.beam)) }),
        poles: (made.poles ?? []).map(
            ([side, foot, tip, ...halyards]): PoleFigures => ({
                side,
                foot,
                tip,
                halyards,
                origin: someOrigin(),
            }),
        ),
        lines,
        pairs: [],
        swayAsked: { value: (4 * Math.PI) / 180, standing: 'estimated' },
        contact: 0.25,
        order: silent('Not looked at.'),
    };
}

function lineOf({ position, role, gear, kind, length, wave, back, from }: Towed): SpreadLine {
    const what = {
        name: 'thing',
        title: gear ?? 'Lure',
        origin: someOrigin(),
        ...(length && { length: written(length * 1000, 'mm') }),
    };
    const lure: Lure = { ...what, ...(kind && { kind: said(kind) }) };
    return {
        position: positionOf(position),
        role: role ?? 'fished',
        origin: someOrigin(),
        ...(role === 'teaser'
            ? { teaser: said(what) }
            : role === 'standby'
              ? { bait: said({ ...what, kind: said('live') }) }
              : { lure: said(lure) }),
        ...(back !== undefined && {
            back: { kind: 'distance', distance: written(back, 'm'), origin: someOrigin() } as const,
        }),
        ...(wave !== undefined && {
            back: { kind: 'wave', wave: written(wave, 'count'), origin: someOrigin() } as const,
        }),
        ...(from && { from: fromOf(from) }),
        drag: {},
        steps: [],
        notes: [],
    };
}

function fromOf(kind: From['kind']): From {
    if (kind === 'halyard') return { kind, number: 1, origin: someOrigin() };
    if (kind === 'point') return { kind, name: 'bridge', origin: someOrigin() };
    return { kind, origin: someOrigin() };
}

export function finding(
    rule: string,
    severity: Finding['severity'],
    positions: readonly string[],
    what: string,
    remedy?: string,
): Finding {
    return {
        rule,
        severity,
        at: somePlace(),
        what,
        ...(remedy && { remedy }),
        related: [],
        fixes: [],
        positions,
    };
}

/** The other side's everything. */
export function mirrored(made: Made): Made {
    const flip = ([x, y, z]: Point): Point => [x, y === 0 ? 0 : -y, z];
    const other = (name: string) =>
        name.replace(/^(port|starboard)/, (side) => (side === 'port' ? 'starboard' : 'port'));
    return {
        ...made,
        poles: (made.poles ?? []).map(
            ([side, ...points]) =>
                [other(side) as Side, ...points.map(flip)] as unknown as NonNullable<Made['poles']>[number],
        ),
        lines: made.lines.map((line) => ({
            ...line,
            position: other(line.position),
            ...(line.tow && { tow: flip(line.tow) }),
            ...(line.rodTip && { rodTip: flip(line.rodTip) }),
        })),
    };
}

const rigger = (side: Side, sign: number): NonNullable<Made['poles']>[number] => [
    side,
    [3.1, sign * 1.7, 2.3],
    [4.65, sign * 5.95, 6.83],
    [3.92, sign * 3.96, 4.7],
    [4.55, sign * 5.69, 6.54],
];

/** Two on deck, settled weather. */
export const diamond: Made = {
    name: 'four-in-the-blue',
    title: 'Four-line diamond',
    boat: { title: 'Sandpiper', length: 10.8, beam: 3.6 },
    knots: 8,
    firstCrest: 6.5,
    sea: 0.7,
    poles: [rigger('port', 1), rigger('starboard', -1)],
    lines: [
        {
            position: 'port short corner',
            gear: 'Ink',
            kind: 'pusher',
            length: 0.33,
            wave: 2,
            from: 'flat clip',
            tow: [0.1, 1.4, 1.1],
            rodTip: [-0.4, 1.75, 2.4],
        },
        {
            position: 'starboard long corner',
            gear: 'Smoke',
            kind: 'plunger',
            length: 0.3,
            wave: 3,
            from: 'flat clip',
            tow: [0.1, -1.4, 1.1],
            rodTip: [-0.4, -1.75, 2.4],
        },
        {
            position: 'starboard short rigger',
            gear: 'Green',
            kind: 'jet',
            length: 0.24,
            back: 34,
            from: 'halyard',
            tow: [3.92, -3.96, 4.7],
        },
        {
            position: 'port long rigger',
            gear: 'Slim',
            kind: 'slant',
            length: 0.21,
            back: 45,
            from: 'halyard',
            tow: [4.55, 5.69, 6.54],
        },
        { position: 'centre standby', role: 'standby', gear: 'scad' },
    ],
};

/** A larger boat with everything out: seven lines and two teasers. */
export const seven: Made = {
    name: 'seven-out',
    title: 'Seven lines, two teasers',
    boat: { title: 'Grey Shearwater', length: 16.4, beam: 5.1 },
    knots: 8.5,
    sea: 0.9,
    poles: [
        ['port', [5.2, 2.3, 3.1], [7.3, 9.6, 9.4], [6.1, 5.4, 6.2], [6.8, 7.9, 8.3]],
        ['starboard', [5.2, -2.3, 3.1], [7.3, -9.6, 9.4], [6.1, -5.4, 6.2], [6.8, -7.9, 8.3]],
        ['centre', [4.9, 0, 5.2], [2.4, 0, 10.4], [2.4, 0, 10.2]],
    ],
    lines: [
        {
            position: 'port short corner',
            gear: 'Ink',
            kind: 'pusher',
            length: 0.36,
            wave: 2,
            from: 'flat clip',
            tow: [0.2, 2.1, 1.3],
            rodTip: [-0.6, 2.6, 2.9],
        },
        {
            position: 'starboard long corner',
            gear: 'Smoke',
            kind: 'plunger',
            length: 0.33,
            wave: 3,
            from: 'flat clip',
            tow: [0.2, -2.1, 1.3],
            rodTip: [-0.6, -2.6, 2.9],
        },
        {
            position: 'port short rigger',
            gear: 'Old Crab',
            kind: 'chugger',
            length: 0.3,
            wave: 4,
            from: 'halyard',
            tow: [6.1, 5.4, 6.2],
        },
        {
            position: 'starboard short rigger',
            gear: 'Green',
            kind: 'slant',
            length: 0.27,
            wave: 4,
            from: 'halyard',
            tow: [6.1, -5.4, 6.2],
        },
        {
            position: 'port long rigger',
            gear: 'Slim',
            kind: 'bullet',
            length: 0.21,
            back: 55,
            from: 'halyard',
            tow: [6.8, 7.9, 8.3],
        },
        {
            position: 'starboard long rigger',
            gear: 'Fog',
            kind: 'jet',
            length: 0.23,
            wave: 6,
            from: 'halyard',
            tow: [6.8, -7.9, 8.3],
        },
        {
            position: 'centre shotgun',
            gear: 'Needle',
            kind: 'bullet',
            length: 0.18,
            wave: 7,
            from: 'halyard',
            tow: [2.4, 0, 10.2],
        },
        {
            position: 'port bridge teaser',
            role: 'teaser',
            gear: 'Big plain',
            length: 0.4,
            back: 9,
            from: 'point',
            tow: [4, 1.2, 5],
        },
        {
            position: 'starboard squid chain',
            role: 'teaser',
            gear: 'Five squid',
            length: 1.3,
            back: 12,
            from: 'point',
            tow: [4, -1.2, 5],
        },
    ],
};

/** A small boat that crowds its lines. */
export const dense: Made = {
    name: 'crowded',
    title: 'Everything out at once, close in',
    boat: { title: 'Turnstone', length: 7.2, beam: 2.4 },
    knots: 6.5,
    poles: [rigger('port', 1), rigger('starboard', -1)],
    lines: [
        {
            position: 'port short corner',
            gear: 'Ink',
            kind: 'pusher',
            length: 0.3,
            back: 9,
            from: 'rod tip',
            tow: [-0.3, 1.2, 2.2],
        },
        {
            position: 'port long corner',
            gear: 'Second',
            kind: 'slant',
            length: 0.28,
            back: 10,
            from: 'rod tip',
            tow: [0.4, 1.5, 2.3],
        },
        {
            position: 'starboard short corner',
            gear: 'Smoke',
            kind: 'diver',
            length: 0.2,
            back: 10,
            from: 'rod tip',
            tow: [-0.3, -1.2, 2.2],
            under: 4,
        },
        {
            position: 'starboard long corner',
            gear: 'Third',
            kind: 'chugger',
            length: 0.24,
            back: 11,
            from: 'rod tip',
            tow: [0.4, -1.5, 2.3],
        },
        {
            position: 'port short rigger',
            gear: 'Green',
            kind: 'jet',
            length: 0.22,
            back: 11,
            from: 'halyard',
            tow: [2.9, 3.9, 4.7],
        },
        {
            position: 'starboard short rigger',
            gear: 'Slim',
            kind: 'bullet',
            length: 0.2,
            back: 12,
            from: 'halyard',
            tow: [2.9, -3.9, 4.7],
        },
        {
            position: 'port long rigger',
            gear: 'Fog',
            kind: 'plunger',
            length: 0.25,
            back: 12,
            from: 'halyard',
            tow: [3.5, 5.7, 6.5],
        },
        {
            position: 'starboard long rigger',
            gear: 'Bright',
            kind: 'bullet',
            length: 0.2,
            back: 13,
            from: 'halyard',
            tow: [3.5, -5.7, 6.5],
        },
        {
            position: 'centre rigger',
            gear: 'Tall',
            kind: 'jet',
            length: 0.2,
            back: 13,
            from: 'halyard',
            tow: [1, 0, 6.5],
        },
        {
            position: 'centre shotgun',
            gear: 'Needle',
            kind: 'bullet',
            length: 0.18,
            back: 14,
            from: 'rod tip',
            tow: [-0.2, 0, 3],
        },
        {
            position: 'centre dredge',
            role: 'teaser',
            gear: 'Dredge',
            length: 1,
            back: 6,
            from: 'point',
            tow: [0, 0.8, 1],
        },
        { position: 'centre standby', role: 'standby', gear: 'scad' },
    ],
};
