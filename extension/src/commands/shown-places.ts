import { commands, Location, Position, Range, Selection, Uri, window } from 'vscode';
import type {
    ShowFindingsArguments,
    ShowReferencesArguments,
} from '../../../language/src/editor/protocol.ts';
import type { Home } from '../commands.ts';

/** What a lens above a definition counts: the places that use it, in the editor's own list. */
export async function showReferences(_: Home, ...given: unknown[]): Promise<void> {
    const [uri, position, locations] = given as unknown as ShowReferencesArguments;
    await commands.executeCommand(
        'editor.action.showReferences',
        Uri.parse(uri, true),
        positionOf(position),
        locations.map((each) => new Location(Uri.parse(each.uri, true), rangeOf(each.range))),
    );
}

/** The findings of a plan: the caret goes to it, and the Problems view comes up. */
export async function showFindings(_: Home, ...given: unknown[]): Promise<void> {
    const [uri, range] = given as unknown as ShowFindingsArguments;
    const editor = await window.showTextDocument(Uri.parse(uri, true));
    const { start } = rangeOf(range);
    editor.selection = new Selection(start, start);
    await commands.executeCommand('workbench.actions.view.problems');
}

type PositionSaid = ShowReferencesArguments[1];

function positionOf({ line, character }: PositionSaid): Position {
    return new Position(line, character);
}

function rangeOf({ start, end }: { readonly start: PositionSaid; readonly end: PositionSaid }): Range {
    return new Range(positionOf(start), positionOf(end));
}
