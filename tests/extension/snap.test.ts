import { expect, test } from 'vitest';
import { nextFace, snap } from '../../extension/src/diagram/snap.ts';
import type { LureMove } from '../../language/src/editor/protocol.ts';

const faces = [
    { wave: 2, astern: 12 },
    { wave: 3, astern: 23 },
    { wave: 4, astern: 34 },
];
const waves: LureMove = { position: 'port short corner', astern: 12, counts: 'waves', faces };
const metres: LureMove = { ...waves, counts: 'distance' };

test('where waves are counted a lure is always on a face', () => {
    for (const [held, put] of [
        [1, 12],
        [17.4, 12],
        [17.6, 23],
        [90, 34],
    ] as const)
        expect(snap(waves, held)).toBe(put);
});

test('where metres are counted a face takes hold only near by, and not of a hand that wants to be free', () => {
    expect(snap(metres, 22.2)).toBe(23);
    expect(snap(metres, 21.5)).toBe(21.5);
    expect(snap(metres, 22.2, true)).toBe(22.2);
    expect(snap(metres, -5)).toBe(0.5);
    expect(snap({ ...metres, faces: [] }, 17)).toBe(17);
});

test('a key goes to the next face, and stays at the last one', () => {
    expect(nextFace(waves, 12, 1)).toBe(23);
    expect(nextFace(waves, 12, -1)).toBe(12);
    expect(nextFace(waves, 34, 1)).toBe(34);
    expect(nextFace(metres, 22.9, 1)).toBe(34);
    expect(nextFace(metres, 29, -1)).toBe(23);
});
