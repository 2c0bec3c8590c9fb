import { describe, expect, test } from 'vitest';
import { checkText, messagesOf, today } from '../../language/marked.ts';

/*
 * How a lure runs: its speed, its angle, the slack that it is given. What is exactly at its limit keeps it, what is a hair beyond does not; and the
 * sentences that only a rare plan brings about. Each test is named after the rule that it is about.
 */

test('entry-angle: pulled too flat a head does not breathe, and the remedy is the other way round', async () => {
    const text = today(`    rule entry-angle { flattest 30 deg  steepest 60 deg }
    port short corner { lure broad  back wave 3 }`);
    expect((await messagesOf(text, 'entry-angle'))[0]).toMatch(
        /works at 30 deg to 60 deg\. Pulled too flat a head does not come up to breathe, and works little\. Raise its clip, or bring it in\.$/,
    );
});

test('entry-angle, lift: a diver goes down and not up, and a lure of no known head is not judged', async () => {
    for (const rule of ['entry-angle { steepest 1 deg }', 'lift { most 0.5 }']) {
        const towed = (lure: string) =>
            today(
                `    rule ${rule}\n    starboard short rigger { lure ${lure}  outfit medium-1  back 12 m }`,
                'lure deep "Deep" diver { head 30 mm  weight 150 g  pull 2 kg at 8 kn }\nlure blank "Blank" { pull 2 kg at 8 kn }',
            );
        const [name] = rule.split(' ');
        expect(await messagesOf(towed('broad'), name!)).toHaveLength(1);
        expect(await messagesOf(towed('deep'), name!)).toEqual([]);
    }
});

test('method-mismatch: slack that is nothing is no slack, and only a circle hook minds a strike', async () => {
    const text = (method: string, rest: string) =>
        today(
            `    method ${method}\n    port short corner { lure broad  back wave 2  ${rest} }`,
            'method hard "Hard" { style direct }\nmethod soft "Soft" { style drop-back }',
        );
    expect(await messagesOf(text('hard', 'wait 0 s  loop 0 m'), 'method-mismatch')).toEqual([]);
    expect(await messagesOf(text('hard', 'wait 4 s'), 'method-mismatch')).toHaveLength(1);
    const bait = (hooks: string) => text('hard', `hooks ${hooks}`).replace('lure broad', 'bait live "scad"');
    expect(await messagesOf(bait('single { }'), 'method-mismatch')).toEqual([]);
    expect(await messagesOf(bait('circle { }'), 'method-mismatch')).toHaveLength(1);
});

describe('speed-range', () => {
    const lure = 'lure own "Own" pusher { runs 6 kn to 8 kn }\nmethod calm "Calm" { speed 4 kn to 7 kn }';
    const towed = (day: string) => today(`    ${day}\n    port short corner { lure own  back wave 2 }`, lure);

    test('speed-range: the ends of the range belong to it, of the speed and of what the helm may run', async () => {
        const at = (speed: string) => towed('').replace('speed 8 kn\n', `${speed}\n`);
        expect(await messagesOf(at('speed 8 kn'), 'speed-range')).toEqual([]);
        expect(await messagesOf(at('speed 6 kn'), 'speed-range')).toEqual([]);
        expect(await messagesOf(at('speed 7 kn\n    speeds 6 kn to 8 kn'), 'speed-range')).toEqual([]);
        expect((await messagesOf(at('speed 7 kn\n    speeds 6 kn to 9 kn'), 'speed-range'))[0]).toContain(
            'the helm may run up to 9 kn',
        );
        expect((await messagesOf(at('speed 7 kn\n    speeds 5 kn to 8 kn'), 'speed-range'))[0]).toContain(
            'the helm may slow to 5 kn',
        );
    });

    test('speed-range: the fix says the speeds that are left, and the finding names its line', async () => {
        const text = towed('speeds 7 kn to 9 kn');
        const [finding] = (await checkText(text)).findings.filter(({ rule }) => rule === 'speed-range');
        expect(finding?.positions).toEqual(['port short corner']);
        expect(finding?.fixes.map(({ title }) => title)).toEqual(['Keep her at 7 kn to 8 kn']);
    });

    test('speed-range: a method has its speeds too, for the whole plan or for one line', async () => {
        const said = (day: string, line: string) =>
            messagesOf(
                today(`    ${day}\n    port short corner { lure own  back wave 2  ${line} }`, lure),
                'speed-range',
            );
        const whole =
            /^Calm is meant for 4 kn to 7 kn, and this plan tows at 8 kn\. The slack and the wait of a strike method belong to its speed\. .*, or choose another method\.$/;
        expect((await said('method calm', ''))[0]).toMatch(whole);
        expect((await said('', 'method calm'))[0]).toMatch(whole);
        expect(await said('method calm', 'method calm')).toHaveLength(1);
    });
});
