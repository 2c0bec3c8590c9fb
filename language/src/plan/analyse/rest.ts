import { MATERIALS, type MaterialName, usualNylonDiameter } from '../../physics/coefficients.ts';
import { type LineAtRest, lineAtRest } from '../../physics/line.ts';
import { BAIT_CONDITION, lurePull } from '../../physics/lure-drag.ts';
import { BAIT_SHARE_IN_WATER, lureWeight, SHARE_IN_WATER } from '../../physics/lure-weight.ts';
import type { Section, Tow } from '../../physics/towed.ts';
import { print } from '../../units/print.ts';
import { units } from '../../units/unit.ts';
import type { Figure, Point, Range, RestFigures } from '../figures.ts';
import type { Measure } from '../measure.ts';
import type { Bait, Leader, Line, Lure, Spread, SpreadLine, Teaser } from '../model.ts';
import { known, leaningOf, silent, withoutSpeed } from './figure.ts';
import { remembering } from './memory.ts';

/** The leader of a line: its position's own, else its lure's. */
export function leaderOf(line: SpreadLine): Leader | undefined {
    return line.leader ?? line.lure?.value.leader ?? line.teaser?.value.leader ?? line.bait?.value.leader;
}

// A team's plans differ in a few lines; the others are settled once.
const settle = remembering(lineAtRest, 512);

/** A line settled behind the boat on a straight course: how much is out, how it enters, what it pulls. */
export function restOf(
    line: SpreadLine,
    plan: Spread,
    towPoint: Figure<Point>,
    astern: Figure,
): Figure<RestFigures> {
    if (!towPoint.known) return towPoint;
    if (!astern.known) return astern;
    if (!plan.speed) return withoutSpeed(plan);
    const tow = towOf(line, plan);
    if (!tow.known) return tow;
    const found = settle({
        towPoint: towPoint.value,
        speed: plan.speed.si,
        length: { astern: astern.value },
        ...tow.value,
        runs: isDiver(line) ? 'free' : 'surface',
    });
    if (found.kind === 'too-short') {
        return silent(`The lure would have to run at least ${print(found.least, units.m)} back.`);
    }
    if (found.kind !== 'at-rest') return silent(found.reason);
    const { lineOut, tension, angle, entry, upward, sag, atSurface, lure } = found;
    const range = rangeOf(line, plan, (tried) =>
        settle({
            towPoint: towPoint.value,
            speed: plan.speed!.si,
            length: { astern: astern.value },
            ...tow.value,
            lure: { ...tow.value.lure, ...tried },
            runs: isDiver(line) ? 'free' : 'surface',
        }),
    );
    return known(
        {
            lineOut,
            tension,
            angle,
            ...(entry && { entry }),
            lift: upward.ofWeight,
            sag,
            atSurface,
            ...(isDiver(line) && { depth: Math.max(0, -lure[2]) }),
            ...(range && { range }),
        },
        'computed',
        leaningOf(towPoint, astern, tow),
    );
}

/**
 * A lip's pull downwards over the lure's drag. Estimate: nobody is known to have published it for trolled plugs; half
 * to twice the drag is what a plate at 30 to 60 degrees across the flow comes to.
 */
export const LIP = { value: 1, low: 0.5, high: 2 } as const;

/** The line settled with the lowest and the highest that its estimates leave open. */
function rangeOf(
    line: SpreadLine,
    { speed }: Spread,
    settled: (lure: { dragArea: number; diveArea?: number }) => LineAtRest,
): RestFigures['range'] {
    const pull = pullAt(line, speed!.si);
    if (pull.kind !== 'pull' || (pull.standing === 'measured' && !isDiver(line))) return undefined;
    const of = (share: number, lip: number) => {
        const dragArea = pull.dragArea * share;
        return settled({ dragArea, ...(isDiver(line) && { diveArea: dragArea * lip }) });
    };
    const shares = [pull.low / pull.value, pull.high / pull.value];
    const lips = isDiver(line) ? [LIP.low, LIP.high] : [0];
    const ends = shares.flatMap((share) => lips.map((lip) => of(share, lip)));
    const rested = ends.flatMap((end) => (end.kind === 'at-rest' ? [end] : []));
    if (rested.length < ends.length) return undefined;
    const between = (read: (end: (typeof rested)[number]) => number): Range => ({
        low: Math.min(...rested.map(read)),
        high: Math.max(...rested.map(read)),
    });
    return {
        towPoint: between(({ tension }) => tension.towPoint),
        lift: between(({ upward }) => upward.ofWeight),
        ...(isDiver(line) && { depth: between(({ lure }) => Math.max(0, -lure[2])) }),
    };
}

/** Whether a lure runs under water rather than on it. */
export function isDiver(line: SpreadLine): boolean {
    return line.lure?.value.kind?.value === 'diver';
}

/** What is towed and by what, as the models of a line with weight and drag need it. */
export function towOf(line: SpreadLine, plan: Spread): Figure<Tow> {
    if (!plan.speed) return withoutSpeed(plan);
    if (!towedOf(line)) return silent(nothingTowed(line));
    const pull = pullAt(line, plan.speed.si);
    if (pull.kind !== 'pull') return silent(pullUnknown(line, pull.reason));
    const weight = weightOf(line);
    if (!weight.known) return weight;
    const { sections, leaning } = sectionsOf(line);
    const [first, ...more] = sections;
    if (!first) return silent(noDiameter(line));
    const { mass, inWater } = weight.value;
    const lure = {
        dragArea: pull.dragArea,
        mass,
        weightInWater: inWater,
        ...(isDiver(line) && { diveArea: pull.dragArea * LIP.value }),
    };
    return known({ sections: [first, ...more], lure, ...windOf(plan) }, 'computed', [
        ...(pull.standing === 'estimated' && pull.leaning ? [pull.leaning] : []),
        ...weight.leaning,
        ...(isDiver(line)
            ? ['A lip pulls down half to twice as hard as its lure pulls back (estimate).']
            : []),
        ...leaning,
    ]);
}

