import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const five = `
    port short corner { lure broad  back wave 2 }
    starboard long corner { lure dart  back wave 3 }
    starboard short rigger { lure gulp  back wave 4 }
    port long rigger { lure wisp  back wave 5 }
    shotgun { lure pin  back wave 6 }
    port squid chain { back 12 m  from bridge }
    centre standby { outfit medium-1  bait live "scad" }`;

describe('crew', () => {
    test('two hands clear four lines; teasers and gear standing by are not lines to clear', async () => {
        await expectMarked(
            today(`
    crew 2
    //   ^ crew: 5 lines for 2 hands besides the helm, who can clear 4
${five}`),
            'crew',
        );
        expect(await messagesOf(today(`    crew 3${five}`), 'crew')).toEqual([]);
    });

    test('says how many lines to leave out', async () => {
        const [message] = await messagesOf(today(`    crew 1${five}`), 'crew');
        expect(message).toMatch(/Leave out 3 lines, or take another hand\.$/);
    });

    test('a team may trust its hands with more, or with less', async () => {
        expect(await messagesOf(today(`    crew 2\n    rule crew { lines 2.5 }${five}`), 'crew')).toEqual([]);
        expect(await messagesOf(today(`    crew 4\n    rule crew { lines 1 }${five}`), 'crew')).toHaveLength(
            1,
        );
    });

    test('one who is out alone is the one hand', async () => {
        const two = five.split('\n').slice(0, 3).join('\n');
        expect(await messagesOf(today(`    crew 0${two}`), 'crew')).toEqual([]);
        expect((await messagesOf(today(`    crew 0${five}`), 'crew'))[0]).toMatch(
            /^5 lines for one who is out alone, who can clear 2\..*Leave out 3 lines/,
        );
    });

    test('whoever fights every fish cannot take the leader too, unless nobody else can', async () => {
        const bo = (crew: number, angler = 'Bo') => `
    crew ${crew}
    port short corner { lure broad  back wave 2  angler "Bo" }
    shotgun { lure pin  back wave 6  angler "${angler}" }
    roles {
        leader "bo"
        gaff "Kit"
    }`;
        await expectMarked(
            today(
                bo(2).replace(
                    'leader "bo"',
                    `leader "bo"
        //     ^^^^ crew: Bo is the angler at port short corner and shotgun and takes the leader.`,
                ),
            ),
            'crew',
        );
        expect(await messagesOf(today(bo(1)), 'crew')).toEqual([]);
        expect(await messagesOf(today(bo(2, 'Tove')), 'crew')).toEqual([]);
    });

    test('a hint says it whole, of the lines that are fished, and of the helm only what the helm may not do', async () => {
        const text = today(`
    crew 2
    port short corner { lure broad  back wave 2  angler "Bo" }
    port squid chain { back 12 m  from bridge }
    centre standby { bait live "scad"  angler "Kit" }
    roles { gaff "Bo" }`);
        const found = async (written: string) =>
            (await checkText(written)).findings.filter(({ rule }) => rule === 'crew');
        const [finding, ...more] = await found(text);
        expect(more).toEqual([]);
        expect(finding).toMatchObject({
            severity: 'hint',
            what: 'Bo is the angler at port short corner and takes the gaff.',
            why: 'Whoever holds the rod has no hand free when the fish is beside the boat.',
            remedy: 'Give the gaff to somebody else: there are 2 hands.',
            positions: ['port short corner'],
        });
        expect(finding?.related.map(({ at, what }) => [text.slice(at.start, at.end), what])).toEqual([
            ['"Bo"', 'The angler at port short corner is said here.'],
        ]);
        const steers = await found(text.replace('gaff "Bo"', 'helm "Bo"'));
        expect(steers.map(({ what }) => what)).toEqual([
            'Bo has the helm and is the angler at port short corner.',
        ]);
    });

    test('has nobody to speak of on a day without lines', async () => {
        const none = today('    crew 2\n    roles { leader "Bo"  gaff "Kit" }');
        expect(await messagesOf(none, 'crew')).toEqual([]);
    });

    test('is silent until the plan says who is on deck', async () => {
        await expectMarked(today(five), 'crew');
    });

    test('whoever has the helm cannot fight a fish, nor take a leader', async () => {
        await expectMarked(
            today(`
    port short corner { lure broad  back wave 2  angler "Ines" }
    roles {
        helm "Ines"
        //   ^^^^^^ crew: Ines has the helm and is the angler at port short corner and takes the leader.
        leader "Ines"
        gaff "Kit"
    }`),
            'crew',
        );
    });

    test('the gaff is a job too, a place on deck is none, and the finding is about the lines of that angler', async () => {
        const text = today(`
    port short corner { lure broad  back wave 2  angler "Ines" }
    shotgun { lure pin  back wave 6  angler "Kit" }
    centre standby { bait live "scad"  angler "Ines" }
    roles { gaff "Ines"  helm "Ines" }`);
        const { findings } = await checkText(text);
        const [finding] = findings.filter(({ rule }) => rule === 'crew');
        expect(finding?.what).toBe(
            'Ines has the helm and is the angler at port short corner and takes the gaff.',
        );
        expect(finding?.positions).toEqual(['port short corner']);
        expect(finding?.related.map(({ what }) => what)).toEqual([
            'Ines is the angler at port short corner.',
            'Ines takes the gaff.',
        ]);
    });

    test('somebody out alone knows it, and any other may have two jobs', async () => {
        const alone = today(
            '    crew 0\n    port short corner { lure broad  back wave 2  angler "Ines" }\n    roles { helm "Ines" }',
        );
        const found = await messagesOf(alone, 'crew');
        expect(found.filter((message) => message.includes('helm and'))).toEqual([]);
        await expectMarked(
            today(`
    port short corner { lure broad  back wave 2  angler "Kit" }
    roles { helm "Ines"  leader "Kit" }`),
            'crew',
        );
    });
});
