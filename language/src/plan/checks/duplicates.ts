import type { AstNode } from 'langium';
import type { Finding } from '../finding.ts';
import { placeOf } from '../place.ts';
import { isMany, keyOf } from '../resolve/table.ts';
import { shorten } from '../wording.ts';
import { problem } from './problem.ts';

/** Properties that a block says twice. Neither is guessed at: the first counts until the text is mended. */
export function checkDuplicates(entries: readonly AstNode[]): Finding[] {
    const first = new Map<string, AstNode>();
    const found: Finding[] = [];
    for (const entry of entries) {
        const key = keyOf(entry);
        if (key === undefined || isMany(key) || !isWhole(entry)) continue;
        const before = first.get(key);
        if (!before) {
            first.set(key, entry);
            continue;
        }
        const at = placeOf(entry);
        found.push(
            problem('duplicate', at, {
                what: `\`${shorten(key.replace(/^position /, '').trim())}\` is said twice in this block.`,
                why: 'The first one counts; the other may be the one that was meant.',
                remedy: 'Keep one of them.',
                related: [{ at: placeOf(before), what: 'The first one.' }],
                fixes: [{ title: 'Take this one out', edits: [{ at, text: '' }] }],
            }),
        );
    }
    return found;
}

/** A position without its block is a slip of something else, such as a comma left out of an order. */
function isWhole({ $type, $cstNode }: AstNode): boolean {
    return $type !== 'PositionBlock' || $cstNode === undefined || $cstNode.text.includes('{');
}
