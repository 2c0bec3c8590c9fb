import type { Definition, Lure as LureNode, Pull } from '../../../grammar/generated/ast.ts';
import type { Bait, Defined, HeadKind, Lure, Teaser } from '../model.ts';
import type { Said } from '../origin.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { definedBy } from './defined.ts';
import { type Gathered, type GatheredPart, gatherPart, likeChain } from './gather.ts';
import type { Table } from './table.ts';
import { measures, readHooks, readLeader, titleOf } from './tackle.ts';
import { choice, measure, measureOf, one, originOf, span, text } from './values.ts';

export function readLure(part: GatheredPart, gathered: Gathered): Lure {
    const kind = part.definition && headOf(part.definition);
    return { ...definedByPart(part), ...towed(part.table, gathered), ...(kind && { kind }) };
}

export function readTeaser(part: GatheredPart, gathered: Gathered): Teaser {
    const kind = choice(part.table, 'kind');
    return { ...definedByPart(part), ...towed(part.table, gathered), ...(kind && { kind }) };
}

export function readBait(part: GatheredPart, gathered: Gathered): Bait {
    const kind = choice(part.table, 'kind');
    const { length, weight, pull, runs, sway, hooks, leader } = towed(part.table, gathered);
    return {
        ...definedByPart(part),
        ...(kind && { kind }),
        ...(length && { length }),
        ...(weight && { weight }),
        ...(pull && { pull }),
        ...(runs && { runs }),
        ...(sway && { sway }),
        ...(hooks && { hooks }),
        ...(leader && { leader }),
    };
}

/** Whatever is towed has these; the rest of a lure's properties are silent where nobody wrote them. */
function towed(table: Table, gathered: Gathered): Omit<Lure, 'kind' | keyof Defined> {
    const submerged = measure(table, 'submerged', 'mass');
    const displaces = measure(table, 'displaces', 'volume');
    const weight = measure(table, 'weight', 'mass');
    const pull = readPull(table);
    const runs = span(table, 'runs', 'speed');
    const sway = measure(table, 'sway', 'angle');
    const colour = text(table, 'colour');
    const spares = measure(table, 'spares', 'count');
    const hooks = readHooks(gatherPart(one(table, 'hooks'), gathered));
    const leader = readLeader(gatherPart(one(table, 'leader'), gathered));
    return {
        ...measures(table, ['length', 'head'], 'length'),
        ...(weight && { weight }),
        ...(submerged && { submerged }),
        ...(displaces && { displaces }),
        ...(pull && { pull }),
        ...(runs && { runs }),
        ...(sway && { sway }),
        ...(colour && { colour }),
        ...(spares && { spares }),
        ...(hooks && { hooks }),
        ...(leader && { leader }),
    };
}

function readPull(table: Table): Lure['pull'] {
    const slot = one(table, 'pull');
    if (!slot) return undefined;
    const load = measureOf((slot.node as Pull).load, 'force', slot);
    const speed = measureOf((slot.node as Pull).speed, 'speed', slot);
    return load && speed && { load, speed };
}

const HEADS: ReadonlySet<string> = new Set([
    'slant',
    'plunger',
    'pusher',
    'chugger',
    'bullet',
    'jet',
    'diver',
]);

/** The kinds of head, as a definition may name them. */
export const headWords: readonly string[] = [...HEADS];

function headOf(definition: Definition): Said<HeadKind> | undefined {
    const headed = [definition, ...likeChain(definition)].find((each) => (each as LureNode).head) as
        | LureNode
        | undefined;
    if (!headed || !HEADS.has(headed.head!)) return undefined;
    return {
        value: headed.head as HeadKind,
        origin: {
            place: placeOfProperty(headed, 'head'),
            property: placeOfProperty(headed, 'head'),
            voice: 'lure',
            definition: headed.name,
            inherited: headed !== definition,
        },
    };
}

function definedByPart(part: GatheredPart): Defined {
    if (part.definition) return { ...definedBy(part.definition), title: titleOf(part) };
    const title = titleOf(part);
    return { name: title, title, origin: { ...originOf(part.slot), place: placeOf(part.slot.node) } };
}
