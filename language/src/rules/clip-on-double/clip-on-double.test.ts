import { describe, expect, test } from 'vitest';
import { checkText, messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(back: string, double: string, event = '    event harbour-cup\n'): string {
    return today(
        `${event}    port short corner { outfit own  lure own  back ${back} }`,
        `outfit own "Own" like medium-1 { double { length ${double} } }
lure own "Own lure" pusher { length 300 mm  leader nylon { length 4.3 m } }`,
    );
}

describe('clip-on-double', () => {
    test('is an error where double and leader reach to the clip, a warning where little is left', async () => {
        const severity = async (back: string, double: string) =>
            (await checkText(fished(back, double))).findings.find(({ rule }) => rule === 'clip-on-double')
                ?.severity;
        // 4 m of leader before the lure.
        expect(await severity('8 m', '6 m')).toBe('error');
        expect(await severity('20 m', '6 m')).toBeUndefined();
        const { findings } = await checkText(fished('12 m', '8 m'));
        const [found] = findings.filter(({ rule }) => rule === 'clip-on-double');
        expect(found === undefined || found.severity === 'warning').toBe(true);
    });

    test('says how long the line is, and how much of it double and leader take', async () => {
        const [message] = await messagesOf(fished('8 m', '6 m'), 'clip-on-double');
        expect(message).toMatch(
            /^From its clip to Own lure the line is 8(\.\d)? m long, and double and leader take 10 m of it\. .* Let it back until the clip has 0\.5 m of main line, or shorten the double\.$/,
        );
    });

    test('either of the two alone can reach to the clip', async () => {
        const both = fished('8 m', '12 m').replace('length 4.3 m', 'length 20 m');
        const found = (text: string) => messagesOf(text, 'clip-on-double');
        const double = both.replace('leader nylon { length 20 m }', '');
        expect((await found(double))[0]).toContain('double and leader take 12 m of it');
        const leader = both.replace('double { length 12 m }', 'no double');
        // The lure hangs on the last 30 cm of its leader.
        expect((await found(leader))[0]).toContain('double and leader take 19.7 m of it');
        const neither = double.replace('double { length 12 m }', 'no double');
        expect(
            await found(neither.replace('    event', '    rule clip-on-double { room 30 m }\n    event')),
        ).toEqual([]);
    });

    test('a line is judged before anybody has said what runs on it', async () => {
        const bare = fished('8 m', '12 m').replace('lure own ', '').replace('\nlure own', '\nlure unused');
        expect((await messagesOf(bare, 'clip-on-double'))[0]).toMatch(
            /^From its clip to its lure the line is 8/,
        );
    });

    test('says nothing of a line that no clip holds, or outside an event', async () => {
        expect(
            await messagesOf(
                fished('8 m', '6 m').replace('back 8 m', 'back 8 m  from rod tip'),
                'clip-on-double',
            ),
        ).toEqual([]);
        expect(await messagesOf(fished('8 m', '6 m', ''), 'clip-on-double')).toEqual([]);
    });
});
