import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(rod: string): string {
    return today(
        '    event harbour-cup\n    port short corner { outfit own  lure broad  back wave 2 }',
        `outfit own "Own" {\n    rod { ${rod} }\n}`,
    );
}

// GFAA after IGFA: tip at least 101.6 cm from the reel's centre, butt at most 68.58 cm.
describe('rod-length', () => {
    test.each(['tip 40 in', 'tip 101.6 cm', 'butt 27 in', 'butt 68.58 cm'])(
        '%s is just right',
        async (rod) => {
            expect(await messagesOf(fished(rod), 'rod-length')).toEqual([]);
        },
    );

    test('a tip is too short, in its author’s inches and the rule’s centimetres', async () => {
        expect((await messagesOf(fished('tip 39.5 in'), 'rod-length'))[0]).toMatch(
            /^The tip of Own's rod is 39\.5 in \(100\.\d cm\), and IGFA saltwater wants 101\.6 cm at least\./,
        );
    });

    test('a butt is too long', async () => {
        expect((await messagesOf(fished('butt 70 cm'), 'rod-length'))[0]).toContain(
            'is 70 cm, and IGFA saltwater wants 68.58 cm at most',
        );
    });

    test('outside an event any rod fishes', async () => {
        await expectMarked(fished('tip 60 cm').replace('    event harbour-cup\n', ''), 'rod-length');
    });
});
