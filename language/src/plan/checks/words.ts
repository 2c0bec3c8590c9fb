import type { AstNode } from 'langium';
import type {
    Chosen,
    Lure,
    Position as PositionNode,
    Removal,
    Sheet,
    Unknown,
} from '../../../grammar/generated/ast.ts';
import { nearest } from '../../units/nearest.ts';
import type { Finding } from '../finding.ts';

import type { Place } from '../origin.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { readPosition } from '../resolve/position.ts';
import { headWords } from '../resolve/towed.ts';
import { definitionWords } from '../syntax/definition-words.ts';
import { positionOpeners } from '../syntax/depth.ts';
import { type Context, contextsKnowing, propertyOf, vocabulary } from '../vocabulary.ts';
import { capital, listed, shorten, withArticle } from '../wording.ts';
import { contextOf } from './context.ts';
import { instead, problem } from './problem.ts';

/** The words that may open a property in a block; positions too, in a spread. */
export function wordsIn(context: Context): readonly string[] {
    const words = vocabulary[context].map(({ word }) => word);
    return context === 'spread' ? [...words, 'port', 'starboard', 'centre', 'shotgun'] : words;
}

/**
 * A word that its block does not know. Only the first of several: the rest follows from it.
 *
 * @param isCounted  whether it is only counted, so that nobody reads what it says
 */
export function checkUnknown(node: Unknown, isCounted = false): Finding | undefined {
    if (isBehindAnother(node)) return undefined;
    const at = placeOfProperty(node, 'word');
    if (isCounted) return problem('unknown-word', at, { what: '' });
    const context = contextOf(node);
    if (context === 'spread' && (node.word === 'short' || node.word === 'long')) return whichSide(node, at);
    if (!context && belongsInside(node.word)) {
        return problem('syntax', at, {
            what: `\`${node.word}\` does not belong outside a block.`,
            remedy: 'Put it inside one, such as `spread my-plan { … }`, or look for a `}` too many above it.',
        });
    }
    const known = context ? wordsIn(context) : [...definitionWords];
    const near = nearest(node.word, known);
    const elsewhere = near ? undefined : whereKnown(node.word);
    const where = context ? `in ${withArticle(context)} block` : 'outside a block';
    return problem('unknown-word', at, {
        what: `\`${shorten(node.word)}\` means nothing ${where}.`,
        remedy: near
            ? `Did you mean \`${near}\`?`
            : (elsewhere ?? `Known here: ${choices(known.filter((word) => word !== 'note'))}.`),
        fixes: near ? [instead(at, near)] : [],
    });
}

/** `short corner { … }`: a position that lacks nothing but its side. */
function whichSide({ word, $cstNode }: Unknown, at: Place): Finding {
    const place = /^\S+\s+([\p{L}]+)/u.exec($cstNode?.text ?? '')?.[1];
    const position = place && PLACES.includes(place) ? `${word} ${place}` : word;
    return problem('value', at, {
        what: `Which side does \`${position}\` stand on: port or starboard?`,
        remedy: `Write \`port ${position}\` or \`starboard ${position}\`.`,
        fixes: ['port', 'starboard'].map((side) => instead(at, `${side} ${word}`)),
    });
}

export function checkChoice(node: Chosen): Finding | undefined {
    if (node.choice === undefined) return undefined;
    const context = contextOf(node);
    const property = context && propertyOf(context, node.word);
    if (!property?.choices || property.choices.includes(node.choice)) return undefined;
    const at = placeOfProperty(node, 'choice');
    const near = nearest(node.choice, property.choices);
    return problem('value', at, {
        what: `${node.word} cannot be \`${shorten(node.choice)}\`.`,
        remedy: near ? `Did you mean \`${near}\`?` : `It can be ${choices(property.choices)}.`,
        fixes: near ? [instead(at, near)] : [],
    });
}

export function checkHead(node: Lure): Finding | undefined {
    if (!node.head || headWords.includes(node.head)) return undefined;
    const at = placeOfProperty(node, 'head');
    const near = nearest(node.head, headWords);
    return problem('value', at, {
        what: `\`${shorten(node.head)}\` is no kind of head that the language knows.`,
        remedy: near ? `Did you mean \`${near}\`?` : `It can be ${choices(headWords)}.`,
        fixes: near ? [instead(at, near)] : [],
    });
}

/** A title without quotes: it reads, so that the rest of the definition is not lost. */
export function checkTitle(node: AstNode & { readonly unquoted?: readonly string[] }): Finding | undefined {
    const { unquoted } = node;
    if (!unquoted || unquoted.length === 0) return undefined;
    const [first, last] = [
        placeOfProperty(node, 'unquoted', 0),
        placeOfProperty(node, 'unquoted', unquoted.length - 1),
    ];
    const at = {
        ...first,
        start: first.start,
        end: last.end,
        range: { start: first.range.start, end: last.range.end },
    };
    const title = unquoted.join(' ').replace(/^«|»$/g, '');
    return problem('syntax', at, {
        what: `\`${shorten(unquoted.join(' '))}\` stands where a title would.`,
        remedy: `A title is in quotes: \`"${shorten(title)}"\`. A preset follows the word \`like\`.`,
        fixes: [{ ...instead(at, `"${title}"`), title: 'Put it in quotes' }],
    });
}

