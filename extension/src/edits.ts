import { Range, Uri, WorkspaceEdit } from 'vscode';
import type { MoveWritten } from '../../language/src/editor/protocol.ts';

/** An edit as the protocol has it, for the editor to apply: one step to undo. */
export function editOf({ changes = {} }: MoveWritten['edit']): WorkspaceEdit {
    const edit = new WorkspaceEdit();
    for (const [uri, edits] of Object.entries(changes)) {
        for (const { range, newText } of edits) {
            const { start, end } = range;
            edit.replace(
                Uri.parse(uri, true),
                new Range(start.line, start.character, end.line, end.character),
                newText,
            );
        }
    }
    return edit;
}
