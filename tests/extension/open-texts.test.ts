import { beforeEach, describe, expect, test, vi } from 'vitest';
import { checked } from '../../language/src/editor/protocol.ts';

type Hear = (told: unknown) => void;
const { editor, heard, provided } = vi.hoisted(() => ({
    editor: { saves: [] as Hear[], closes: [] as Hear[], contexts: [] as unknown[][] },
    heard: new Map<unknown, Hear[]>(),
    provided: new Map<
        string,
        { provideTextDocumentContent(uri: unknown): Promise<string>; onDidChange: Hear }
    >(),
}));

// The editor as far as these two parts know it.
vi.mock('vscode', () => {
    class Uri {
        readonly scheme: string;
        readonly path: string;
        readonly query: string;
        constructor({ scheme = '', path = '', query = '' }) {
            this.scheme = scheme;
            this.path = path;
            this.query = query;
        }
        static from(parts: object) {
            return new Uri(parts);
        }
        toString() {
            return `${this.scheme}:${this.path}?${this.query}`;
        }
    }
    class EventEmitter {
        readonly listeners: Hear[] = [];
        event = (listener: Hear) => this.listeners.push(listener);
        fire = (told: unknown) => {
            for (const each of this.listeners) each(told);
        };
    }
    return {
        Uri,
        EventEmitter,
        Disposable: { from: () => ({ dispose() {} }) },
        commands: { executeCommand: (...given: unknown[]) => editor.contexts.push(given) },
        workspace: {
            textDocuments: [],
            onDidSaveTextDocument: (listener: Hear) => editor.saves.push(listener),
            onDidCloseTextDocument: (listener: Hear) => editor.closes.push(listener),
            registerTextDocumentContentProvider: (scheme: string, provider: never) =>
                provided.set(scheme, provider),
        },
    };
});

const { contributeTexts, figuresAddress, seasonAddress } = await import('../../extension/src/texts.ts');
const { contributeFirstPlan } = await import('../../extension/src/first-plan.ts');

const server = {
    started: async () => true,
    ask: async (_: unknown, { plan }: { plan: string }) => ({ text: `Figures of ${plan}` }),
    hear: (what: unknown, listener: Hear) => {
        heard.set(what, [...(heard.get(what) ?? []), listener]);
        return { dispose() {} };
    },
} as never;

const uri = 'file:///plans/saturday.spread';
const none = { uri, version: 7, phase: 'second', plans: 1, errors: 0, warnings: 0, hints: 0 };
function tell(told: object): void {
    for (const listener of heard.get(checked) ?? []) listener({ ...none, ...told });
}
function close(of: unknown): void {
    for (const listener of editor.closes) listener({ uri: of });
}

beforeEach(() => {
    heard.clear();
    provided.clear();
    Object.assign(editor, { saves: [], closes: [], contexts: [] });
});

describe('figures of two plans of one file', () => {
    test('both follow the file, and one goes on when the other is closed', async () => {
        contributeTexts(server);
        const shown = provided.get('layback-figures')!;
        const changed: unknown[] = [];
        shown.onDidChange(((address: unknown) => changed.push(address)) as never);
        const early = figuresAddress('Early', { uri, plan: 'early' });
        const late = figuresAddress('Late', { uri, plan: 'late' });
        for (const each of [early, late]) await shown.provideTextDocumentContent(each);

        tell({});
        expect(changed).toEqual([early, late]);
        close(late);
        tell({ uri: 'file:///plans/other.spread' });
        tell({});
        expect(changed).toEqual([early, late, early]);
    });
});

test('the season is counted anew when nobody types, and no more once it is closed', async () => {
    contributeTexts(server);
    const shown = provided.get('layback-season')!;
    const changed: unknown[] = [];
    shown.onDidChange(((address: unknown) => changed.push(address)) as never);
    tell({});
    expect(changed).toEqual([]);
    await shown.provideTextDocumentContent(seasonAddress());
    tell({ phase: 'first' });
    tell({ uri: 'file:///logs/saturday.spread' });
    expect(changed).toEqual([seasonAddress()]);
    close(seasonAddress());
    tell({});
    expect(changed).toEqual([seasonAddress()]);
});

describe('the first clean plan', () => {
    const save = (version: number) => {
        const saved = { languageId: 'layback', uri: { toString: () => uri }, version };
        for (const listener of editor.saves) listener(saved);
    };
    const isTold = () => editor.contexts.length > 0;
    beforeEach(() => void contributeFirstPlan(server));

    test('is one that was saved as it was checked, turns and all', () => {
        save(7);
        tell({ phase: 'first' });
        expect(isTold()).toBe(false);
        tell({});
        expect(editor.contexts).toEqual([['setContext', 'layback.firstCleanPlan', true]]);
    });

    test('also where it was checked before it was saved', () => {
        tell({});
        expect(isTold()).toBe(false);
        save(7);
        expect(isTold()).toBe(true);
    });

    test('is none that was saved before anybody looked at the last change', () => {
        tell({});
        save(8);
        tell({ version: 8, errors: 1 });
        expect(isTold()).toBe(false);
    });

    test('is none that was mended and not saved since', () => {
        save(7);
        tell({ warnings: 1 });
        tell({ version: 8 });
        expect(isTold()).toBe(false);
    });

    test('is none of another opening, whose versions count anew', () => {
        save(7);
        close({ toString: () => uri });
        tell({});
        expect(isTold()).toBe(false);
    });
});
