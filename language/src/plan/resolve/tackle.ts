import type {
    Capacity,
    Definition,
    Joint as JointNode,
    Measured,
    Part,
    Tested,
} from '../../../grammar/generated/ast.ts';
import { classOf } from '../../units/line-class.ts';
import { quantity } from '../../units/quantity.ts';
import { units } from '../../units/unit.ts';
import type { Measure } from '../measure.ts';
import type { Drag, DragSaid, Hooks, Joint, Leader, Line, Outfit, Reel, Rod } from '../model.ts';
import { startingWith } from './boat.ts';
import { definedBy } from './defined.ts';
import { type Gathered, type GatheredPart, gather, gatherPart } from './gather.ts';
import type { Slot, Table } from './table.ts';
import {
    choice,
    date,
    dateSaid,
    flag,
    forceOrShare,
    measure,
    measureOf,
    one,
    originOf,
    read,
    readQuantity,
    said,
} from './values.ts';

/** Newtons that one kilogram of line class stands for. */
export const CLASS_NEWTONS = 9.80665;

export function readOutfit(definition: Definition, table: Table, gathered: Gathered): Outfit {
    const part = (key: string) => gatherPart(one(table, key), gathered);
    const rod = readRod(part('rod'));
    const reel = readReel(part('reel'));
    const line = readLine(part('line'));
    const double = one(table, 'double');
    const run = measure(table, 'run', 'length');
    const tested = readTested(one(table, 'tested'));
    const doubleLength = double?.table && measure(double.table, 'length', 'length');
    return {
        ...definedBy(definition),
        ...(rod && { rod }),
        ...(reel && { reel }),
        ...(line && { line }),
        ...(double && {
            double: {
                ...(doubleLength && { length: doubleLength }),
                joints: readJoints(double.table ?? new Map()),
                origin: originOf(double),
            },
        }),
        drag: resolveShares(readDrag(one(table, 'drag')?.table), line?.lineClass),
        ...(tested && { tested }),
        ...(run && { run }),
        ...readMarks(table),
        joints: readJoints(table),
    };
}

export function readDrag(table: Table | undefined): DragSaid {
    if (!table) return {};
    const said: { -readonly [Stage in keyof DragSaid]: DragSaid[Stage] } = {};
    for (const stage of ['set', 'hooked', 'full'] as const) {
        const found = forceOrShare(table, stage);
        if (found.force || found.share) said[stage] = found;
    }
    return said;
}

/** Turns shares into loads of a line class (kilograms); a share of no class is left out. */
export function resolveShares(drag: DragSaid, lineClass: Measure | undefined): Drag {
    const resolved: Partial<Record<keyof Drag, Measure>> = {};
    for (const stage of ['set', 'hooked', 'full'] as const) {
        const { force, share } = drag[stage] ?? {};
        if (force) resolved[stage] = force;
        else if (share && lineClass) {
            resolved[stage] = { ...share, si: share.si * lineClass.si * CLASS_NEWTONS, standing: 'computed' };
        }
    }
    return resolved;
}

function readRod(part: GatheredPart | undefined): Rod | undefined {
    if (!part) return undefined;
    const fitted = date(part.table, 'fitted');
    return {
        title: titleOf(part),
        ...measures(part.table, ['length', 'tip', 'butt'], 'length'),
        ...(fitted && { fitted }),
        origin: originOf(part.slot),
    };
}

function readReel(part: GatheredPart | undefined): Reel | undefined {
    if (!part) return undefined;
    const capacity = one(part.table, 'capacity');
    const node = capacity?.node as Capacity | undefined;
    const length = capacity && measureOf(node?.length, 'length', capacity);
    const diameter = capacity && measureOf(node?.diameter, 'length', capacity);
    return {
        title: titleOf(part),
        ...measures(one(part.table, 'spool')?.table ?? new Map(), ['full', 'arbor'], 'length'),
        ...(length && { capacity: { length, ...(diameter && { diameter }) } }),
        origin: originOf(part.slot),
    };
}

export function readLine(part: GatheredPart | undefined): Line | undefined {
    if (!part) return undefined;
    const { table } = part;
    const material = choice(table, 'material');
    const lineClass = readClass(one(table, 'class'));
    const breaks = measure(table, 'breaks', 'force');
    const stretch = measure(table, 'stretch', 'share');
    const fitted = date(table, 'fitted');
    return {
        title: titleOf(part),
        ...(material && { material }),
        ...measures(table, ['diameter', 'length'], 'length'),
        ...(lineClass && { lineClass }),
        ...(breaks && { breaks }),
        ...(stretch && { stretch }),
        ...(fitted && { fitted }),
        joints: readJoints(table),
        origin: originOf(part.slot),
    };
}

