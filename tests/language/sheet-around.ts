import type { Context } from '../../language/src/plan/vocabulary.ts';

/** A sheet that is nothing but the braces around a property of some block. */
export function sheetAround(context: Context, property: string): string {
    const [before, after = '}'] = AROUND[context] ?? [`${context} a {`];
    return `${before}\n${property}\n${after}\n`;
}

/** Blocks that stand in others, or have something between their word and their brace. */
const AROUND: Readonly<Partial<Record<Context, readonly [before: string, after?: string]>>> = {
    wash: ['boat a { wash {', '} }'],
    outriggers: ['boat a { outriggers {', '} }'],
    'centre rigger': ['boat a { centre rigger {', '} }'],
    foot: ['boat a { outriggers { foot {', '} } }'],
    flat: ['boat a { flat clip {', '} }'],
    point: ['boat a { point b {', '} }'],
    'extra position': ['boat a { position b {', '} }'],
    holder: ['boat a { holder port corner {', '} }'],
    spool: ['reel a { spool {', '} }'],
    double: ['outfit a { double {', '} }'],
    drag: ['outfit a { drag {', '} }'],
    position: ['spread a { port short corner {', '} }'],
    roles: ['spread a { roles {', '} }'],
    fallback: ['spread a { fallback "b" {', '} }'],
    limits: ['rules a { limits {', '} }'],
    'rod limits': ['rules a { rod {', '} }'],
    gaff: ['rules a { gaff {', '} }'],
    skirted: ['rules a { skirted {', '} }'],
    natural: ['rules a { natural {', '} }'],
    plug: ['rules a { plug {', '} }'],
    main: ['rules a { main {', '} }'],
    log: ['log 2026-02-14 {'],
    event: ['log 2026-02-14 { at 07:42', '}'],
};
