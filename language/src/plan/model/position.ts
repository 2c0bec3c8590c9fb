export type Side = 'port' | 'starboard' | 'centre';

/** The places that every boat has; a boat may name further ones. */
export type StandardPlace =
    | 'corner'
    | 'rigger'
    | 'shotgun'
    | 'standby'
    | 'bridge teaser'
    | 'squid chain'
    | 'dredge';

export interface Position {
    /** In full, one spelling for both of the trade's: `port short corner`, `centre shotgun`. */
    readonly name: string;
    readonly side: Side;
    readonly length?: 'short' | 'long';
    readonly place: StandardPlace | (string & {});
    /** True where `place` is one that the boat named. */
    readonly extra: boolean;
}
