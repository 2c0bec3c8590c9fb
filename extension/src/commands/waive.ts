import { Position, Range, Uri, WorkspaceEdit, window, workspace } from 'vscode';
import { type WaiverOffer, waivers } from '../../../language/src/editor/protocol.ts';
import { type Home, running } from '../commands.ts';

/** Waives what was found at the caret, and asks why: a plan keeps the reason for whoever reads it next. */
export async function waive(home: Home): Promise<void> {
    const server = await running(home);
    const { place } = home.gaze;
    if (!server || !place) return;
    const { document, caret } = place;
    const range = { start: caret, end: window.activeTextEditor?.selection.end ?? caret };
    const offers = (await server.ask(waivers, { uri: document.uri.toString(), range: plain(range) })) ?? [];
    if (offers.length === 0) {
        void window.showInformationMessage('Nothing here can be waived: put the caret on a finding.');
        return;
    }
    const offer = await choose(offers);
    const reason = offer && (await askReason(offer));
    if (!reason) return;
    const edit = new WorkspaceEdit();
    const at = new Position(offer.at.line, offer.at.character);
    edit.insert(Uri.parse(offer.uri, true), at, `${offer.before}${reason}${offer.after}`);
    await workspace.applyEdit(edit);
}

async function choose(offers: readonly WaiverOffer[]): Promise<WaiverOffer | undefined> {
    if (offers.length === 1) return offers[0];
    const chosen = await window.showQuickPick(
        offers.map((offer) => ({ label: offer.title, detail: offer.message, offer })),
        { title: 'Waive what?' },
    );
    return chosen?.offer;
}

async function askReason({ title, message }: WaiverOffer): Promise<string | undefined> {
    const reason = await window.showInputBox({
        title: `Waive ${title}`,
        prompt: message,
        placeHolder: 'Why this is all right here',
        ignoreFocusOut: true,
        validateInput: (value) => (value.trim() === '' ? 'A waiver needs a reason.' : undefined),
    });
    // The language ends a text at a quotation mark or a line's end, and has no way to write either in one.
    return reason?.trim().replaceAll('"', '’').replace(/\s+/g, ' ');
}

function plain({ start, end }: { readonly start: Position; readonly end: Position }) {
    const range = new Range(start, end);
    const of = ({ line, character }: Position) => ({ line, character });
    return { start: of(range.start), end: of(range.end) };
}
