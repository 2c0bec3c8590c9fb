import { describe, expect, test } from 'vitest';
import { messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(line: string): string {
    return today(
        '    event harbour-cup\n    port short corner { outfit own  lure broad  back wave 2 }',
        `outfit own "Own" {\n    line ${line}\n}`,
    );
}

describe('wire-line', () => {
    test.each(['wire { class 24 kg }', '{ material wire }'])('forbids a main line of %s', async (line) => {
        expect(await messagesOf(fished(line), 'wire-line')).toEqual([
            'The main line of Own is wire, and IGFA saltwater forbids it. A fish on it does not count. Spool up with another line.',
        ]);
    });

    test('knows no objection to nylon, nor to wire where the event allows it', async () => {
        expect(await messagesOf(fished('nylon { class 24 kg }'), 'wire-line')).toEqual([]);
        const allowed = fished('wire { }')
            .replace('event harbour-cup', 'event easy')
            .replace('\nspread', '\nrules easy { written saltwater  wire allowed }\nspread');
        expect(await messagesOf(allowed, 'wire-line')).toEqual([]);
    });
});
