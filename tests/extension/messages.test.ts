import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromPage, keptFrom, offers, toPage } from '../../extension/src/diagram/messages.ts';
import { fromKept } from '../../extension/view/kept.ts';

const shown = { uri: 'file:///plans/a.spread', plan: 'first', view: 'above', pinned: false } as const;
const summary = {
    title: 'First',
    facts: [['Boat', 'Heron']],
    columns: ['Position'],
    rows: [{ position: 'port short corner', cells: ['Port short corner'] }],
    findings: [],
    unknown: [],
    remarks: [],
    caution: 'Keep a lookout.',
} as const;
const moves = [
    {
        position: 'port short corner',
        astern: 11.9,
        counts: 'waves',
        faces: [{ wave: 2, astern: 11.9 }],
    },
] as const;
const picture = { kind: 'picture', shown, svg: '<svg/>', summary, places: ['hull'], moves } as const;
const trial = {
    kind: 'trial',
    position: 'port short corner',
    text: 'back wave 3',
    astern: 22.8,
    wave: 3,
    svg: '<svg/>',
    summary,
    moves,
    findings: { here: ['It fouls.'], gone: [] },
    turning: true,
} as const;

describe('what the page says to the panel', () => {
    test('is taken where it is well formed, and nothing beside it', () => {
        expect(fromPage({ kind: 'ready', more: 1 })).toEqual({ kind: 'ready' });
        expect(fromPage({ kind: 'reveal', id: 'lure:shotgun', uri: 'file:///etc' })).toEqual({
            kind: 'reveal',
            id: 'lure:shotgun',
        });
        const room = { kind: 'room', width: 465, height: 408.5 };
        expect(fromPage({ ...room, scale: 2 })).toEqual(room);
        expect(fromPage({ kind: 'view', view: 'side' })).toEqual({ kind: 'view', view: 'side' });
        const move = { kind: 'move', position: 'port short corner', astern: 22.8 };
        expect(fromPage({ ...move, uri: 'file:///etc' })).toEqual(move);
    });

    test('a command is only taken by the words of a button, never by its name', () => {
        expect(fromPage({ kind: 'offer', offer: 'New Plan…' })).toEqual({
            kind: 'offer',
            offer: 'New Plan…',
        });
        for (const offer of [
            ...Object.values(offers),
            'workbench.action.quit',
            'toString',
            '__proto__',
            '',
        ]) {
            expect(fromPage({ kind: 'offer', offer })).toBeUndefined();
        }
    });

    test.each([
        null,
        undefined,
        0,
        'ready',
        [],
        {},
        { kind: 'reveal' },
        { kind: 'reveal', id: '' },
        { kind: 'reveal', id: 7 },
        { kind: 'reveal', id: 'x'.repeat(5000) },
        { kind: 'view', view: 'below' },
        { kind: 'room', width: 465 },
        { kind: 'room', width: 0, height: 100 },
        { kind: 'room', width: 465, height: Number.NaN },
        { kind: 'room', width: 465, height: 1e9 },
        { kind: 'picture' },
        { kind: 'try', position: 'port short corner' },
        { kind: 'try', position: '', astern: 12 },
        { kind: 'move', position: 'port short corner', astern: Number.NaN },
        { kind: 'move', position: 'port short corner', astern: -3 },
        { kind: 'move', position: 'port short corner', astern: '12' },
    ])('%j is not taken', (message) => {
        expect(fromPage(message)).toBeUndefined();
    });
});

describe('what the panel says to the page', () => {
    test('a picture arrives as it was sent', () => {
        expect(toPage(picture)).toEqual(picture);
        expect(toPage({ ...picture, outdated: 'A brace is missing.' })).toEqual({
            ...picture,
            outdated: 'A brace is missing.',
        });
    });

    test('so does a lure that is tried elsewhere', () => {
        expect(toPage(trial)).toEqual(trial);
        expect(toPage({ ...trial, turns: 'Turns cleanly down to 48 m.', turning: false })).toEqual({
            ...trial,
            turns: 'Turns cleanly down to 48 m.',
            turning: false,
        });
    });

    test('offers that the page does not know are left out', () => {
        const words = { kind: 'words', state: 'empty', words: 'Nothing.', offers: ['Dance', 'New Plan…'] };
        expect(toPage(words)).toEqual({ ...words, offers: ['New Plan…'] });
    });

    test.each([
        ['no plan', { ...picture, shown: { ...shown, plan: '' } }],
        ['no drawing', { ...picture, svg: 1 }],
        ['a row without cells', { ...picture, summary: { ...summary, rows: [{ position: 'x' }] } }],
        ['places that are no names', { ...picture, places: [1] }],
        ['a face that is nowhere', { ...picture, moves: [{ ...moves[0], faces: [{ wave: 2 }] }] }],
        ['a lure that is nowhere', { ...trial, astern: 'back' }],
        ['findings that are no texts', { ...trial, findings: { here: [{}], gone: [] } }],
        ['an unknown state', { kind: 'words', state: 'odd', words: '', offers: [] }],
        ['a mark of nothing', { kind: 'mark' }],
    ])('%s: the message is not taken', (_, message) => {
        expect(toPage(message)).toBeUndefined();
    });
});

describe('what outlives a reload', () => {
    test('comes back whole', () => {
        const sight = { scale: 0.4, middle: { x: 1050, y: 1485 } };
        const kept = { shown, picture, sight, asTable: false };
        expect(fromKept(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
        expect(keptFrom(kept)).toEqual({ shown });
    });

    test('of what an older version left, only what still makes sense', () => {
        const odd = {
            shown: { uri: 'x' },
            picture: { kind: 'mark', ids: [] },
            sight: { scale: 0 },
            asTable: 1,
        };
        expect(fromKept(odd)).toEqual({ asTable: false });
    });

    test('whatever is found there, nothing throws', () => {
        fc.assert(
            fc.property(fc.anything(), (state) => {
                fromKept(state);
                keptFrom(state);
                fromPage(state);
                toPage(state);
            }),
        );
    });
});
