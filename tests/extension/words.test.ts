import { describe, expect, test, vi } from 'vitest';

// The words are plain functions beside code for the editor, which is not there in these tests.
vi.mock('vscode', () => ({
    SnippetString: class {
        value = '';
        #next = 1;
        appendText(text: string) {
            this.value += text;
            return this;
        }
        appendPlaceholder(text: string) {
            this.value += `<${this.#next++}:${text}>`;
            return this;
        }
        appendTabstop(number = this.#next++) {
            this.value += `$${number}`;
            return this;
        }
    },
}));

const { statusWords } = await import('../../extension/src/status.ts');
const { tallyWords } = await import('../../extension/src/commands/check-workspace.ts');
const { nameFrom, planSnippet } = await import('../../extension/src/commands/new-plan.ts');
const { onDisk } = await import('../../extension/src/tasks.ts');
const { elementsAt } = await import('../../extension/src/diagram/places.ts');

describe('the status bar', () => {
    const none = { phase: 'second', errors: 0, warnings: 0, hints: 0 } as const;

    test('says what was found in the file, in figures and in words', () => {
        expect(statusWords('running', none)).toEqual({
            text: '$(check) Layback',
            tooltip: 'Nothing was found in this file.',
        });
        expect(statusWords('running', { ...none, errors: 1, warnings: 2 })).toEqual({
            text: 'Layback $(error) 1 $(warning) 2',
            tooltip: 'In this file: 1 error, 2 warnings. Click to see them.',
        });
    });

    test('does not say that nothing was found before anybody looked', () => {
        expect(statusWords('running', undefined).tooltip).toBe('The plan is being checked.');
        expect(statusWords('starting', none).tooltip).toBe('The plan is being checked.');
    });

    test('does not say that nothing was found before the turns were looked at', () => {
        expect(statusWords('running', { ...none, phase: 'first' })).toEqual({
            text: '$(ellipsis) Layback',
            tooltip: 'Nothing was found so far. The turns are still to come.',
        });
        expect(statusWords('running', { ...none, phase: 'first', warnings: 1 }).text).toBe(
            'Layback $(warning) 1',
        );
    });

    test('says that nobody looks where the server is gone, and starts it again', () => {
        expect(statusWords('stopped', none)).toMatchObject({ restart: true });
        expect(statusWords('stopped', none).tooltip).toMatch(/nothing is checked/);
    });
});

describe('the tally of a workspace', () => {
    const tally = { files: 12, filesWithFindings: 3, errors: 2, warnings: 1, hints: 0, unfinished: false };

    test.each([
        [tally, '2 errors and 1 warning in 3 of 12 files.'],
        [{ ...tally, hints: 4 }, '2 errors, 1 warning and 4 hints in 3 of 12 files.'],
        [{ ...tally, errors: 0, warnings: 0, filesWithFindings: 0 }, 'Nothing was found in 12 files.'],
        [
            { ...tally, files: 1, filesWithFindings: 1, warnings: 0, unfinished: true },
            '2 errors in 1 of 1 file. Some findings are still being sought.',
        ],
    ])('%o: %s', (found, words) => {
        expect(tallyWords(found)).toBe(words);
    });
});

describe('a new plan', () => {
    test.each([
        ['Settled day, two on deck', 'settled-day-two-on-deck'],
        ['  Wahoo at 12 kn! ', 'wahoo-at-12-kn'],
        ['Été à Çap', 'ete-a-cap'],
        ['2026 opener', 'opener'],
        ['12', ''],
        ['—', ''],
    ])('titled %j is called %j', (title, name) => {
        expect(nameFrom(title)).toBe(name);
    });

    test('begins with what the team has, and asks for the rest', () => {
        expect(planSnippet('Say "go"', ['../boat.spread']).value.split('\n').slice(0, 8)).toEqual([
            'use "../boat.spread"',
            'use "layback:species"',
            '',
            '/** <1:Who it is for, and when.> */',
            'spread say-go "Say ’go’" {',
            '    boat $2',
            '    target $3',
            '    speed <4:8> kn',
        ]);
    });
});

describe('the caret in the picture', () => {
    const uri = 'file:///a.spread';
    const place = (
        id: string,
        position: string | undefined,
        from: [number, number],
        to: [number, number],
    ) => ({
        id,
        uri,
        ...(position !== undefined && { position }),
        range: {
            start: { line: from[0], character: from[1] },
            end: { line: to[0], character: to[1] },
        },
    });
    const places = [
        place('hull', undefined, [1, 4], [1, 14]),
        place('note:port', 'port', [3, 4], [8, 5]),
        place('lure:port', 'port', [5, 13], [5, 20]),
        place('note:starboard', 'starboard', [9, 4], [9, 60]),
    ];

    test.each([
        ['inside a lure’s name', [5, 15], ['note:port', 'lure:port']],
        ['elsewhere in its block', [7, 0], ['note:port', 'lure:port']],
        ['at the very end of a block', [9, 60], ['note:starboard']],
        ['on the boat', [1, 4], ['hull']],
        ['between', [2, 0], []],
    ])('%s', (_, [line, character], ids) => {
        expect(elementsAt(places, uri, { line: line!, character: character! })).toEqual(ids);
    });

    test('a caret in another file marks nothing', () => {
        expect(elementsAt(places, 'file:///b.spread', { line: 5, character: 15 })).toEqual([]);
    });
});

test('a task is offered for folders that the command can read, which are those on a disk', () => {
    const folders = ['file', 'vscode-vfs', 'file'].map(
        (scheme, at) => ({ name: at, uri: { scheme } }) as never,
    );
    expect(onDisk(folders)).toEqual([folders[0], folders[2]]);
});
