import type { AstNode, AstNodeDescription } from 'langium';
import { CompletionItemKind } from 'vscode-languageserver';
import type { Definition, PositionBlock } from '../../../grammar/generated/ast.ts';
import { type Kind, kindsWanted } from '../../plan/names/kinds.ts';
import type { ReachScope } from '../../plan/names/scope.ts';
import { LIBRARY_SCHEME } from '../../plan/names/uses.ts';
import { Gathered, gather, gatherPart } from '../../plan/resolve/gather.ts';
import { readPosition } from '../../plan/resolve/position.ts';
import type { EditorServices } from '../services.ts';
import { definitionAround } from '../spot.ts';
import type { Caret } from './caret.ts';
import type { Following } from './following.ts';
import type { Offer } from './item.ts';
import { likelyNames } from './log.ts';
import { spreadAt } from './positions.ts';

/** Gear that one plan has once: what another line of it fishes is not offered again. */
const once: ReadonlySet<string> = new Set(['outfit', 'lure', 'teaser']);

/** The names of definitions that a reference may lead to, those of the team before those of the library. */
export function nameOffers({ role, rule }: Following, caret: Caret, services: EditorServices): Offer[] {
    // An event says many things in one go: the word in front is not the one that a name stands behind.
    const word = rule === 'EventLure' ? 'lure' : (/^\S+/.exec(caret.entry)?.[0] ?? '');
    const kinds = role === 'base' ? [kindOf(caret)] : kindsWanted({ $type: 'Referred', word } as never, 'of');
    const taken = once.has(word) ? takenIn(caret, word) : new Set<string>();
    const likely: ReadonlyMap<string, string> =
        caret.blocks[0]?.context === 'log' ? likelyNames(kinds[0] ?? '', caret) : new Map();
    const order = [...likely.keys()];
    const scope = services.references.ScopeProvider as ReachScope;
    // Nothing is like itself, and no pack is written over itself.
    const own = role === 'base' ? nameIn(caret) : word === 'written' ? nameAround(caret) : undefined;
    return scope
        .scopeFrom(caret.document, kinds)
        .getAllElements()
        .distinct(({ name }) => name)
        .filter(({ name }) => !taken.has(name) && name !== own)
        .map((description) => {
            const offer = offerOf(description);
            const why = likely.get(offer.label);
            return why === undefined
                ? offer
                : {
                      ...offer,
                      detail: [why, offer.detail].filter(Boolean).join(' · '),
                      rank: order.indexOf(offer.label),
                  };
        })
        .toArray();
}

function offerOf(description: AstNodeDescription): Offer {
    const { name, node, documentUri } = description;
    const { title, kind } = node as Definition & { title?: string };
    const isBuiltIn = documentUri.scheme === LIBRARY_SCHEME;
    const file = documentUri.path.slice(documentUri.path.lastIndexOf('/') + 1);
    return {
        label: name,
        kind: CompletionItemKind.Reference,
        detail: [title, isBuiltIn ? 'built-in library' : file].filter(Boolean).join(' · '),
        rank: isBuiltIn ? 60 : 40,
        data: { uri: documentUri.toString(), kind, name },
    };
}

/** The kind of the definition that is being begun: `lure x like …`. */
function kindOf({ entry, blocks }: Caret): Kind {
    if (blocks[0]) return definitionAround(blocks[0].node)!.kind;
    return (/^\S+/.exec(entry)?.[0] ?? 'spread') as Kind;
}

function nameIn({ entry }: Caret): string | undefined {
    return /^\S+\s+(\S+)/.exec(entry)?.[1];
}

function nameAround({ blocks }: Caret): string | undefined {
    const definition = blocks[0] && definitionAround(blocks[0].node);
    return (definition as { name?: string } | undefined)?.name;
}

/** What the other positions of the plan have, the ones that it takes over too. */
function takenIn(caret: Caret, word: string): Set<string> {
    const spread = spreadAt(caret);
    const taken = new Set<string>();
    if (!spread) return taken;
    const block = caret.blocks.find(({ node }) => node.$type === 'PositionBlock')?.node as
        | PositionBlock
        | undefined;
    const here = block && readPosition(block.position)?.name;
    const gathered = new Gathered();
    for (const [key, [slot]] of gather(spread, gathered)) {
        if (!key.startsWith('position ') || key === `position ${here}`) continue;
        const part = gatherPart(slot?.table?.get(word)?.[0], gathered);
        const name = (part?.definition as (AstNode & { name?: string }) | undefined)?.name;
        if (name) taken.add(name);
    }
    return taken;
}
