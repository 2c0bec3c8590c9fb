import type { AstNode } from 'langium';
import { CompletionItemKind } from 'vscode-languageserver';
import type { Definition, PositionBlock } from '../../../grammar/generated/ast.ts';
import { baseOf, Gathered, gather } from '../../plan/resolve/gather.ts';
import { readPosition } from '../../plan/resolve/position.ts';
import type { EditorServices } from '../services.ts';
import { definitionAround } from '../spot.ts';
import type { Caret } from './caret.ts';
import type { Offer } from './item.ts';
import { plansFished, towedBy } from './log.ts';
import { extraPositions } from './reachable.ts';

const sided = ['short corner', 'long corner', 'short rigger', 'long rigger'];
const usual = [
    ...sided.flatMap((place) => [`port ${place}`, `starboard ${place}`]),
    'shotgun',
    'centre standby',
    'port bridge teaser',
    'starboard bridge teaser',
    'port squid chain',
    'starboard squid chain',
    'port dredge',
    'starboard dredge',
];

/** Positions for a block of their own: those that the plan has not said yet, what it takes over first. */
export function freePositions(caret: Caret, services: EditorServices): Offer[] {
    const spread = spreadAt(caret);
    if (!spread) return [];
    const said = new Set(blocksOf(spread).flatMap(({ position }) => readPosition(position)?.name ?? []));
    const inherited = positionsOf(spread);
    const extra = extraPositions(caret.document, services).map((place) => `centre ${place}`);
    const names = [...new Set([...inherited, ...usual, ...extra])].filter((name) => !said.has(name));
    return names.map((name, at) => ({
        ...offer(name, at + (inherited.includes(name) ? 0 : 100)),
        snippet: `${name} {\n\t$0\n}`,
        detail: inherited.includes(name)
            ? 'As the preset has it, but for what is said here'
            : 'A line of the spread',
    }));
}

/** Positions that the plan has, for whoever speaks of one: an order, a waiver, a role; none to act on without a preset. */
export function namedPositions(caret: Caret): Offer[] {
    const spread = spreadAt(caret);
    if (/^(without|swap)\b/.test(caret.entry) && spread && !baseOf(spread)) return [];
    return spread ? positionsOf(spread).map((name, at) => offer(name, at)) : [];
}

/** Positions of the plan of an event's hour, or of all that the log is about; every one where it names none. */
export function positionsFished(caret: Caret): Offer[] {
    const fished = plansFished(caret).flatMap(towedBy);
    const names = new Map(fished.map(({ position, towed }) => [position, towed]));
    if (names.size === 0) return allPositions();
    return [...names].map(([name, towed], at) => ({
        ...offer(name, at),
        ...(towed && { detail: `Tows ${towed}` }),
    }));
}

/** Every position there is, for a boat's holders and a log that names no plan. */
export function allPositions(): Offer[] {
    return usual.map((name, at) => offer(name, at));
}

/** Those that go on from the words that stand there, with the words that are left. */
export function goingOn(offers: readonly Offer[], entry: string): Offer[] {
    return offers.flatMap((offer) => {
        const words = offer.label.split(' ');
        for (let count = words.length - 1; count > 0; count--) {
            const begun = words.slice(0, count).join(' ');
            if (!new RegExp(`(^|\\s)${begun}\\s*$`).test(entry)) continue;
            const cut = (text: string | undefined) => text?.slice(begun.length + 1);
            const [label, text, snippet] = [cut(offer.label)!, cut(offer.text), cut(offer.snippet)];
            return [{ ...offer, label, ...(text && { text }), ...(snippet && { snippet }) }];
        }
        return [];
    });
}

function offer(name: string, rank: number): Offer {
    return { label: name, kind: CompletionItemKind.Field, rank };
}

function positionsOf(spread: Definition): string[] {
    return [...gather(spread, new Gathered()).keys()]
        .filter((key) => key.startsWith('position '))
        .map((key) => key.slice('position '.length));
}

function blocksOf(spread: Definition): PositionBlock[] {
    return ((spread.entries ?? []) as readonly AstNode[]).filter(
        (entry): entry is PositionBlock => entry.$type === 'PositionBlock',
    );
}

export function spreadAt({ blocks }: Caret): Definition | undefined {
    const definition = blocks[0] && definitionAround(blocks[0].node);
    return definition?.kind === 'spread' ? definition : undefined;
}
