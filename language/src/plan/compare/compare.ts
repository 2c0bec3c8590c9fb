import type { Spread, SpreadLine } from '../model.ts';
import type { Voice } from '../origin.ts';
import { compareDefinitions, renamedDefinitions } from './definitions.ts';
import { type Difference, differences, type Told } from './differences.ts';
import { isRenaming } from './renamed.ts';
import { swapsAmong } from './swaps.ts';

/**
 * How one plan differs from another, by what is meant and not by how it is written: `150 ft` and `45.72 m` are the
 * same distance, and properties may stand in any order. `before` and `after` are as their authors wrote them.
 */
export type Change =
    /** A property of the plan itself. */
    | ({ readonly kind: 'plan' } & Difference)
    | LineChange
    /** A position that only one of the plans has: `before` or `after` says what it holds. */
    | { readonly kind: 'position'; readonly position: string; readonly before?: Told; readonly after?: Told }
    /** What one position held and the other holds now, with what else became of it on the way. */
    | {
          readonly kind: 'moved';
          /** The positions. */
          readonly before: string;
          readonly after: string;
          readonly held: Told;
          readonly differences: readonly Difference[];
      }
    /** Two positions that traded something; the first is the earlier by name. */
    | {
          readonly kind: 'swap';
          readonly positions: readonly [string, string];
          readonly what: Swappable;
          readonly before: readonly [Told, Told];
          readonly after: readonly [Told, Told];
      }
    /** What is used by the same name in both, and is not the same. */
    | ({ readonly kind: 'definition'; readonly of: string; readonly name: string } & Difference)
    /** What is the same in both, and has another name. */
    | { readonly kind: 'renamed'; readonly of: string; readonly before: string; readonly after: string };

/** A property of one position. */
export type LineChange = { readonly kind: 'line'; readonly position: string } & Difference;

/** What two positions can trade. */
export type Swappable = 'gear' | 'outfit' | 'back';

/**
 * Every change from one plan to another: those of the plan, then by position, swaps, definitions; each group by name,
 * so that the way back lists the same changes in the same order (see `reversed`).
 */
export function compare(before: Spread, after: Spread): Change[] {
    const was = new Map(before.lines.map((line) => [line.position.name, line]));
    const is = new Map(after.lines.map((line) => [line.position.name, line]));
    const gone = before.lines.filter(({ position }) => !is.has(position.name)).sort(byPosition);
    const come = after.lines.filter(({ position }) => !was.has(position.name)).sort(byPosition);
    const moved = movesAmong(gone, come);
    const alone = [
        ...gone
            .filter((line) => !moved.some(([from]) => from === line))
            .map(
                (line): Change => ({ kind: 'position', position: line.position.name, before: heldBy(line) }),
            ),
        ...come
            .filter((line) => !moved.some(([, to]) => to === line))
            .map((line): Change => ({ kind: 'position', position: line.position.name, after: heldBy(line) })),
    ];
    const renamed = renamedDefinitions(before, after);
    const isTold = (difference: Difference) => isRenaming(difference, renamed);
    const inPlace = [...before.lines].sort(byPosition).flatMap((old): LineChange[] => {
        const { name: position } = old.position;
        const now = is.get(position);
        return now
            ? compareLines(old, now)
                  .filter((difference) => !isTold(difference))
                  .map((difference) => ({ kind: 'line', position, ...difference }))
            : [];
    });
    const { swaps, rest } = swapsAmong(inPlace);
    return [
        ...differences(ownOf(before), ownOf(after))
            .filter((difference) => !isTold(difference))
            .map((difference): Change => ({ kind: 'plan', ...difference })),
        ...rest,
        ...alone.sort((a, b) => byName(nameOf(a), nameOf(b))),
        ...moved.map(
            ([from, to]): Change => ({
                kind: 'moved',
                before: from.position.name,
                after: to.position.name,
                held: heldBy(from),
                differences: compareLines(from, to),
            }),
        ),
        ...swaps,
        ...compareDefinitions(before, after, renamed),
        ...renamed
            .map(
                ({ of, before: old, after: now }): Change => ({
                    kind: 'renamed',
                    of,
                    before: old.name,
                    after: now.name,
                }),
            )
            .sort((a, b) => byName(leastName(a), leastName(b))),
    ];
}

/** What a position holds that the other plan does not have, where the other has the same at a new one. */
function movesAmong(gone: readonly SpreadLine[], come: readonly SpreadLine[]): [SpreadLine, SpreadLine][] {
    const free = [...come];
    const moves = gone.flatMap((from): [SpreadLine, SpreadLine][] => {
        const at = free.findIndex(
            (to) => gearOf(to) !== undefined && gearOf(to) === gearOf(from) && to.role === from.role,
        );
        return at < 0 ? [] : [[from, free.splice(at, 1)[0]!]];
    });
    const least = ([from, to]: readonly [SpreadLine, SpreadLine]) =>
        [from.position.name, to.position.name].sort(byName)[0]!;
    return moves.sort((a, b) => byName(least(a), least(b)));
}

function gearOf({ lure, teaser, bait }: SpreadLine): string | undefined {
    return (lure ?? teaser ?? bait)?.value.name;
}

/** The same on the way back. */
function leastName(change: Change): string {
    return change.kind === 'renamed' ? [change.before, change.after].sort(byName)[0]! : '';
}

function nameOf(change: Change): string {
    return change.kind === 'position' ? change.position : '';
}

function byPosition(a: SpreadLine, b: SpreadLine): number {
    return byName(a.position.name, b.position.name);
}

/** The same change on the way back. */
export function reversed(change: Change): Change {
    const { before, after, ...rest } = change;
    const within = change.kind === 'moved' && { differences: change.differences.map(backwards) };
    return {
        ...rest,
        ...within,
        ...(after !== undefined && { before: after }),
        ...(before !== undefined && { after: before }),
    } as Change;
}

function backwards({ path, before, after }: Difference): Difference {
    return {
        path,
        ...(after !== undefined && { before: after }),
        ...(before !== undefined && { after: before }),
    };
}

/** What is written about the plan itself. Its name, title and comment are what it is called, not what it is. */
function ownOf(plan: Spread): object {
    const {
        kind: _kind,
        name: _name,
        title: _title,
        doc: _doc,
        origin: _origin,
        like: _like,
        presets: _presets,
        lines: _lines,
        ...own
    } = plan;
    return own;
}

function compareLines(before: SpreadLine, after: SpreadLine): Difference[] {
    return differences(
        propertiesOf(before),
        propertiesOf(after),
        [],
        (old, now) => isBrought(old) && isBrought(now),
    );
}

/** Whether the outfit, the lure or the method brought it: then their name has changed, or what they are. */
function isBrought(value: unknown): boolean {
    const voice = (value as { readonly origin?: { readonly voice?: Voice } } | undefined)?.origin?.voice;
    return voice !== undefined && brought.has(voice);
}

const brought: ReadonlySet<Voice> = new Set<Voice>(['outfit', 'lure', 'bait', 'teaser', 'method', 'boat']);

/** What the crew does at a position; lure, teaser and bait are one thing to it: its gear. */
function propertiesOf(line: SpreadLine): object {
    const { position: _position, origin: _origin, lure, teaser, bait, ...own } = line;
    const gear = lure ?? teaser ?? bait;
    return { ...own, ...(gear && { gear }) };
}

function heldBy({ role, lure, teaser, bait }: SpreadLine): Told {
    const gear = lure ?? teaser ?? bait;
    return gear?.value.title ?? (role === 'standby' ? 'standing by' : 'nothing named');
}

function byName(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
