import type { Position as PositionNode } from '../../../grammar/generated/ast.ts';
import type { Position, Side } from '../model.ts';

/** One word for each place of the trade's; both of its words are understood. */
const PLACES: Readonly<Record<string, string>> = {
    corner: 'corner',
    flat: 'corner',
    flatline: 'corner',
    rigger: 'rigger',
    shotgun: 'shotgun',
    stinger: 'shotgun',
    standby: 'standby',
    teaser: 'bridge teaser',
    bridgeteaser: 'bridge teaser',
    squidchain: 'squid chain',
    dredge: 'dredge',
};

const SHORTS_AND_LONGS = new Set(['corner', 'rigger']);

/** The position that a piece of syntax names; undefined where it is not all there. */
export function readPosition(node: PositionNode | undefined): Position | undefined {
    const written = node?.place?.replace(/\s+/g, '');
    if (!written) return undefined;
    const standard = PLACES[written];
    const place = standard ?? written;
    const side = sideOf(node!, place);
    const named = [side === 'centre' && place === 'shotgun' ? undefined : side, node!.length, place];
    return {
        name: named.filter(Boolean).join(' '),
        side,
        ...(node!.length && { length: node!.length }),
        place,
        extra: standard === undefined,
    };
}

/** Whether a place has a short and a long line on each side. */
export function hasShortAndLong(place: string): boolean {
    return SHORTS_AND_LONGS.has(place);
}

export const placeWords: readonly string[] = [
    'corner',
    'rigger',
    'shotgun',
    'standby',
    'bridge teaser',
    'squid chain',
    'dredge',
];

/** A shotgun, a standby and gear named without a side stand on the centreline. */
function sideOf(node: PositionNode, _place: string): Side {
    if (node.side === 'port' || node.side === 'starboard') return node.side;
    return 'centre';
}
