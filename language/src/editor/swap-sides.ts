import type { LangiumDocument } from 'langium';
import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { PositionBlock } from '../../grammar/generated/ast.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Position } from '../plan/model.ts';
import { addedAtEnd } from './block-end.ts';
import { ownBlock, spreadNamed } from './named.ts';
import { rangeOf } from './spot.ts';

/**
 * The edit that lets a position and the one across the boat change sides with all that they fish. Where the plan
 * itself says what they fish, their names change places; where it is like another plan, it says `swap`.
 *
 * @returns undefined for a position on the centreline, and where only a part of it is said in the plan
 */
export function sidesSwapped(
    { plan }: AnalysedPlan,
    position: string,
    { parseResult, textDocument, uri }: LangiumDocument,
): WorkspaceEdit | undefined {
    const line = plan.lines.find((each) => each.position.name === position);
    const across = line && acrossFrom(line.position);
    const spread = spreadNamed(parseResult.value, plan.name);
    if (!across || !spread) return undefined;
    const isFishedAcross = plan.lines.some((each) => each.position.name === across);
    const blocks = [ownBlock(spread, position), ownBlock(spread, across)];
    const edits =
        plan.like.length > 0
            ? blocks.some(Boolean) || !isFishedAcross
                ? undefined
                : [addedAtEnd(spread, `swap ${position} with ${across}`, textDocument)]
            : [renamed(blocks[0], across), ...(isFishedAcross ? [renamed(blocks[1], position)] : [])];
    if (!edits?.every((edit) => edit !== undefined)) return undefined;
    return { changes: { [uri.toString()]: edits } };
}

function acrossFrom({ name, side }: Position): string | undefined {
    if (side === 'centre') return undefined;
    return name.replace(side, side === 'port' ? 'starboard' : 'port');
}

function renamed(block: PositionBlock | undefined, to: string): TextEdit | undefined {
    const range = block && rangeOf(block.position);
    return range && { range, newText: to };
}
