import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const far = '    port long rigger { outfit medium-4  lure slow  back 45 m }';
const lure = (runs: string) => `lure slow "Slow" plunger { ${runs} }`;
const turning = (radius: string, runs: string, lines = far) =>
    today(`    turn within ${radius}\n${lines}`, lure(runs));
const severityOf = async (text: string) =>
    (await checkText(text)).findings.find(({ rule }) => rule === 'turn-stall')?.severity;

describe('turn-stall', () => {
    // Towed 49 m behind its tow point, a lure cannot follow a long turn of less radius than that: lag = asin(L / R).
    test('a line that falls slack, when, and to which side', async () => {
        const [message] = await messagesOf(turning('30 m', 'runs 1 kn to 9 kn'), 'turn-stall');
        expect(message).toMatch(
            /^Port long rigger falls slack \d+ seconds into a turn of 30 m to port\. A slack line sinks, .* Turn wider: nothing fouls or falls slack from \d+ m to port and \d+ m to starboard; every lure works from \d+ m to port and \d+ m to starboard\.$/,
        );
        expect(await severityOf(turning('30 m', 'runs 1 kn to 9 kn'))).toBe('warning');
    });

    test('a lure that slows below its least speed is a hint', async () => {
        const text = turning('80 m', 'runs 7 kn to 9 kn');
        expect(await severityOf(text)).toBe('hint');
        expect((await messagesOf(text, 'turn-stall'))[0]).toMatch(
            /^Port long rigger slows to [\d.]+ kn in a turn of 80 m to port, and Slow runs from 7 kn\./,
        );
    });

    test('a lure that all but stands is graver than one that slows', async () => {
        const nearly = turning('46 m', 'runs 6 kn to 9 kn');
        expect((await messagesOf(nearly, 'turn-stall'))[0]).toMatch(/slows to [0-2]\.\d kn/);
        expect(await severityOf(nearly)).toBe('warning');
        const team = nearly.replace('turn within', 'rule turn-stall { dead 5 % }\n    turn within');
        expect(await severityOf(team)).toBe('hint');
    });

    test('several lines of one turn are said once, each beside it, and a waiver of one leaves the other', async () => {
        const two = turning(
            '30 m',
            'runs 1 kn to 9 kn',
            `${far}\n    starboard long rigger { lure slow  back 45 m }`,
        );
        const found = async (text: string) =>
            (await checkText(text)).findings.filter(({ rule }) => rule === 'turn-stall');
        const [finding, ...more] = await found(two);
        expect(more).toEqual([]);
        expect(finding?.what).toBe(
            'Port long rigger and starboard long rigger fall slack in a turn of 30 m.',
        );
        expect(finding?.related.map(({ what }) => what)).toEqual([
            expect.stringMatching(/^Port long rigger falls slack \d+ seconds into a turn to port\.$/),
            expect.stringMatching(
                /^Starboard long rigger falls slack \d+ seconds into a turn to starboard\.$/,
            ),
        ]);
        const waived = two.replace(
            /\n}\n$/,
            '\n    waive turn-stall on port long rigger because "it comes in"\n}\n',
        );
        expect((await found(waived)).map(({ positions }) => positions)).toEqual([['starboard long rigger']]);
        const both = waived.replace(
            'on port long rigger',
            'between port long rigger and starboard long rigger',
        );
        const { findings } = await checkText(both);
        expect(findings.filter(({ rule }) => rule === 'turn-stall' || rule === 'waiver-idle')).toEqual([]);
    });

    test('is mended by a wider turn', async () => {
        for (const text of [turning('30 m', 'runs 1 kn to 9 kn'), turning('80 m', 'runs 7 kn to 9 kn')]) {
            expect(await messagesOf(await mended(text, 'turn-stall'), 'turn-stall')).toEqual([]);
        }
    });

    test('a lure that is too slow on a straight course has that as its cause', async () => {
        const text = turning('80 m', 'runs 9 kn to 12 kn');
        expect(await messagesOf(text, 'speed-range')).toHaveLength(1);
        expect(await messagesOf(text, 'turn-stall')).toEqual([]);
    });

    test('a wide turn, a lure without speeds, a teaser: nothing to say', async () => {
        expect(await messagesOf(turning('200 m', 'runs 6 kn to 9 kn'), 'turn-stall')).toEqual([]);
        expect(await messagesOf(turning('80 m', ''), 'turn-stall')).toEqual([]);
        await expectMarked(
            turning('16 m', '', '    port squid chain { back 40 m  from bridge }'),
            'turn-stall',
        );
    });
});
