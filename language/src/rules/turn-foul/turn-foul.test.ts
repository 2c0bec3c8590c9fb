import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const four = `
    port short corner { outfit medium-1  lure broad  back 12 m }
    starboard long corner { outfit medium-2  lure dart  back 23 m }
    starboard short rigger { outfit medium-3  lure gulp  back 34 m }
    port long rigger { outfit medium-4  lure wisp  back 45 m }`;
const turning = (radius: string, lines = four) => today(`    turn within ${radius}${lines}`);

describe('turn-foul', () => {
    test('names the two lines, the side, the sway that they bear, and from where on turns are clear', async () => {
        const text = turning('40 m');
        const [message] = await messagesOf(text, 'turn-foul');
        expect(message).toMatch(
            /^Port short corner and starboard long corner touch at [\d.]+ deg of sway in a turn of 40 m to port, and this plan allows for 4 deg\. .* Turn wider: nothing fouls or falls slack from \d+ m to port and \d+ m to starboard; every lure works from \d+ m to port and \d+ m to starboard\.$/,
        );
        const { plans } = await checkText(text);
        const turns = plans[0]!.turns;
        if (!turns?.known) throw new Error('No turns.');
        const { port, starboard } = turns.value;
        expect(message).toContain(
            `from ${Math.ceil(port.noFoul.radius!)} m to port and ${Math.ceil(starboard.noFoul.radius!)} m to starboard`,
        );
    });

    test('is mended by a wider turn, and where no lure has a least speed by nothing less', async () => {
        const any = ['broad', 'dart', 'gulp', 'wisp'].map(
            (name) => `lure any-${name} like ${name} { no runs }`,
        );
        const text = turning('130 ft', four.replaceAll('lure ', 'lure any-'));
        const after = await mended(text.replace('\nspread', `\n${any.join('\n')}\nspread`), 'turn-foul');
        expect(after).toMatch(/turn within \d+ ft/);
        expect(await messagesOf(after, 'turn-foul')).toEqual([]);
        const tighter = after.replace(/within (\d+) ft/, (_, feet) => `within ${Number(feet) - 12} ft`);
        expect(await messagesOf(tighter, 'turn-foul')).not.toEqual([]);
    });

    test('leads to a turn in which every lure works, not into the next fault', async () => {
        const after = await mended(turning('40 m'), 'turn-foul');
        const { findings } = await checkText(after);
        expect(findings.filter(({ rule }) => rule.startsWith('turn-'))).toEqual([]);
    });

    test('two pairs that touch in one turn are said once, unless one of them is waived', async () => {
        const pairs = turning('12 m');
        const found = async (text: string) =>
            (await checkText(text)).findings.filter(({ rule }) => rule === 'turn-foul');
        const [finding, ...more] = await found(pairs);
        expect(more).toEqual([]);
        expect(finding?.what).toBe(
            'These lines touch in a turn of 12 m: port short corner with starboard long corner and starboard short rigger with port long rigger.',
        );
        expect(finding?.related.map(({ what }) => what)).toEqual([
            expect.stringMatching(/^Port short corner and starboard long corner touch .* to port, and/),
            expect.stringMatching(/^Starboard short rigger and port long rigger touch .* to starboard, and/),
        ]);
        expect(finding?.positions).toHaveLength(4);
        const waived = pairs.replace(
            /\n}\n$/,
            '\n    waive turn-foul on port long rigger because "it comes in"\n}\n',
        );
        expect((await found(waived)).map(({ positions }) => positions)).toEqual([
            ['port short corner', 'starboard long corner'],
        ]);
    });

    test('lies under the turn that the plan allows, with both lines beside it', async () => {
        const { findings } = await expectMarked(
            today(`
    turn within 40 m
    //          ^^^^ turn-foul: Port short corner and starboard long corner touch
    port short corner { outfit medium-1  lure broad  back 12 m }
    starboard long corner { outfit medium-2  lure dart  back 23 m }`),
            'turn-foul',
        );
        const [finding] = findings.filter(({ rule }) => rule === 'turn-foul');
        expect(finding?.positions).toEqual(['port short corner', 'starboard long corner']);
        expect(finding?.related.map(({ what }) => what)).toEqual([
            'Port short corner runs here.',
            'Starboard long corner runs here.',
        ]);
    });

    test('what touches on a straight course has that as its cause', async () => {
        const level = turning(
            '60 m',
            `
    port long corner { outfit medium-1  lure broad  back 23 m }
    port short rigger { outfit medium-2  lure dart  back 23 m }`,
        );
        expect(await messagesOf(level, 'stagger')).toHaveLength(1);
        expect(await messagesOf(level, 'turn-foul')).toEqual([]);
    });

    test('a teaser fouls a lure in a turn as any line does', async () => {
        const teased = turning(
            '16 m',
            `
    port long corner { outfit medium-1  lure broad  back 23 m }
    starboard squid chain { back 9 m  from bridge }`,
        );
        const [message] = await messagesOf(teased, 'turn-foul');
        expect(message).toMatch(/^Port long corner and starboard squid chain touch/);
    });

    test('a team may ask for more sway in its turns', async () => {
        expect(await messagesOf(turning('55 m'), 'turn-foul')).toEqual([]);
        const asked = await messagesOf(turning('55 m\n    rule turn-foul { sway 6 deg }'), 'turn-foul');
        expect(asked[0]).toContain('and this plan allows for 6 deg');
    });

    test('says nothing of a plan that does not say how tightly it turns, nor before the turns are computed', async () => {
        await expectMarked(today(four), 'turn-foul', 'turn-stall');
    });
});
