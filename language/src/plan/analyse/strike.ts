import { clipMargin, dropBack, openingPull, surgeFactor } from '../../physics/clip.ts';
import { type Strike, type StrikeQuestion, strike, strikeBetween } from '../../physics/strike.ts';
import { type Link, weakestLink } from '../../physics/weakest-link.ts';
import type {
    ClipFigures,
    DropBackFigures,
    Figure,
    LineFigures,
    LinkFigures,
    Point,
    WeakestFigures,
} from '../figures.ts';
import type { Measure } from '../measure.ts';
import type { Joint, Line, Spread, SpreadLine } from '../model.ts';
import { CLASS_NEWTONS } from '../resolve/tackle.ts';
import { known, leaningOf, silent, without, withoutSpeed } from './figure.ts';
import { remembering } from './memory.ts';
import { leaderOf, materialOf } from './rest.ts';

type Geometry = Pick<LineFigures, 'towPoint' | 'rodTip' | 'astern' | 'lateral'>;

/** Whether a clip or band holds the line while it is trolled. */
export function isClipped({ from, role }: SpreadLine): boolean {
    return (
        role === 'fished' &&
        (from?.kind === 'flat clip' || from?.kind === 'halyard' || from?.kind === 'point')
    );
}

/** What a lure pulls when the boat surges in the plan's sea. */
export function towingOf(pull: Figure, { sea }: Spread): Figure {
    if (!pull.known) return pull;
    const leaning = 'Surge at 1.2 to 1.5 times the towing pull, by the sea (estimate).';
    const surge = surgeFactor(sea?.si ?? Number.NaN);
    const { range } = pull;
    return {
        ...known(pull.value * surge, 'computed', [...leaningOf(pull), leaning]),
        ...(range && { range: { low: range.low * surge, high: range.high * surge } }),
    };
}

export function clipOf(
    line: SpreadLine,
    plan: Spread,
    pull: Figure,
    geometry: Geometry,
): Figure<ClipFigures> | undefined {
    if (!isClipped(line)) return undefined;
    if (!line.clip)
        return without(
            line,
            'clip',
            `The load at which the \`clip\` of the ${line.position.name} opens is not said.`,
        );
    if (!pull.known) return pull;
    const surge = surgeFactor(plan.sea?.si ?? Number.NaN);
    const margin = clipMargin(line.clip.si, pull.value, surge);
    if (margin.kind !== 'margin') return silent(margin.reason);
    const leaning = [
        'Surge at 1.2 to 1.5 times the towing pull, by the sea (estimate).',
        'A clip holds its line fast and the reel bears nothing until it opens; lines straight, no friction.',
    ];
    return known(
        {
            setting: line.clip,
            towing: pull.value * surge,
            ratio: margin.ratio,
            ...(pull.range && {
                ratioRange: {
                    low: line.clip.si / (pull.range.high * surge),
                    high: line.clip.si / (pull.range.low * surge),
                },
            }),
            spare: margin.spare,
            ...(pull.range && {
                spareRange: {
                    low: line.clip.si - pull.range.high * surge,
                    high: line.clip.si - pull.range.low * surge,
                },
            }),
            ...(line.drag.hooked && { belowHooked: line.drag.hooked.si - line.clip.si }),
            opens: opensAt(line.clip, geometry),
        },
        'computed',
        [...leaningOf(pull), ...leaning],
    );
}

function opensAt(clip: Measure, geometry: Geometry): ClipFigures['opens'] {
    const places = placesOf(geometry);
    if (!places.known) return places;
    // Until it opens the clip carries everything; what hangs between it and the rod is slack.
    const found = openingPull({ ...places.value, setting: clip.si, line: 'held', reel: 0 });
    switch (found.kind) {
        case 'unknown':
            return silent(found.reason);
        case 'opens-alone':
            return known({ pull: 0, kind: 'opens alone' }, 'computed');
        case 'runs-through':
            return known({ pull: found.pull, kind: 'runs through' }, 'computed');
        case 'opens':
            return known({ pull: found.pull, kind: 'opens' }, 'computed');
    }
}

export function dropBackOf(
    line: SpreadLine,
    plan: Spread,
    geometry: Geometry,
): Figure<DropBackFigures> | undefined {
    if (!isClipped(line)) return undefined;
    if (!plan.speed) return withoutSpeed(plan);
    const places = placesOf(geometry);
    if (!places.known) return places;
    const found = dropBack(places.value, line.loop?.si ?? 0, plan.speed.si);
    if (found.kind !== 'drop-back') return silent(found.reason);
    return known({ slack: found.slack, stall: found.stall }, 'computed', leaningOf(places));
}

function placesOf({
    towPoint,
    rodTip,
    astern,
    lateral,
}: Geometry): Figure<{ tip: Point; clip: Point; lure: Point }> {
    if (!towPoint.known) return towPoint;
    if (!rodTip) return silent('No rod stands there.');
    if (!rodTip.known) return rodTip;
    if (!astern.known) return astern;
    if (!lateral.known) return lateral;
    const lure: Point = [-astern.value, lateral.value, 0];
    return known({ tip: rodTip.value, clip: towPoint.value, lure }, 'computed', leaningOf(rodTip, astern));
}

