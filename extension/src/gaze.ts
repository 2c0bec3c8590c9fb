import {
    type Disposable,
    EventEmitter,
    type Position,
    type TextDocument,
    type TextEditor,
    window,
    workspace,
} from 'vscode';

/** Where the crew is reading: a file of the language, and the caret in it. */
export interface Place {
    readonly document: TextDocument;
    readonly caret: Position;
}

/** Follows the plan that one works in. Other files, views and panels do not count: who looks there comes back. */
export interface Gaze extends Disposable {
    /** Undefined until a file of the language was looked at, and when the last one looked at is closed. */
    readonly place: Place | undefined;
    readonly onMove: (listener: (place: Place | undefined) => void) => Disposable;
}

/** A caret that rests for so long, ms, is where somebody looks; one that runs along with arrow keys is not. */
const rest = 80;

export function followPlans(): Gaze {
    const moved = new EventEmitter<Place | undefined>();
    let place = placeIn(window.activeTextEditor) ?? placeIn(window.visibleTextEditors.find(isOurs));
    let timer: ReturnType<typeof setTimeout> | undefined;
    const look = (editor: TextEditor | undefined, after = 0) => {
        const next = placeIn(editor);
        if (!next) return;
        place = next;
        clearTimeout(timer);
        timer = setTimeout(() => moved.fire(place), after);
    };
    const listening = [
        window.onDidChangeActiveTextEditor((editor) => look(editor)),
        window.onDidChangeTextEditorSelection(({ textEditor }) => {
            if (textEditor === window.activeTextEditor) look(textEditor, rest);
        }),
        window.onDidChangeVisibleTextEditors((editors) => {
            // With the window, editors come up without one of them being active where a panel is in front.
            if (!place) look(editors.find(isOurs));
        }),
        workspace.onDidCloseTextDocument((document) => {
            if (document !== place?.document) return;
            place = placeIn(window.visibleTextEditors.find(isOurs));
            moved.fire(place);
        }),
        workspace.onDidOpenTextDocument((document) => {
            // A file whose language is told only now is opened anew.
            if (document === window.activeTextEditor?.document) look(window.activeTextEditor);
        }),
    ];
    return {
        get place() {
            return place;
        },
        onMove: moved.event,
        dispose() {
            clearTimeout(timer);
            for (const each of [...listening, moved]) each.dispose();
        },
    };
}

export function isOurs(editor: TextEditor): boolean {
    return editor.document.languageId === 'layback';
}

function placeIn(editor: TextEditor | undefined): Place | undefined {
    return editor && isOurs(editor)
        ? { document: editor.document, caret: editor.selection.active }
        : undefined;
}
