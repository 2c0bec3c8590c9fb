import { Disposable, StatusBarAlignment, window } from 'vscode';
import { type Checked, checked } from '../../language/src/editor/protocol.ts';
import { countWords } from './count-words.ts';
import { type Gaze, isOurs } from './gaze.ts';
import type { Server } from './server.ts';

/** What was found in the file that one works in, in the status bar. */
export function contributeStatus(server: Server, gaze: Gaze): Disposable {
    const item = window.createStatusBarItem('layback.findings', StatusBarAlignment.Left, 40);
    item.name = 'Layback: Findings of the Plan';
    item.command = 'layback.openProblems';
    const counts = new Map<string, Checked>();
    const show = () => {
        const { document } = gaze.place ?? {};
        const active = window.activeTextEditor;
        // In front of a panel no text is active, and the plan is still the one that is worked in.
        const shown = active && !isOurs(active) ? undefined : document;
        if (!shown) return item.hide();
        const words = statusWords(server.state, counts.get(shown.uri.toString()));
        item.text = words.text;
        item.tooltip = words.tooltip;
        item.command = words.restart ? 'layback.restart' : 'layback.openProblems';
        item.accessibilityInformation = { label: words.tooltip, role: 'button' };
        item.show();
    };
    show();
    return Disposable.from(
        item,
        gaze.onMove(show),
        window.onDidChangeActiveTextEditor(show),
        server.onState((state) => {
            if (state !== 'running') counts.clear();
            show();
        }),
        server.hear(checked, (told) => {
            counts.set(told.uri, told);
            show();
        }),
    );
}

type Counts = Pick<Checked, 'phase' | 'errors' | 'warnings' | 'hints'>;

/** @param found  undefined where the file was not checked yet */
export function statusWords(
    state: Server['state'],
    found: Counts | undefined,
): { readonly text: string; readonly tooltip: string; readonly restart?: true } {
    if (state === 'stopped') {
        return {
            text: '$(circle-slash) Layback',
            tooltip: 'The Layback language server is not running: nothing is checked. Click to start it.',
            restart: true,
        };
    }
    if (state === 'starting' || !found) {
        return { text: '$(loading~spin) Layback', tooltip: 'The plan is being checked.' };
    }
    const words = countWords(found);
    if (words.length === 0 && found.phase === 'first') {
        return {
            text: '$(ellipsis) Layback',
            tooltip: 'Nothing was found so far. The turns are still to come.',
        };
    }
    if (words.length === 0) {
        return { text: '$(check) Layback', tooltip: 'Nothing was found in this file.' };
    }
    const icons = [
        found.errors > 0 && `$(error) ${found.errors}`,
        found.warnings > 0 && `$(warning) ${found.warnings}`,
        found.hints > 0 && `$(info) ${found.hints}`,
    ];
    return {
        text: `Layback ${icons.filter(Boolean).join(' ')}`,
        tooltip: `In this file: ${words.join(', ')}. Click to see them.`,
    };
}