interface NamedLink extends Link, Omit<LinkFigures, 'holds'> {}

/** Where the tackle of a line parts first: line, double, leader and every joint at its rated share. */
export function weakestOf(line: SpreadLine): Figure<WeakestFigures> | undefined {
    if (line.role === 'teaser') return undefined;
    const outfit = line.outfit?.value;
    const leader = leaderOf(line);
    const links = [
        ...linksOf('line', outfit?.line, [...(outfit?.joints ?? []), ...(outfit?.double?.joints ?? [])]),
        ...linksOf('leader', leader, []),
    ];
    const found = weakestLink(links);
    if (found.kind === 'no-links')
        return silent('Neither line nor leader has a strength: what it `breaks` at.');
    if (found.kind === 'bad-link') return silent(`The ${found.link.name}: ${found.reason}`);
    const main = outfit?.line && strengthOf(outfit.line);
    return known(
        {
            name: found.link.name,
            holds: found.holds,
            fraction: found.fraction,
            origin: found.link.origin,
            ranked: found.ranked.map(({ link: { name, piece, joint, origin }, holds }) => ({
                name,
                piece,
                ...(joint && { joint }),
                holds,
                origin,
            })),
            ...(main && { line: main }),
        },
        'computed',
    );
}

function strengthOf({ breaks, lineClass }: Line): WeakestFigures['line'] {
    if (breaks) return { holds: breaks.si, said: breaks };
    return lineClass && { holds: lineClass.si * CLASS_NEWTONS, said: lineClass };
}

function linksOf(piece: LinkFigures['piece'], of: Line | undefined, more: readonly Joint[]): NamedLink[] {
    if (!of) return [];
    const strength = of.breaks?.si;
    const own: NamedLink[] = strength
        ? [{ name: piece, piece, rated: strength, origin: of.breaks!.origin }]
        : [];
    const joints = [...of.joints, ...more].flatMap((joint): NamedLink[] => {
        const title = joint.title ? `${joint.kind} (${joint.title})` : joint.kind;
        const said = { name: `${title} of the ${piece}`, piece, joint: joint.kind, origin: joint.origin };
        if (joint.strength) return [{ ...said, rated: joint.strength.si }];
        return joint.share && strength ? [{ ...said, rated: strength, fraction: joint.share.si }] : [];
    });
    return [...own, ...joints];
}

const struck = remembering(strike, 64);
const struckBetween = remembering(
    ({ question, pulls }: { question: StrikeQuestion; pulls: readonly number[] }) =>
        strikeBetween(question, pulls),
    256,
);

/** How the plan's method strikes on a line. */
export function styleOf({ method }: SpreadLine): 'direct' | 'drop-back' {
    return method?.value.style?.value ?? 'direct';
}

/** The first ten seconds of a bite on one line; worked out when somebody wants to see them. */
export function strikeOn(
    figures: LineFigures,
    plan: Spread,
    style = styleOf(figures.line),
): Figure<Strike & { kind: 'strike' }> {
    const question = questionOf(figures, plan, style);
    if (!question.known) return question;
    const found = struck(question.value);
    return found.kind === 'strike' ? { ...question, value: found } : silent(found.reason);
}

/** Between what that strike lies; nothing where there is none. */
export function boundsOn(figures: LineFigures, plan: Spread, style = styleOf(figures.line)) {
    const question = questionOf(figures, plan, style);
    if (!question.known) return undefined;
    const range = figures.pull.known ? figures.pull.range : undefined;
    return struckBetween({
        question: question.value,
        pulls: range ? [range.low, range.high] : [question.value.pull],
    });
}

function questionOf(
    { line, pull, rest, dropBack: slack }: LineFigures,
    plan: Spread,
    style: StrikeQuestion['style'],
): Figure<StrikeQuestion> {
    const { set, hooked } = line.drag;
    const main = line.outfit?.value.line;
    if (!plan.speed) return withoutSpeed(plan);
    if (!hooked) return silent(`The \`hooked\` drag of the ${line.position.name} is not said.`);
    if (!pull.known) return pull;
    if (!rest.known) return rest;
    if (!main?.diameter) return silent(`The line of the ${line.position.name} has no \`diameter\`.`);
    const clipped =
        line.clip && slack?.known ? { setting: line.clip.si, slack: slack.value.slack } : undefined;
    const question: StrikeQuestion = {
        style,
        ...(clipped && { clip: clipped }),
        pull: pull.value,
        line: {
            out: rest.value.lineOut,
            diameter: main.diameter.si,
            modulus: materialOf(main).modulus.value,
        },
        drag: { set: set?.si ?? hooked.si, hooked: hooked.si },
        ...(line.wait && { wait: line.wait.si }),
        speed: plan.speed.si,
    };
    return known(question, 'computed', [
        ...leaningOf(pull, rest),
        'How fast and how hard the fish pulls (estimate).',
        'The stretch of the line from its material.',
    ]);
}
