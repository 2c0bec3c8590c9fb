import type {
    Back as BackNode,
    Definition,
    From as FromNode,
    PositionBlock,
    Referred,
} from '../../../grammar/generated/ast.ts';
import type { Back, Boat, Drag, From, Method, Outfit, Position, SpreadLine } from '../model.ts';
import type { Origin, Said } from '../origin.ts';
import { placeOf } from '../place.ts';
import { type Gathered, gatherPart } from './gather.ts';
import { readMethod } from './method.ts';
import { readPosition } from './position.ts';
import { merge, type Slot, type Table } from './table.ts';
import { outfitOf, readDrag, readHooks, readLeader, readOutfit, resolveShares } from './tackle.ts';
import { readBait, readLure, readTeaser } from './towed.ts';
import { measure, measureOf, one, originOf, referred, refusedIn, said, text, texts } from './values.ts';

/** One line of a spread: what its position says over what its method says over what its outfit says. */
export function readSpreadLine(
    slot: Slot,
    boat: Boat | undefined,
    spreadMethod: Said<Method> | undefined,
    gathered: Gathered,
    key: string,
): SpreadLine | undefined {
    const position = positionOf(slot, key);
    if (!position) return undefined;
    const table = slot.table ?? new Map();
    const outfit = readOutfitOf(one(table, 'outfit'), gathered);
    const method = readMethodOf(one(table, 'method'), gathered) ?? spreadMethod;
    const lure = readPart(one(table, 'lure'), gathered, readLure);
    const teaser = readPart(one(table, 'teaser'), gathered, readTeaser);
    const bait = readPart(one(table, 'bait'), gathered, readBait);
    const role = roleOf(position, teaser !== undefined);
    const origin = headOrigin(slot);
    const back = readBack(one(table, 'back'));
    // What was written and cannot be read is absent: nothing usual stands in for it.
    const from = table.has('from')
        ? readFrom(one(table, 'from'))
        : usualTowPoint(position, role, boat, origin);
    const leader = readLeader(ofTheDay('leader', table, gathered));
    const hooks = readHooks(ofTheDay('hooks', table, gathered));
    const angler = text(table, 'angler');
    const decided = role === 'fished' ? method?.value : undefined;
    const clip = table.has('clip') ? measure(table, 'clip', 'force') : decided?.clip;
    const loop = table.has('loop') ? measure(table, 'loop', 'length') : decided?.loop;
    const wait = table.has('wait') ? measure(table, 'wait', 'time') : decided?.wait;
    const wraps = table.has('wraps') ? measure(table, 'wraps', 'count') : decided?.wraps;
    const refused = refusedIn(table, ['back', 'from', 'clip', 'loop', 'wait', 'wraps'], {
        ...(back && { back }),
        ...(from && { from }),
        ...(clip && { clip }),
        ...(loop && { loop }),
        ...(wait && { wait }),
        ...(wraps && { wraps }),
    });
    return {
        position,
        role,
        origin,
        ...(outfit && { outfit }),
        ...(lure && { lure }),
        ...(teaser && { teaser }),
        ...(bait && { bait }),
        ...(back && { back }),
        ...(refused && { refused }),
        ...(from && { from }),
        ...(method && { method }),
        ...(clip && { clip }),
        ...(loop && { loop }),
        ...(wait && { wait }),
        ...(wraps && { wraps }),
        drag: dragOf(table, decided, outfit?.value),
        ...(leader && { leader }),
        ...(hooks && { hooks }),
        ...(angler && { angler }),
        steps: texts(table, 'step'),
        notes: texts(table, 'note'),
    };
}

/**
 * A leader or hooks that a position brings for the day. Without a name of its own it is what the lure has, and says
 * what is different today.
 */
function ofTheDay(what: 'leader' | 'hooks', table: Table, gathered: Gathered) {
    const own = one(table, what);
    if (!own) return undefined;
    const usual = ['lure', 'teaser', 'bait'].flatMap((towed) => {
        const part = gatherPart(one(table, towed), gathered);
        return (part && one(part.table, what)) ?? [];
    });
    return gatherPart(usual[0] ? merge(usual[0], own) : own, gathered);
}

/** Decided at the position, wanted by the method, measured on the outfit: in that order. */
function dragOf(table: Table, method: Method | undefined, outfit: Outfit | undefined): Drag {
    const lineClass = outfit?.line?.lineClass;
    const here = one(table, 'drag')?.table;
    const usual = { ...outfit?.drag, ...(method && resolveShares(method.dragSaid, lineClass)) };
    const left = Object.entries(usual).filter(([stage]) => !here?.has(stage));
    return { ...Object.fromEntries(left), ...resolveShares(readDrag(here), lineClass) };
}

/** A swapped position stands under the key of the other one: the key has the last word. */
function positionOf(slot: Slot, key: string): Position | undefined {
    const written = readPosition((slot.node as PositionBlock).position);
    const name = key.slice('position '.length);
    return written?.name === name ? written : positionNamed(name);
}