const PLACES = ['corner', 'flat', 'rigger', 'shotgun', 'stinger', 'standby', 'teaser', 'dredge'];

/**
 * A position that is not one of the trade's.
 *
 * @param extra  the names of positions that boats in reach have on top
 */
export function checkPosition(node: PositionNode, extra: ReadonlySet<string>): Finding | undefined {
    const position = readPosition(node);
    if (!position) return undefined;
    const at = placeOf(node);
    if (position.extra && !extra.has(position.place)) {
        const near = nearest(position.place, [...PLACES, ...extra]);
        const place = placeOfProperty(node, 'place');
        return problem('value', place, {
            what: `\`${shorten(position.place)}\` is no position of the trade's, and no boat in reach names it.`,
            remedy: near
                ? `Did you mean \`${near}\`?`
                : 'Use corner, rigger, shotgun, standby, bridge teaser, squid chain or dredge, or add a `position` to the boat.',
            fixes: near ? [instead(place, near)] : [],
        });
    }
    const sided = position.place === 'corner' || position.place === 'rigger';
    // A holder without a length serves both lines of its side.
    if (sided && position.side !== 'centre' && !position.length && node.$container.$type !== 'Holder') {
        return problem('value', at, {
            what: `Which ${position.place} on the ${position.side} side: the short or the long one?`,
            remedy: `Write \`${position.side} short ${position.place}\` or \`${position.side} long ${position.place}\`.`,
            fixes: ['short', 'long'].map((length) =>
                instead(at, `${position.side} ${length} ${position.place}`),
            ),
        });
    }
    if (position.length && (!sided || position.side === 'centre')) {
        return problem('value', at, {
            what: `There is no short or long ${position.place}${position.side === 'centre' ? ' on the centreline' : ''}.`,
            remedy: `Write \`${position.side} ${position.place}\`.`,
            fixes: [instead(at, `${position.side} ${position.place}`)],
        });
    }
    return undefined;
}

/** `no` in front of a word that this block never has. */
export function checkRemoval(node: Removal): Finding | undefined {
    const context = contextOf(node);
    if (!context || node.property === undefined) return undefined;
    const known = wordsIn(context);
    if (known.includes(node.property) || propertyOf(context, node.property)) return undefined;
    const at = placeOfProperty(node, 'property');
    const near = nearest(node.property, known);
    return problem('unknown-word', at, {
        what: `${capital(withArticle(context))} block has no \`${shorten(node.property)}\` to take away.`,
        remedy: near ? `Did you mean \`no ${near}\`?` : undefined,
        fixes: near ? [instead(at, near)] : [],
    });
}

/** The blocks that know a word which stands in the wrong one. */
function whereKnown(word: string): string | undefined {
    const contexts = contextsKnowing(word);
    return contexts.length === 0
        ? undefined
        : `It belongs in ${choices(contexts.slice(0, 3).map(withArticle))} block.`;
}

function belongsInside(word: string): boolean {
    return positionOpeners.has(word) || contextsKnowing(word).length > 0;
}

/** Behind another one on its line; outside every block, behind another one at all. */
function isBehindAnother(node: Unknown): boolean {
    const siblings = siblingsOf(node);
    const before = siblings[(node.$containerIndex ?? siblings.indexOf(node)) - 1];
    if (before?.$type !== 'Unknown') return false;
    if (node.$container.$type === 'Sheet') return !definitionBetween(before, node);
    return before.$cstNode?.range.end.line === node.$cstNode?.range.start.line;
}

function definitionBetween(before: AstNode, node: Unknown): boolean {
    const [from, to] = [before.$cstNode!.end, node.$cstNode!.offset];
    const sheet = node.$container as Sheet;
    return [sheet.definitions, sheet.uses].some((nodes) => {
        const at = nodes[firstFrom(nodes, from)]?.$cstNode?.offset;
        return at !== undefined && at < to;
    });
}

/** The first of nodes in the order of the text that begins there or later. */
function firstFrom(nodes: readonly AstNode[], offset: number): number {
    let [low, high] = [0, nodes.length];
    while (low < high) {
        const middle = (low + high) >> 1;
        if ((nodes[middle]!.$cstNode?.offset ?? -1) < offset) low = middle + 1;
        else high = middle;
    }
    return low;
}

function siblingsOf(node: Unknown): readonly AstNode[] {
    const container = node.$container as AstNode & { entries?: AstNode[] };
    return container.entries ?? (container as unknown as Sheet).strays ?? [];
}

/** What there is to choose from, as far as one reads. */
export function choices(words: readonly string[]): string {
    return listed(words.slice(0, 24), 'or');
}
