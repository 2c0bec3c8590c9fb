import { type Outrigger, polePoint, rodTip } from '../../physics/tow-points.ts';
import type { Figure, Point, PoleFigures } from '../figures.ts';
import type { Boat, BoatPoint, From, Holder, Outriggers, Position, Side, SpreadLine } from '../model.ts';
import { known, silent, without } from './figure.ts';

/** Where a line leaves the boat, in the boat frame. */
export function towPointOf(line: SpreadLine, boat: Boat | undefined): Figure<Point> {
    if (line.role === 'standby') return silent('The gear stands by.');
    if (!boat) return silent('The plan names no `boat`.');
    if (!line.from)
        return without(line, 'from', `Where the ${line.position.name} is towed \`from\` is not said.`);
    return pointOf(line.from, line, boat);
}

function pointOf(from: From, line: SpreadLine, boat: Boat): Figure<Point> {
    const { position } = line;
    switch (from.kind) {
        case 'flat clip':
            if (!boat.flatClip) return silent('The boat has no `flat clip`.');
            return placed(boat.flatClip, position.side, 'flat clip');
        case 'halyard':
            return halyard(from.number, position.side, boat);
        case 'point': {
            const point = boat.points.get(from.name) ?? boat.positions.get(from.name);
            if (!point) return silent(`The boat has no point called “${from.name}”.`);
            return placed(point, position.side, `point “${from.name}”`);
        }
        case 'rod tip':
            return rodTipOf(line, boat);
    }
}

function halyard(number: number, side: Side, boat: Boat): Figure<Point> {
    const poles = side === 'centre' ? boat.centreRigger : boat.outriggers;
    const name = side === 'centre' ? 'centre rigger' : 'outriggers';
    if (!poles) return silent(`The boat has no \`${name}\`.`);
    const along = poles.halyards[number - 1];
    if (!along) {
        const reason = `The ${name} have no halyard ${number}: the \`halyards\` of the boat are ${poles.halyards.length}.`;
        return without(poles, 'halyards', reason);
    }
    const pole = poleOf(poles, side === 'centre');
    if (!pole.known) return pole;
    const point = onPole(pole.value, along.si, side);
    if (!point)
        return silent(
            `Halyard ${number} lies beyond the end of the pole: its \`length\`, or the \`halyards\`, cannot be.`,
        );
    return known(point, 'measured');
}

/** The tip of the rod in its holder; the clip is elsewhere, the fish is fought from here. */
export function rodTipOf(line: SpreadLine, boat: Boat | undefined): Figure<Point> {
    const { position } = line;
    const holder = boat && holderFor(position, boat.holders);
    if (!holder) return silent(`The boat has no \`holder\` for the rod of the ${position.name}.`);
    const foot = footOf(holder, position.side === 'centre');
    if (!foot)
        return silent(
            `The \`holder\` of the ${position.name} has no place on the boat: \`ahead\`, \`out\` and \`up\`.`,
        );
    const rod = line.outfit?.value.rod;
    const above = rod?.tip?.si ?? (rod?.length && rod.length.si - (rod.butt?.si ?? 0));
    if (above === undefined) return silent(`The rod of the ${position.name} has no \`length\`.`);
    const tip = rodTip(
        { foot, lean: holder.lean?.si ?? 0, splay: holder.splay?.si ?? 0 },
        above,
        position.side,
    );
    if (!tip)
        return silent(
            `The \`holder\` of the ${position.name} leans beyond what a rod can: look at its \`lean\` and \`splay\`.`,
        );
    const leaning = holder.lean
        ? []
        : ['The rod upright in its holder, since the holder has no lean (estimate).'];
    return known(tip, 'computed', leaning);
}

/** The holder of a position: its own, the one for both lengths on that side, or the other side's mirrored. */
export function holderFor(position: Position, holders: readonly Holder[]): Holder | undefined {
    const other: Record<Side, Side> = { port: 'starboard', starboard: 'port', centre: 'centre' };
    for (const side of [position.side, other[position.side]]) {
        const here = holders.filter(({ position: at }) => at.side === side && at.place === position.place);
        const found =
            here.find((at) => at.position.length === position.length) ??
            here.find((at) => !at.position.length);
        if (found) return found;
    }
    return undefined;
}

/** Every pole that the boat has, as it stands when fishing. */
export function polesOf(boat: Boat | undefined): PoleFigures[] {
    const sides: readonly (readonly [Side, Outriggers | undefined])[] = [
        ['port', boat?.outriggers],
        ['starboard', boat?.outriggers],
        ['centre', boat?.centreRigger],
    ];
    return sides.flatMap(([side, poles]): PoleFigures[] => {
        const pole = poles && poleOf(poles, side === 'centre');
        if (!poles || !pole?.known) return [];
        const [foot, tip] = [onPole(pole.value, 0, side), onPole(pole.value, pole.value.length, side)];
        if (!foot || !tip) return [];
        const halyards = poles.halyards.flatMap(({ si }) => {
            const point = onPole(pole.value, si, side);
            return point ? [point] : [];
        });
        return [{ side, foot, tip, halyards, origin: poles.origin }];
    });
}

function poleOf(poles: Outriggers, central: boolean): Figure<Outrigger> {
    const name = central ? 'centre rigger' : 'outriggers';
    const foot = poles.foot && footOf(poles.foot, central);
    if (!foot)
        return silent(`The ${name} have no \`foot\` with \`ahead\`, ${central ? '' : '`out` '}and \`up\`.`);
    if (!poles.rise) return silent(`The ${name} have no \`rise\`, the angle above horizontal.`);
    if (!central && !poles.sweep)
        return silent('The outriggers have no `sweep`, the angle outboard of dead ahead.');
    const reach = poles.halyards.map(({ si }) => si);
    const length = poles.length?.si ?? (reach.length > 0 ? Math.max(...reach) : undefined);
    if (length === undefined) return silent(`The ${name} have no \`length\`.`);
    // A centre rigger points aft unless it says otherwise: its halyard hangs over the cockpit.
    const sweep = poles.sweep?.si ?? Math.PI;
    return known({
        foot,
        length,
        rise: poles.rise.si,
        sweep: central ? Math.PI - Math.abs(Math.PI - sweep) : sweep,
    });
}

function onPole(pole: Outrigger, along: number, side: Side): Point | undefined {
    const point = polePoint(pole, along, side === 'starboard' ? 'starboard' : 'port');
    return point && side === 'centre' ? [point[0], 0, point[2]] : point;
}

function footOf(point: BoatPoint, central: boolean) {
    const { ahead, out, up } = point;
    if (!ahead || !up || (!out && !central)) return undefined;
    return { ahead: ahead.si, out: central ? 0 : out!.si, up: up.si };
}

function placed(point: BoatPoint, side: Side, name: string): Figure<Point> {
    const foot = footOf(point, side === 'centre');
    if (!foot) return silent(`The ${name} needs \`ahead\`, \`out\` and \`up\`.`);
    const out = side === 'centre' ? 0 : side === 'starboard' ? -foot.out : foot.out;
    return known([foot.ahead, out, foot.up], 'measured');
}