export function readLeader(part: GatheredPart | undefined): Leader | undefined {
    const line = readLine(part);
    if (!line) return undefined;
    const inspected = date(part!.table, 'inspected');
    return { ...line, ...(inspected && { inspected }) };
}

export function readHooks(part: GatheredPart | undefined): Hooks | undefined {
    if (!part) return undefined;
    const { table } = part;
    const kind = choice(table, 'kind');
    const offset = flag(table, 'offset');
    const point = choice(table, 'point');
    const angle = measure(table, 'angle', 'angle');
    const linked = flag(table, 'linked');
    const dangling = flag(table, 'dangling');
    const inspected = date(table, 'inspected');
    const wholeKind = offset && kind?.value === 'circle' ? { ...kind, value: 'offset circle' } : kind;
    const single: Measure = {
        si: 1,
        quantity: quantity(1, units.count),
        origin: originOf(part.slot),
        standing: 'estimated',
    };
    return {
        title: titleOf(part),
        count: measure(table, 'count', 'count') ?? single,
        ...(wholeKind && { kind: wholeKind }),
        ...measures(table, ['gap', 'length', 'spacing', 'overhang'], 'length'),
        ...(angle && { angle }),
        ...(point && { point }),
        ...(linked && { linked }),
        ...(dangling && { dangling }),
        ...(inspected && { inspected }),
        origin: originOf(part.slot),
    };
}

/**
 * The class of a line in kilograms. Customary pounds name a class through the published table (50 lb is the
 * 24 kg class), never through a conversion; a load that names no class stays as it is, for a rule to judge.
 */
export function readClass(slot: Slot | undefined): Measure | undefined {
    const node = slot && (slot.node as Measured).amount;
    const found = readQuantity(node);
    const mass = read(found, 'mass');
    if (!slot || mass === undefined) return undefined;
    const lineClass = classOf(found!);
    return {
        si: lineClass?.kg ?? mass,
        quantity: found!,
        origin: originOf(slot, node),
        standing: 'measured',
    };
}

function readJoints(table: Table): Joint[] {
    const joints: Joint[] = [];
    for (const kind of ['knot', 'crimp', 'swivel'] as const) {
        for (const slot of startingWith(table, `${kind} `)) {
            const node = slot.node as JointNode;
            const strength = measureOf(node.amount, 'force', slot);
            const share = strength ? undefined : measureOf(node.amount, 'share', slot);
            if (!strength && !share) continue;
            joints.push({
                kind,
                ...(node.title && { title: node.title }),
                ...(strength && { strength }),
                ...(share && { share }),
                origin: originOf(slot),
            });
        }
    }
    return joints;
}

function readTested(slot: Slot | undefined): Outfit['tested'] {
    const on = slot && dateSaid(slot, (slot.node as Tested).date, 'date');
    if (!slot || !on) return undefined;
    const by = said(slot, (slot.node as Tested).by, 'by');
    return { date: on, ...(by && { by }) };
}

function readMarks(table: Table): Pick<Outfit, 'marks'> {
    const counter = one(table, 'counter');
    const slot = one(table, 'marks') ?? counter;
    if (!slot) return {};
    const every = measure(table, 'marks', 'length');
    return { marks: { ...(every && { every }), counter: counter !== undefined, origin: originOf(slot) } };
}

/** What a part is called: by its own title, else by the definition that it names, else by its word. */
export function titleOf(part: GatheredPart): string {
    const node = part.slot.node as Part;
    return node.title ?? (part.definition ? definedBy(part.definition).title : node.word);
}

export function measures<K extends string>(
    table: Table,
    keys: readonly K[],
    reading: Parameters<typeof measure>[2],
): { [P in K]?: Measure } {
    const found: { [P in K]?: Measure } = {};
    for (const key of keys) {
        const value = measure(table, key, reading);
        if (value) found[key] = value;
    }
    return found;
}

/** An outfit as a definition says it, read once however many plans use it. */
export function outfitOf(definition: Definition, gathered: Gathered): Outfit {
    const known = gathered.readings.get(definition);
    if (known) return known as Outfit;
    const outfit = readOutfit(definition, gather(definition, gathered), gathered);
    gathered.readings.set(definition, outfit);
    return outfit;
}