/** Lure, teaser or natural bait. */
export function towedOf({ lure, teaser, bait }: SpreadLine): Lure | Teaser | Bait | undefined {
    return lure?.value ?? teaser?.value ?? bait?.value;
}

/** In kg and, in water, N. */
function weightOf(line: SpreadLine): Figure<{ mass: number; inWater: number }> {
    const lure = line.lure?.value ?? line.teaser?.value;
    const bait = lure ? undefined : line.bait?.value;
    const towed = lure ?? bait!;
    const length = bait?.length?.si;
    const mass = towed.weight?.si ?? (length && BAIT_CONDITION * length ** 3);
    if (mass === undefined)
        return silent(
            `How heavy ${towed.title} is is not known: ${bait ? 'a bait has a `weight`, or a `length` to judge it by' : 'it has no `weight`'}.`,
        );
    const share = bait ? BAIT_SHARE_IN_WATER : SHARE_IN_WATER;
    const weight = lureWeight(
        {
            mass,
            ...(lure?.submerged && { submerged: lure.submerged.si }),
            ...(lure?.displaces && { displaced: lure.displaces.si }),
        },
        share,
    );
    if (weight.kind !== 'weight') return silent(weight.reason);
    return known({ mass, inWater: weight.inWater }, 'computed', [
        ...(towed.weight ? [] : ['The weight of a bait from its length (estimate).']),
        ...(weight.standing === 'estimated'
            ? [
                  bait
                      ? 'A bait weighs a twentieth in water of what it does in air (estimate).'
                      : 'Weight in water half of that in air (estimate).',
              ]
            : []),
    ]);
}

export function nothingTowed({ position }: SpreadLine): string {
    return `Nothing is towed at the ${position.name}: no \`lure\`, \`bait\` or \`teaser\`.`;
}

/** Why the pull of what is towed is not known; where nothing was said of it, what to say. */
export function pullUnknown(line: SpreadLine, reason: string): string {
    const towed = towedOf(line);
    if (!towed || towed.pull) return reason;
    const isBait = towed === line.bait?.value;
    const size = isBait ? line.bait?.value.length : (line.lure ?? line.teaser)?.value.head;
    if (size) return reason;
    return `How hard ${towed.title} pulls is not known: it has neither a \`pull\` nor a \`${isBait ? 'length' : 'head'}\`.`;
}

function noDiameter(line: SpreadLine): string {
    const { name } = line.position;
    return line.role === 'teaser'
        ? `What the ${name} is towed with is not known: a \`leader\` with its \`diameter\` and \`length\` says it.`
        : `The line of the ${name} has no \`diameter\`: its outfit’s \`line\` says it.`;
}

export function pullAt(line: SpreadLine, speed: number) {
    const towed = towedOf(line);
    const head = line.lure?.value.head ?? line.teaser?.value.head;
    const shape = line.lure?.value.kind?.value;
    const bait = towed === line.bait?.value ? line.bait?.value : undefined;
    return lurePull(
        {
            ...(towed?.pull && { measured: { pull: towed.pull.load.si, speed: towed.pull.speed.si } }),
            ...(head && { head: { diameter: head.si, ...(shape && { shape }) } }),
            ...(bait?.length && {
                bait: { length: bait.length.si, ...(bait.weight && { mass: bait.weight.si }) },
            }),
        },
        speed,
    );
}

/** The slowest that what a line tows works at, through the water, where anybody said. */
export function leastSpeedOf(line: SpreadLine): Measure | undefined {
    return line.role === 'fished' ? (line.lure ?? line.bait)?.value.runs?.from : undefined;
}

/** Leader, then main line, from the lure up. */
function sectionsOf(line: SpreadLine): { sections: Section[]; leaning: string[] } {
    const leader = leaderOf(line);
    const main = line.outfit?.value.line;
    const leaning: string[] = [];
    const sections = [leader, main].flatMap((each, index): Section[] => {
        if (!each) return [];
        const diameter = each.diameter?.si ?? thicknessOf(each, leaning);
        // The main line reaches on to the tow point however long it says it is.
        const length = index === 0 && main ? each.length?.si : 1;
        if (!diameter || !length) return [];
        return [{ length, diameter, density: materialOf(each).density.value }];
    });
    return { sections, leaning };
}

function thicknessOf({ breaks, title }: Line, leaning: string[]): number | undefined {
    if (!breaks) return undefined;
    leaning.push(`The diameter of ${title} from its strength (common practice).`);
    return usualNylonDiameter(breaks.si);
}

export function materialOf({ material }: Line) {
    return MATERIALS[(material?.value ?? 'nylon') as MaterialName] ?? MATERIALS.nylon;
}

/** The wind over the water in the boat's axes; it is told by where it comes from, from the bow to starboard. */
function windOf({ wind }: Spread): { wind?: Point } {
    if (!wind?.from) return {};
    const { speed, from } = wind;
    return { wind: [-speed.si * Math.cos(from.si), speed.si * Math.sin(from.si), 0] };
}