/** A position from its full name, as `Position.name` spells it. */
export function positionNamed(name: string): Position {
    const words = name.split(' ');
    const side =
        words[0] === 'port' || words[0] === 'starboard' || words[0] === 'centre' ? words.shift() : 'centre';
    const length =
        words[0] === 'short' || words[0] === 'long' ? (words.shift() as 'short' | 'long') : undefined;
    const place = words.join(' ');
    return {
        name,
        side: side as Position['side'],
        ...(length && { length }),
        place,
        extra: !STANDARD.has(place),
    };
}

const STANDARD = new Set([
    'corner',
    'rigger',
    'shotgun',
    'standby',
    'bridge teaser',
    'squid chain',
    'dredge',
]);
const TEASERS = new Set(['bridge teaser', 'squid chain', 'dredge']);

function roleOf(position: Position, carriesTeaser: boolean): SpreadLine['role'] {
    if (position.place === 'standby') return 'standby';
    return TEASERS.has(position.place) || carriesTeaser ? 'teaser' : 'fished';
}

/** The origin of a line covers the words of its position; its property the whole block. */
function headOrigin(slot: Slot): Origin {
    const origin = originOf(slot);
    const { position } = slot.node as PositionBlock;
    return position ? { ...origin, place: placeOf(position) } : origin;
}

function readOutfitOf(slot: Slot | undefined, gathered: Gathered): Said<Outfit> | undefined {
    const part = gatherPart(slot, gathered);
    if (part?.definition?.kind !== 'outfit') return undefined;
    const outfit = part.plain
        ? outfitOf(part.definition, gathered)
        : readOutfit(part.definition, part.table, gathered);
    return referred(part.slot, part.slot.of ?? part.slot.node, outfit);
}

function readMethodOf(slot: Slot | undefined, gathered: Gathered): Said<Method> | undefined {
    const definition = slot && (slot.node as Referred).of?.ref;
    if (definition?.kind !== 'method') return undefined;
    return referred(slot!, slot!.node, readMethod(definition, gathered));
}

function readPart<T>(
    slot: Slot | undefined,
    gathered: Gathered,
    reader: (part: NonNullable<ReturnType<typeof gatherPart>>, gathered: Gathered) => T,
): Said<T> | undefined {
    const part = gatherPart(slot, gathered);
    return (
        part &&
        referred(
            part.slot,
            part.slot.of ?? part.slot.node,
            memoised(part.definition, part.plain, () => reader(part, gathered), gathered),
        )
    );
}

/** A definition that is used as it is reads the same everywhere; a bait's inline title makes it its own. */
function memoised<T>(
    definition: Definition | undefined,
    plain: boolean,
    make: () => T,
    gathered: Gathered,
): T {
    if (!definition || !plain || definition.kind === 'bait') return make();
    const known = gathered.readings.get(definition);
    if (known) return known as T;
    const made = make();
    gathered.readings.set(definition, made);
    return made;
}

function readBack(slot: Slot | undefined): Back | undefined {
    const node = slot?.node as BackNode | undefined;
    if (!slot || !node) return undefined;
    const origin = originOf(slot);
    if (node.wave) {
        const wave = measureOf(node.amount, 'count', slot);
        return wave && wave.si >= 1 && Number.isInteger(wave.si) ? { kind: 'wave', wave, origin } : undefined;
    }
    const distance = measureOf(node.amount, 'length', slot);
    return distance && distance.si > 0 ? { kind: 'distance', distance, origin } : undefined;
}

function readFrom(slot: Slot | undefined): From | undefined {
    const node = slot?.node as FromNode | undefined;
    if (!slot || !node) return undefined;
    const origin = originOf(slot);
    if (node.flat) return { kind: 'flat clip', origin };
    if (node.tip) return { kind: 'rod tip', origin };
    if (node.halyard) {
        const number = measureOf(node.number, 'count', slot)?.si;
        return number && Number.isInteger(number) && number > 0
            ? { kind: 'halyard', number, origin }
            : undefined;
    }
    const name = said(slot, node.point, 'point');
    return name && { kind: 'point', name: name.value, origin: name.origin };
}

/**
 * Where a position is usually towed from (common practice, no source): corners from their flat clips, a short
 * rigger from the inner and a long one from the outer halyard, a shotgun from the centre rigger, a teaser from
 * the point called `bridge`; where the boat has none of these, from the rod's tip.
 */
function usualTowPoint(
    position: Position,
    role: SpreadLine['role'],
    boat: Boat | undefined,
    at: Origin,
): From | undefined {
    const origin: Origin = { ...at, voice: 'default' };
    if (role === 'standby' || !boat) return undefined;
    if (position.extra) return { kind: 'point', name: position.place, origin };
    if (role === 'teaser')
        return boat?.points.has('bridge') ? { kind: 'point', name: 'bridge', origin } : undefined;
    if (position.place === 'corner') return { kind: boat?.flatClip ? 'flat clip' : 'rod tip', origin };
    const poles = position.side === 'centre' ? boat?.centreRigger : boat?.outriggers;
    if (!poles || poles.halyards.length === 0) return { kind: 'rod tip', origin };
    const number = position.length === 'short' ? 1 : poles.halyards.length;
    return { kind: 'halyard', number, origin };
}
