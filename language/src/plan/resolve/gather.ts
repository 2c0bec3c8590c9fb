import type { Definition, Part } from '../../../grammar/generated/ast.ts';
import type { Voice } from '../origin.ts';
import { definitionName, overlay, type Slot, type Table, tabulate } from './table.ts';

/**
 * What was gathered, so that ten plans that use one outfit read it once. A definition's part in it holds until its own
 * file, or one in that file's reach, is another.
 */
export class Gathered {
    readonly tables = new Map<Definition, Table>();
    /** Typed readings of definitions that nobody overrides, by definition. */
    readonly readings = new Map<Definition, unknown>();
    /** Versions of the packages that files are from, by the file's address. */
    readonly versions: ReadonlyMap<string, string>;

    constructor(versions: ReadonlyMap<string, string> = new Map()) {
        this.versions = versions;
    }

    /** Forgets what some definitions gave. */
    leaveOut(definitions: Iterable<Definition>): void {
        for (const definition of definitions) {
            this.tables.delete(definition);
            this.readings.delete(definition);
        }
    }

    /** Forgets all but what some definitions gave, and the tables of plans, which are many and seldom read again. */
    keepOnly(holds: (definition: Definition) => boolean): void {
        for (const definition of this.tables.keys())
            if (definition.kind === 'spread' || !holds(definition)) this.tables.delete(definition);
        for (const definition of this.readings.keys())
            if (!holds(definition)) this.readings.delete(definition);
    }
}

const VOICES: Readonly<Partial<Record<Definition['kind'], Voice>>> = {
    boat: 'boat',
    rod: 'outfit',
    reel: 'outfit',
    line: 'outfit',
    outfit: 'outfit',
    leader: 'lure',
    hooks: 'lure',
    lure: 'lure',
    teaser: 'teaser',
    bait: 'bait',
    method: 'method',
    species: 'species',
    spread: 'spread',
    day: 'spread',
    rules: 'rules',
};

export function voiceOf(kind: Definition['kind']): Voice {
    return VOICES[kind] ?? 'spread';
}

/** Everything that a definition says, with what it is `like` below it. A circle of `like`s is cut where it closes. */
export function gather(definition: Definition, gathered: Gathered, above: readonly Definition[] = []): Table {
    const known = gathered.tables.get(definition);
    if (known) return known;
    const own = tabulate(definition.entries ?? [], voiceOf(definition.kind), definitionName(definition));
    const base = baseOf(definition);
    const chain = [...above, definition];
    if (!base || chain.includes(base)) {
        if (!base) gathered.tables.set(definition, own);
        return own;
    }
    const table = overlay(gather(base, gathered, chain), own, definition.entries ?? []);
    gathered.tables.set(definition, table);
    return table;
}

/** What a definition is `like`, if that is found, of its own kind, and not at the end of an endless row. */
export function baseOf(definition: Definition): Definition | undefined {
    const base = named(definition);
    return base && isWithinReason(base) ? base : undefined;
}

/** So many definitions one like the next are followed; a crew can follow three or four. */
export const MOST_LIKE = 100;

/** Whether a definition is like one that stands at the end of a row too long to be followed. */
export function isTooFarFrom(definition: Definition): boolean {
    const base = named(definition);
    return base !== undefined && !isWithinReason(base);
}

function isWithinReason(definition: Definition): boolean {
    const row = new Set<Definition>();
    let each: Definition | undefined = definition;
    for (; each && !row.has(each) && row.size <= MOST_LIKE; each = named(each)) row.add(each);
    return row.size <= MOST_LIKE;
}

function named(definition: Definition): Definition | undefined {
    const base = 'base' in definition ? definition.base?.ref : undefined;
    return base?.kind === definition.kind ? base : undefined;
}

/** The definitions that one is `like`, nearest first, each once. */
export function likeChain(definition: Definition): Definition[] {
    const chain = new Set<Definition>();
    for (
        let base = baseOf(definition);
        base && base !== definition && !chain.has(base);
        base = baseOf(base)
    ) {
        chain.add(base);
    }
    return [...chain];
}

/** A part of something: the definition that it names, if any, and all that is said about it. */
export interface GatheredPart {
    readonly slot: Slot;
    readonly definition?: Definition;
    /** True where nothing is said here on top of the definition. */
    readonly plain: boolean;
    readonly table: Table;
}

/** A part with the definition that it starts from below what is said on the spot. */
export function gatherPart(slot: Slot | undefined, gathered: Gathered): GatheredPart | undefined {
    if (!slot) return undefined;
    const part = slot.of ?? (slot.node as Part);
    const definition = part.of?.ref;
    const own = slot.table ?? new Map();
    const plain = own.size === 0;
    if (!definition) return part.of ? undefined : { slot, plain: false, table: own };
    const below = gather(definition, gathered);
    const table = plain ? below : overlay(below, own, (slot.node as Part).entries ?? []);
    return { slot, definition, plain, table };
}
