import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const fished = (leader: string, line = 'line clear-24', rest = '') =>
    today(
        '    port short corner { outfit own  lure mine  back wave 2 }',
        `outfit own "Own" {\n    ${line}\n    ${rest}\n}
lure mine "Mine" pusher { leader nylon { ${leader} } }`,
    );

describe('weak-link', () => {
    test('the line itself is held to the drag, and a knot to what an emptier spool makes of it', async () => {
        const outfit = (line: string) =>
            `outfit own "Own" { reel { capacity 700 m  spool { full 60 mm  arbor 30 mm } }  line nylon { class 24 kg  diameter 0.8 mm  ${line} }  drag { set 3 kg  full 14 kg } }`;
        const fished = (line: string) =>
            today('    port short corner { outfit own  lure broad  back wave 2 }', outfit(line));
        expect(await messagesOf(fished('breaks 12 kg'), 'weak-link')).toEqual([
            'The line of Own holds 12 kg, and full drag is 14 kg. It parts before the reel gives. Spool up with stronger line, or keep full drag under 12 kg.',
        ]);
        const [message] = await messagesOf(fished('breaks 23 kg  knot 70 %'), 'weak-link');
        expect(message).toMatch(
            /^The knot of the line of Own holds 16\.1 kg, and full drag is \d\d(\.\d)? kg with (three quarters|half|a quarter) of the line left\. .* Tie it anew, or ease off as the spool empties\.$/,
        );
        expect(await messagesOf(fished('breaks 23 kg'), 'weak-link')).toEqual([]);
    });

    test('what grows on an emptying spool is said in the unit of the drag', async () => {
        const [message] = await messagesOf(
            today(
                '    port short corner { outfit own  lure broad  back wave 2 }',
                'outfit own "Own" { reel { capacity 700 m  spool { full 60 mm  arbor 30 mm } }  line nylon { class 50 lb  diameter 0.8 mm  breaks 50 lb  knot 80 % }  drag { set 6 lb  full 34 lb } }',
            ),
            'weak-link',
        );
        expect(message).toMatch(/^The knot of the line of Own holds 40 lb, and full drag is \d+ lb with /);
    });

    test('the bait that stands by is rigged as well as any', async () => {
        const text = today(
            '    centre standby { outfit medium-1  lure broad  leader tired }',
            'leader tired "Tired" { material nylon  breaks 90 kg  length 4 m  crimp 20 % }',
        );
        expect(await messagesOf(text, 'weak-link')).toHaveLength(1);
    });

    test('a leader of the same material that is thinner than the line is a hint, where nobody says its strength', async () => {
        const nylon = 'line nylon { diameter 0.88 mm  class 37 kg  breaks 34 kg }';
        const text = fished('diameter 0.7 mm', nylon);
        expect(await messagesOf(text, 'weak-link')).toEqual([
            'The leader of Mine is 0.7 mm nylon, and the line of Own is 0.88 mm of the same. It parts first, and the fish swims off with hook and leader. Rig a thicker one, or write down what it breaks at.',
        ]);
        expect(await messagesOf(fished('diameter 0.7 mm  breaks 40 kg', nylon), 'weak-link')).toEqual([]);
        expect(await messagesOf(fished('diameter 0.88 mm', nylon), 'weak-link')).toEqual([]);
        const braid = nylon.replace('line nylon', 'line braid');
        expect(await messagesOf(fished('diameter 0.7 mm', braid), 'weak-link')).toEqual([]);
    });

    test('a leader that parts before the line', async () => {
        expect(await messagesOf(fished('breaks 20 kg'), 'weak-link')).toEqual([
            'The leader of Mine holds 20 kg, and the line of Own breaks at 22.8 kg. It parts first, and the fish swims off with hook and leader. Rig one that holds more than 22.8 kg.',
        ]);
        expect(await messagesOf(fished('breaks 23 kg'), 'weak-link')).toEqual([]);
    });

    test('a line that nobody broke on a scale holds what its class lets it', async () => {
        const bare = 'line nylon { class 24 kg }';
        expect((await messagesOf(fished('breaks 23 kg', bare), 'weak-link'))[0]).toContain(
            'is of the 24 kg class',
        );
        expect(await messagesOf(fished('breaks 25 kg', bare), 'weak-link')).toEqual([]);
    });

    // Common practice, no source: a crimp that looks good can fail at 40 % of the leader. Of 50 kg that is 20 kg.
    test.each([
        ['breaks 50 kg  crimp 40 %', 'The crimp of the leader of Mine holds 20 kg'],
        ['breaks 113 kg  swivel 18 kg', 'The swivel of the leader of Mine holds 18 kg'],
    ])('a joint beyond the line: %s', async (leader, message) => {
        expect((await messagesOf(fished(leader), 'weak-link'))[0]).toContain(message);
    });

    test('a swivel of the outfit, by its name', async () => {
        const text = fished('breaks 113 kg', 'line clear-24', 'swivel "old" 15 kg');
        expect((await messagesOf(text, 'weak-link'))[0]).toContain(
            'The swivel (old) of the line of Own holds 15 kg',
        );
    });

    test('a knot may be weaker than its line, but not weaker than full drag', async () => {
        const knot = (share: string) =>
            fished(
                'breaks 113 kg',
                `line clear-24 { knot "to the double" ${share} }`,
                'drag { hooked 6 kg  full 14 kg }',
            );
        expect(await messagesOf(knot('92 %'), 'weak-link')).toEqual([]);
        // 55 % of 22.8 kg is 12.5 kg.
        expect(await messagesOf(knot('55 %'), 'weak-link')).toEqual([
            'The knot (to the double) of the line of Own holds 12.5 kg, and full drag is 14 kg. It parts before the reel gives. Tie it anew, or keep full drag under 12.5 kg.',
        ]);
    });

    test('names the weakest, and only that', async () => {
        const both = fished('breaks 20 kg  crimp 50 %');
        expect(await messagesOf(both, 'weak-link')).toHaveLength(1);
        expect((await messagesOf(both, 'weak-link'))[0]).toMatch(
            /^The crimp of the leader of Mine holds 10 kg/,
        );
    });

    test('stands under the words that say the strength, or under the lure that brings it', async () => {
        await expectMarked(
            today(`
    port short corner { outfit medium-1  lure broad  back wave 2  leader { breaks 12 kg } }
    //                                                                            ^^^^^ weak-link: holds 12 kg`),
            'weak-link',
        );
        await expectMarked(today('    port short corner { lure broad  back wave 2 }'), 'weak-link');
    });
});
