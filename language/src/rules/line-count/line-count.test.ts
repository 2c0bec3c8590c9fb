import { describe, expect, test } from 'vitest';
import { messagesOf, today } from '../../../../tests/language/marked.ts';

const lines = (count: number) =>
    [
        'port short corner',
        'starboard long corner',
        'port short rigger',
        'starboard long rigger',
        'port long rigger',
        'shotgun',
    ]
        .slice(0, count)
        .map((position) => `    ${position} { back wave 3 }`)
        .join('\n');

describe('line-count', () => {
    test('the event says how many lines fish', async () => {
        expect(await messagesOf(today(`    event harbour-cup\n${lines(5)}`), 'line-count')).toEqual([]);
        expect(await messagesOf(today(`    event harbour-cup\n${lines(6)}`), 'line-count')).toEqual([
            'This plan fishes 6 lines, and Harbour cup allows 5. A fish on any of them does not count. Leave out 1 line.',
        ]);
    });

    test('teasers and gear standing by do not fish', async () => {
        const more = '\n    port squid chain { back 12 m }\n    centre standby { outfit medium-1 }';
        expect(await messagesOf(today(`    event harbour-cup\n${lines(5)}${more}`), 'line-count')).toEqual(
            [],
        );
    });
});
