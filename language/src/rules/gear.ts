import type { Bait, Hooks, Leader, Lure, SpreadLine, Teaser } from '../plan/model.ts';
import type { Origin, Said } from '../plan/origin.ts';

/** What runs at the end of a line. */
export function runnerOf({ lure, bait, teaser }: SpreadLine): Said<Lure | Bait | Teaser> | undefined {
    return lure ?? bait ?? teaser;
}

/** Its hooks: what the position says, or else what the lure or bait came with. */
export function hooksOf(line: SpreadLine): Hooks | undefined {
    return line.hooks ?? runnerOf(line)?.value.hooks;
}

/** Its leader, likewise. */
export function leaderOf(line: SpreadLine): Leader | undefined {
    return line.leader ?? runnerOf(line)?.value.leader;
}

/** The sort of gear that the written hook rules tell apart. */
export type Gear = 'skirted lure' | 'plug' | 'natural bait';

/** A diver counts as a plug: a lipped lure with no skirt. */
export function gearOf({ lure, bait }: SpreadLine): Gear | undefined {
    if (bait) return 'natural bait';
    if (!lure) return undefined;
    return lure.value.kind?.value === 'diver' ? 'plug' : 'skirted lure';
}

/** What decides how a line is towed, as far as it is written: its tow point, its distance, what runs on it. */
export function whereTowed(line: SpreadLine): readonly { readonly origin: Origin }[] {
    const { from, back } = line;
    const said = from?.origin.voice === 'default' ? [back] : [from, back];
    return [...said, runnerOf(line), line].filter((each) => each !== undefined);
}
