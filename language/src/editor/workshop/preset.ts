import type { AstNode } from 'langium';
import { isRearrangement } from '../../plan/resolve/table.ts';
import { linesOf, piecesOf } from './pieces.ts';
import { freeName, type Refactoring, rewritten, type Workplace } from './refactoring.ts';

/** What is of one day and no preset’s: it stays in the plan. */
const ofTheDay: ReadonlySet<string> = new Set([
    ...['date', 'author', 'edition', 'sea', 'wind', 'heading', 'depth', 'weather', 'note'],
]);

/** Makes a plan of two: a preset with the boat and what runs where, and the plan itself with what is of its day. */
export function makePreset(place: Workplace): Refactoring[] {
    const { definition } = place;
    if (definition.kind !== 'spread' || !definition.name) return [];
    const { entries, below } = piecesOf(definition);
    const stays = ({ node }: { node: AstNode }) =>
        node.$type === 'Waive' ||
        (!isRearrangement(node) && ofTheDay.has((node as { word?: string }).word ?? ''));
    const kept = entries.filter(stays);
    const moved = entries.filter((piece) => !stays(piece));
    if (moved.length === 0) return [];
    const title = 'Make this a preset';
    if (entries.some(({ node }) => node.$type === 'Unknown'))
        return [
            {
                title,
                kind: 'refactor.extract',
                changes: [],
                disabled: 'Something in this plan cannot be read: mend that first.',
            },
        ];
    const name = freeName(`${definition.name}-preset`, place);
    const cst = definition.$cstNode!;
    const base = definition.base ? ` like ${definition.base.$refText}` : '';
    const words = definition.title === undefined ? '' : ` "${definition.title}"`;
    const preset = `spread ${name}${base} {\n${moved.flatMap(linesOf).join('\n')}\n}`;
    const plan = `spread ${definition.name}${words} like ${name} {\n${[...kept.flatMap(linesOf), ...below].join('\n')}\n}`;
    // Below it, so that the comment above the plan stays the plan's.
    return [
        {
            title,
            kind: 'refactor.extract',
            changes: rewritten(place, [{ start: cst.offset, end: cst.end, text: `${plan}\n\n${preset}` }]),
        },
    ];
}
