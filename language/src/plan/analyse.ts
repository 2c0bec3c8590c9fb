import { insideWash, type Wash } from '../physics/waves/wash.ts';
import { dragsOf } from './analyse/drags.ts';
import { from, known, leaningOf, silent, withoutSpeed } from './analyse/figure.ts';
import { heldOf } from './analyse/held.ts';
import { orderOf } from './analyse/order.ts';
import { pairsOf } from './analyse/pairs.ts';
import { reelOf } from './analyse/reel.ts';
import { nothingTowed, pullAt, pullUnknown, restOf } from './analyse/rest.ts';
import { asternOf, wavePlaceOf } from './analyse/riding.ts';
import { clipOf, dropBackOf, towingOf, weakestOf } from './analyse/strike.ts';
import { polesOf, rodTipOf, towPointOf } from './analyse/tow-point.ts';
import { type Water, washOf, waterAstern } from './analyse/water.ts';
import type { AnalysedPlan, Figure, LineFigures, Point, RestFigures } from './figures.ts';
import type { Spread, SpreadLine } from './model.ts';

/** 4 degrees to either side. Estimate: nobody has measured how far lures wander. */
export const USUAL_SWAY = (4 * Math.PI) / 180;

/** Two lines nearer than this count as touching, m. Estimate: a lure's own width and a little. */
export const CONTACT = 0.25;

/**
 * Computes everything about a plan that needs no turn: waves, tow points, distances, shares of class, pairs of
 * lines running straight. Pure, and quick enough for every keystroke.
 */
export function analyse(plan: Spread): AnalysedPlan {
    const water = waterAstern(plan);
    const boat = plan.boat?.value;
    const wash = washOf(boat);
    const lines = plan.lines.map((line) => figuresOf(line, plan, water, wash));
    const swayAsked = plan.sway
        ? { value: plan.sway.si, standing: plan.sway.standing }
        : { value: USUAL_SWAY, standing: 'estimated' as const };
    return {
        plan,
        waves: water.waves,
        ...(wash && { wash }),
        poles: polesOf(boat),
        lines,
        pairs: pairsOf(lines, CONTACT),
        swayAsked,
        contact: CONTACT,
        order: orderOf(lines, CONTACT),
        tightestHeld: heldOf(plan),
    };
}

function figuresOf(
    line: SpreadLine,
    plan: Spread,
    water: Water,
    wash: Figure<Wash> | undefined,
): LineFigures {
    const towPoint = towPointOf(line, plan.boat?.value);
    const astern = asternOf(line, towPoint, water);
    const lateral = from(towPoint, (point) => point[1]);
    const rodTip = line.role === 'fished' ? rodTipOf(line, plan.boat?.value) : undefined;
    const pull = pullOf(line, plan);
    const geometry = { towPoint, astern, lateral, ...(rodTip && { rodTip }) };
    const rest = restOf(line, plan, towPoint, astern);
    const clip = clipOf(line, plan, pull, geometry);
    const dropBack = dropBackOf(line, plan, geometry);
    const weakest = weakestOf(line);
    const reel = reelOf(line, { ...geometry, rest });
    return {
        line,
        ...geometry,
        wave: wavePlaceOf(astern, lateral, water),
        inWash: inWashOf(astern, lateral, wash),
        drags: dragsOf(line, reel?.known ? reel.value.out : 0),
        pull,
        towing: towingOf(pull, plan),
        sway: swayOf(line, plan),
        rest,
        ...(rest.known && { entry: entryOf(rest, astern, lateral) }),
        ...(clip && { clip }),
        ...(dropBack && { dropBack }),
        ...(weakest && { weakest }),
        ...(reel && { reel }),
    };
}

function inWashOf(astern: Figure, lateral: Figure, wash: Figure<Wash> | undefined): Figure<boolean> {
    if (!wash) return silent('The plan names no `boat`.');
    if (!wash.known) return wash;
    if (!astern.known) return astern;
    if (!lateral.known) return lateral;
    return known(
        insideWash(wash.value, astern.value, lateral.value),
        'computed',
        leaningOf(wash, astern, lateral),
    );
}

function pullOf(line: SpreadLine, plan: Spread): Figure {
    const { speed } = plan;
    if (!speed) return withoutSpeed(plan);
    const towed = line.lure?.value ?? line.teaser?.value ?? line.bait?.value;
    if (!towed || line.role === 'standby') return silent(nothingTowed(line));
    const pull = pullAt(line, speed.si);
    if (pull.kind !== 'pull') return silent(pullUnknown(line, pull.reason));
    const leaning = pull.standing === 'estimated' && pull.leaning ? [pull.leaning] : [];
    const figure = known(pull.value, pull.standing === 'measured' ? 'measured' : 'computed', leaning);
    return pull.standing === 'measured' ? figure : { ...figure, range: { low: pull.low, high: pull.high } };
}

/** Where the line goes through the surface; at the lure where it is in air all the way. */
function entryOf(rest: Figure<RestFigures>, astern: Figure, lateral: Figure): Figure<Point> {
    if (rest.known && rest.value.entry) return known(rest.value.entry.point, 'computed', leaningOf(rest));
    if (!astern.known) return astern;
    if (!lateral.known) return lateral;
    return known([-astern.value, lateral.value, 0], 'computed');
}

/** What the lure is known to do goes before what the plan asks for in general, that before the usual sway. */
function swayOf(line: SpreadLine, plan: Spread): Figure {
    const own = (line.lure ?? line.teaser ?? line.bait)?.value.sway;
    if (own) return known(own.si, own.standing);
    if (plan.sway) return known(plan.sway.si, plan.sway.standing);
    return known(USUAL_SWAY, 'estimated', ['A sway of 4 deg to either side (estimate).']);
}
