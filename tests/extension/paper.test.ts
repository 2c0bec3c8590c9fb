import { describe, expect, test } from 'vitest';
import { paperFor } from '../../extension/src/diagram/paper.ts';

describe('the paper of a diagram', () => {
    test('has the shape of the panel, and is so large that its words can be read', () => {
        const { paper, foot } = paperFor({ width: 580, height: 725 }, 'above', 'up');
        expect(paper).toEqual({ width: 200, height: 250 });
        expect(foot).toBe(true);
    });

    test('leaves the title block to a panel that has room for it', () => {
        expect(paperFor({ width: 465, height: 408 }, 'above', 'up').foot).toBe(false);
        expect(paperFor({ width: 900, height: 250 }, 'above', 'right').foot).toBe(false);
        expect(paperFor({ width: 900, height: 250 }, 'side', 'up').foot).toBe(false);
    });

    test('never gets so small that labels lose their words, and keeps the shape', () => {
        for (const [room, view, bow] of [
            [{ width: 200, height: 600 }, 'above', 'up'],
            [{ width: 300, height: 100 }, 'above', 'right'],
            [{ width: 1, height: 1 }, 'above', 'up'],
        ] as const) {
            const { paper } = paperFor(room, view, bow);
            expect(paper!.width).toBeGreaterThanOrEqual(150);
            expect(paper!.height).toBeGreaterThanOrEqual(60);
            expect(paper!.width / paper!.height).toBeCloseTo(room.width / room.height, 1);
        }
    });

    test('is as high as the drawing needs, from the side', () => {
        const { paper } = paperFor({ width: 300, height: 600 }, 'side', 'up');
        expect(paper).toEqual({ width: 200, height: 0 });
    });

    test('is the usual sheet before the room is known', () => {
        expect(paperFor(undefined, 'above', 'up')).toEqual({});
    });
});
