import type { AstNode } from 'langium';
import type { Definition } from '../../../grammar/generated/ast.ts';
import { withArticle } from '../wording.ts';

/** The word that opens a definition, which is also its namespace: a lure and a leader may share a name. */
export type Kind = Definition['kind'] | 'log';

/** Which kinds a reference may name, from the word that it stands behind. */
export function kindsWanted(node: AstNode, property: string): readonly Kind[] {
    if (property === 'base') return [(node as Definition).kind];
    const word = (node as { word?: string }).word;
    return (word && WANTED[word]) || (node.$type === 'Referred' ? ['species'] : []);
}

const WANTED: Readonly<Record<string, readonly Kind[]>> = {
    boat: ['boat'],
    target: ['species'],
    species: ['species'],
    method: ['method'],
    event: ['rules'],
    under: ['rules'],
    written: ['rules'],
    using: ['spread'],
    from: ['spread'],
    when: ['spread'],
    spare: ['outfit', 'lure', 'teaser'],
    rod: ['rod'],
    reel: ['reel'],
    line: ['line'],
    leader: ['leader'],
    hooks: ['hooks'],
    outfit: ['outfit'],
    lure: ['lure'],
    teaser: ['teaser'],
    bait: ['bait'],
};

/** One of a kind: `a lure`, `an outfit`. */
export function one(kind: Kind): string {
    return withArticle(spoken(kind));
}

/** How a kind is spoken of. */
export function spoken(kind: Kind): string {
    return SPOKEN[kind] ?? kind;
}

const SPOKEN: Readonly<Partial<Record<Kind, string>>> = {
    hooks: 'hook rig',
    rules: 'rule pack',
};
