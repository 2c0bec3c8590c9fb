import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { URI } from 'langium';
import { expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import { diagnosticOf } from '../../language/src/editor/diagnostic.ts';
import { type Tally, tallyOfAll } from '../../language/src/editor/protocol.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';
import { type Editor, editorOver, type Files } from './client.ts';
import { boats, plan, tackle } from './team.ts';

/** A team whose files hang together in as many ways as there are. */
const files: Files = {
    'boats.spread': boats,
    'tackle.spread': tackle,
    'rules.spread':
        'use "layback:written-rules"\nrules cup "Cup" like house {\n    written saltwater\n    at most 2 lines\n    class among 15 kg, 24 kg\n}\nrules house { rule wash { severity warning }  rule stagger { sway 6 deg } }\n',
    'plans/march.spread': plan
        .replace('crew 2', 'crew 2\n    event cup')
        .replace('use "../boats', 'use "../rules.spread"\nuse "../boats'),
    'plans/april.spread':
        'use "march.spread"\nspread april like morning {\n    port long rigger { back 29 m }\n    waive wave-face on port long rigger because "calm"\n    without starboard short rigger\n}\nlure idle jet { length 200 mm }\n',
    'plans/may.spread':
        'use "april.spread"\nuse "../tackle.spread"\nspread may like april { speed 6.5 kn  no event }\nspread june like may { swap port short corner with starboard short corner }\n',
    'days/march.spread':
        'use "../plans/april.spread"\nday first {\n    from 06:00 fish morning\n    from 11:00 fish april\n    when sea over 1 m fish breeze\n    until 16:00\n}\nday second like first { no when }\n',
    'logs/march.spread':
        'use "../plans/march.spread"\nuse "../tackle.spread"\nlog 2026-03-02 {\n    using morning\n    at 07:10 bite port long rigger lure sliver hooked\n    at 07:30 lost "hook pulled"\n}\n',
};

/** What hands do to such texts, and worse. */
const pieces = [
    ...['}', '{', '"', '\n', ' ', '// ', '/* ', '*/', ',', '🐟', '\r\n', '%', '8', ' kn', ' kg', '-'],
    ...[
        'speed 7 kn\n',
        'sea 1.2 m\n',
        'crew 1\n',
        'turn within 40 m\n',
        'sped 8 kn\n',
        'lure wick\n',
        'outfit red\n',
    ],
    ...[
        'back wave 3\n',
        'back 31 m\n',
        'clip 1 kg\n',
        'port long corner { outfit blue  lure broom  back 20 m }\n',
    ],
    ...[
        'use "../boats.spread"\n',
        'use "nowhere.spread"\n',
        'use "layback:methods"\n',
        'use "march.spread"\n',
        'use "may.spread"\n',
    ],
    ...[
        'from 07:00 fish may\n',
        'when sea over 0.5 m fish april\n',
        'waive wash because "x"\n',
        'waive stagger on port long rigger because ""\n',
        'without port long rigger\n',
        'no speed\n',
    ],
    ...[
        'lure extra jet { length 300 mm }\n',
        'spread other like morning { }\n',
        'boat petrel { beam 3 m }\n',
        'like morning',
    ],
    ...[
        'rule size-order { severity off }\n',
        'method soft\n',
        'drag { set 30 %  hooked 12 kg }\n',
        '/** Said. */\n',
    ],
];

/** Equal runs for equal seeds (mulberry32). */
function dice(seed: number): (sides: number) => number {
    let state = seed >>> 0;
    return (sides) => {
        state = (state + 0x6d2b79f5) >>> 0;
        let mixed = Math.imul(state ^ (state >>> 15), state | 1);
        mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
        return ((mixed ^ (mixed >>> 14)) >>> 0) % sides;
    };
}

class Hands {
    readonly editor: Editor;
    readonly open = new Set<string>();
    readonly roll: (sides: number) => number;

    constructor(editor: Editor, seed: number) {
        this.editor = editor;
        this.roll = dice(seed);
    }

    /** One thing that people do: mostly typing. */
    async act(): Promise<void> {
        const path = this.pick(Object.keys(files));
        const rolled = this.roll(100);
        if (rolled < 84) return this.type(path);
        if (rolled < 88) return this.isThere(path) ? this.toggle(path) : undefined;
        if (rolled < 93) return this.editor.write(path, this.damaged(files[path]!), !this.isThere(path));
        if (rolled < 95) return this.isThere(path) ? this.editor.remove(path) : undefined;
        if (rolled < 97) return this.rename(path);
        // Now and then things are put right again, or nothing would be left to break.
        return this.editor.write(path, files[path]!, !this.isThere(path));
    }

    private async type(path: string): Promise<void> {
        if (!this.open.has(path)) {
            if (!this.isThere(path)) return;
            await this.toggle(path);
        }
        const text = this.editor.text(path);
        const at = this.roll(text.length + 1);
        if (this.roll(12) === 0) return this.editor.edit(path, 0, text.length, files[path]!);
        const gone = this.roll(3) === 0 ? this.roll(this.roll(4) === 0 ? 60 : 6) : 0;
        const line = text.lastIndexOf('\n', at) + 1;
        const start = whole(text, this.roll(3) === 0 ? line : at);
        await this.editor.edit(
            path,
            start,
            whole(text, Math.min(text.length, start + gone)),
            gone > 0 && this.roll(2) === 0 ? '' : this.pick(pieces),
        );
    }

    private async toggle(path: string): Promise<void> {
        if (this.open.delete(path)) return this.editor.close(path);
        this.open.add(path);
        await this.editor.open(path);
    }

    /** Gives a file another name, or its own one back; who has it open goes on in it under the new one. */
    private async rename(path: string): Promise<void> {
        const other = path.replace(/[^/]+$/, 'once-$&');
        const [from, to] = this.isThere(path) ? [path, other] : [other, path];
        if (!this.isThere(from) || this.isThere(to)) return;
        const isOpen = this.open.has(from);
        if (isOpen) await this.toggle(from);
        await this.editor.rename(from, to);
        if (isOpen) await this.toggle(to);
    }

    private damaged(text: string): string {
        const at = this.roll(text.length);
        return text.slice(0, at) + this.pick(pieces) + text.slice(at + this.roll(8));
    }

    private isThere(path: string): boolean {
        const [folder, name] = path.includes('/') ? path.split('/') : ['', path];
        return readdirSync(join(this.editor.folder, folder!)).includes(name!);
    }

    private pick<T>(from: readonly T[]): T {
        return from[this.roll(from.length)]!;
    }
}

/** No position of the protocol lies within a line end, and no hand types half a character. */
function whole(text: string, offset: number): number {
    const isSplit = /^(\r\n|[\ud800-\udbff][\udc00-\udfff])$/.test(text.slice(offset - 1, offset + 1));
    return isSplit ? offset - 1 : offset;
}

/** What a first look at the same texts finds, as the editor would be told. */
async function coldCheck({ editor, open }: Hands, turns: boolean): Promise<Record<string, string[]>> {
    const texts = new Map<string, string>();
    for (const entry of readdirSync(editor.folder, { recursive: true, encoding: 'utf8' })) {
        if (entry.endsWith('.spread'))
            texts.set(editor.uri(entry), readFileSync(join(editor.folder, entry), 'utf8'));
    }
    for (const path of open) texts.set(editor.uri(path), editor.text(path));
    const uris = [...texts.keys()].map((uri) => URI.parse(uri));
    const loaded = await load(
        createServices(),
        uris,
        (uri) => {
            const text = texts.get(uri.toString());
            const isThere = existsSync(uri.fsPath);
            if (isThere && !uri.path.endsWith('.spread'))
                return { kind: 'unread', reason: 'does not end in .spread' };
            return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
        },
        [URI.parse(editor.folderUri(''))],
    );
    return Object.fromEntries(
        checkAll(loaded, { turns }).map(({ uri, findings }) => [
            editor.path(uri),
            findings.map((finding) => told(diagnosticOf(finding, uri))).sort(),
        ]),
    );
}

function toldBy({ editor }: Hands, paths: readonly string[], late: boolean): Record<string, string[]> {
    return Object.fromEntries(
        paths.map((path) => [
            path,
            (editor.told.get(editor.uri(path)) ?? [])
                .filter(({ source }) => late || source === 'layback')
                .map(told)
                .sort(),
        ]),
    );
}

function told({ source, ...diagnostic }: Diagnostic): string {
    return JSON.stringify(diagnostic);
}

const seeds = [1, 2, 3, 4];
/** Of each seed; thousands when somebody asks for them. */
const sequences = Number(process.env.SEQUENCES ?? 100);

test.each(seeds)(
    'whatever is typed, opened, closed and moved, at the end the findings are those of a first look (%i)',
    // Once in thousands of sequences, on a busy machine, the server goes on with a file that is gone: a race between its
    // close and its removal that is known and not yet found. What is wrong whatever the machine does fails twice.
    { timeout: 60_000 + sequences * 1_200, retry: 1 },
    async (seed) => {
        const editor = await editorOver(files);
        try {
            const hands = new Hands(editor, seed);
            for (let done = 0; done < sequences; done++) {
                // Long ones now and then: what is left over of one may come to light in the next.
                const length = 1 + hands.roll(hands.roll(10) === 0 ? 12 : 3);
                for (let each = 0; each < length; each++) await hands.act();
                await editor.settled();
                const cold = await coldCheck(hands, false);
                expect(toldBy(hands, Object.keys(cold), false), `after ${done + 1} sequences`).toEqual(cold);
            }
            await expect
                .poll(async () => (await editor.ask<Tally>(tallyOfAll.method, {})).unfinished, {
                    timeout: 20_000,
                })
                .toBe(false);
            const whole = await coldCheck(hands, true);
            expect(toldBy(hands, Object.keys(whole), true)).toEqual(whole);
            expect(Object.values(whole).flat().length).toBeGreaterThan(0);
        } finally {
            await editor.stop();
        }
    },
);
