import { describe, expect, test } from 'vitest';
import { checkText, messagesOf, today } from '../../language/marked.ts';

/*
 * The brake holds with the same moment, so drag goes with full radius over radius; line lies in rings, so the square of
 * the radius goes evenly from that of the arbor to that of the full spool. Of a spool of 60 mm on an arbor of 30 mm the
 * drag is 1.109 times what was set with three quarters of the line left, 1.265 times with half, 1.512 times with a
 * quarter. Each test is named after the rule that it is about.
 */
const grown = (left: number) => 60 / Math.sqrt(30 ** 2 + left * (60 ** 2 - 30 ** 2));

const outfit = (line: string, more = '', drag = 'full 14 kg') =>
    today(
        '    port short corner { outfit own  lure broad  back wave 2 }',
        `outfit own "Own" {
    reel { capacity 700 m  spool { full 60 mm  arbor 30 mm } }
    line nylon { ${line} }
    drag { set 3 kg  ${drag} }
    ${more}
}`,
    );
const found = (line: string, more?: string, drag?: string) =>
    messagesOf(outfit(line, more, drag), 'weak-link');

describe('weak-link', () => {
    test.each([
        [0.75, '15 kg', 'three quarters'],
        [0.5, '17 kg', 'half'],
        [0.25, '20 kg', 'a quarter'],
    ])(
        'weak-link: with %f of the line left a knot of %s no longer holds the drag',
        async (left, holds, words) => {
            const force = (14 * grown(left)).toFixed(1);
            const [knot] = await found(
                `breaks 60 kg  knot ${(100 * Number.parseFloat(holds)) / 60} %`,
                'run 100 m',
            );
            expect(knot).toBe(
                `The knot of the line of Own holds ${holds}, and full drag is ${force} kg with ${words} of the line left. It parts before the reel gives. Tie it anew, or ease off as the spool empties.`,
            );
        },
    );

    test('weak-link: a thinner leader of the same stuff is a hint, with both places', async () => {
        const text = outfit('breaks 60 kg  diameter 0.9 mm').replace(
            'back wave 2',
            'back wave 2  leader nylon { diameter 0.8 mm }  no hooks',
        );
        const bare = text
            .replace('lure broad', 'lure thin')
            .replace('\nspread', '\nlure thin "Thin" pusher { }\nspread');
        const { findings } = await checkText(bare);
        const found = findings.find(({ rule }) => rule === 'weak-link');
        expect(found).toMatchObject({
            severity: 'hint',
            what: 'The leader of Thin is 0.8 mm nylon, and the line of Own is 0.9 mm of the same.',
            remedy: 'Rig a thicker one, or write down what it breaks at.',
            positions: ['port short corner'],
        });
        expect(found?.related.map(({ what }) => what)).toContain('The diameter of the line is said here.');
    });

    test('weak-link: a swivel or a crimp on the line is weak beside the line itself, whatever the drag', async () => {
        expect((await found('breaks 60 kg', 'swivel 50 kg'))[0]).toMatch(
            /^The swivel of the line of Own holds 50 kg, and the line of Own breaks at 60 kg\./,
        );
        expect((await found('breaks 60 kg  crimp 80 %'))[0]).toMatch(
            /^The crimp of the line of Own holds 48 kg, and the line of Own breaks at 60 kg\./,
        );
        expect(await found('breaks 60 kg  knot 80 %')).toEqual([]);
    });

    test('weak-link: a full spool comes first, and is told as the drag was written', async () => {
        expect((await found('breaks 60 kg  knot 20 %', '', 'full 31 lb'))[0]).toMatch(
            /holds 26 lb, and full drag is 31 lb\. .* Tie it anew, or keep full drag under 26 lb\.$/,
        );
    });

    test('weak-link: nobody fights a fish on the last quarter, unless the run that is reckoned with leads there', async () => {
        const knot = `breaks 60 kg  knot ${(100 * 23) / 60} %`;
        expect(await found(knot, 'run 100 m')).toEqual([]);
        // Of 700 m a run of 630 m leaves a tenth, less what was out when it began.
        const { plans } = await checkText(outfit(knot, 'run 630 m'));
        const { reel } = plans[0]!.lines[0]!;
        const out = reel?.known ? reel.value.out : Number.NaN;
        expect(out).toBeGreaterThan(5);
        const force = (14 * grown((700 - 630 - out) / 700)).toFixed(1);
        expect((await found(knot, 'run 630 m'))[0]).toContain(
            `holds 23 kg, and full drag is ${force} kg after the run. `,
        );
        expect(await found(knot, 'run 800 m')).toEqual([]);
    });

    test('weak-link: how near an emptying spool takes the line itself is said elsewhere', async () => {
        expect(await found('breaks 15 kg', 'run 600 m')).toEqual([]);
        expect((await found('breaks 13 kg'))[0]).toMatch(
            /^The line of Own holds 13 kg, and full drag is 14 kg\./,
        );
        // Of a class that full drag exceeds `drag-over-class` tells, and of that cause nothing else.
        expect(await found('class 12 kg  breaks 13 kg')).toEqual([]);
        expect(await messagesOf(outfit('class 12 kg  breaks 13 kg'), 'drag-over-class')).toHaveLength(1);
    });
});
