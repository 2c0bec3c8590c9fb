import type { Dimension } from '../../units/unit.ts';

/** What one word means in one block. The grammar knows its shape; everything else about it is said here. */
export interface Property {
    readonly word: string;
    /** As it would be written, on one line. */
    readonly example: string;
    /** One sentence for hovers, completion and the language reference. */
    readonly says: string;
    /** Of its number or numbers. */
    readonly dimension?: Dimension;
    /** A load may also be a share of the line class or of the line's strength. */
    readonly orShare?: boolean;
    /** The words that it may be, where the list is closed. */
    readonly choices?: readonly string[];
    /** What stands in its place when it is left out. */
    readonly otherwise?: string;
    /** May stand more than once in a block. */
    readonly many?: boolean;
    /** The smallest and largest number that makes sense, SI; outside is surely a slip. */
    readonly sane?: readonly [number, number];
}
