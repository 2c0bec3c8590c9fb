import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../language/src/plan/measure.ts';
import type { WrittenRules } from '../../language/src/plan/model.ts';
import { checkText, messagesOf, today } from '../language/marked.ts';

const packText = readFileSync(
    new URL('../../language/src/library/written-rules.spread', import.meta.url),
    'utf8',
);

async function written(event: string, above = ''): Promise<WrittenRules & { readonly title: string }> {
    const [plan] = (await checkText(today(`    event ${event}`, above))).plans;
    return plan!.plan.event!.value.written[0]!;
}

const saltwater = () => written('open', 'rules open "Open" { written saltwater }');

const figure = (measure: Measure | undefined) =>
    measure && `${measure.quantity?.number} ${measure.quantity?.unit.symbol}`.trim();

/*
 * International Game Fish Association, International Angling Rules, updated 27 October 2021: line classes with the
 * pounds at which a test sample may break (truncated as published, so no conversion gives them) and the customary
 * pounds by which tackle is sold; double, leader and combined lengths in saltwater, Equipment Regulations.
 */
const CLASSES: readonly (readonly [kg: number, tests: string, customary: number])[] = [
    [1, '2.2', 2],
    [2, '4.4', 4],
    [3, '6.61', 6],
    [4, '8.81', 8],
    [6, '13.22', 12],
    [8, '17.63', 16],
    [10, '22.04', 20],
    [15, '33.06', 30],
    [24, '52.91', 50],
    [37, '81.57', 80],
    [60, '132.27', 130],
];
const LENGTHS = [
    { upTo: '10 kg', double: '4.57 m', leader: '4.57 m', combined: '6.1 m' },
    { upTo: undefined, double: '9.14 m', leader: '9.14 m', combined: '12.19 m' },
];

describe('the built-in saltwater pack', () => {
    test('names its edition', async () => {
        expect((await saltwater()).edition?.value).toBe('IGFA International Angling Rules, 27 October 2021');
    });

    test.each(CLASSES)('%i kg tests to %s lb and is sold as %i lb', async (kg, tests, customary) => {
        const row = (await saltwater()).classes.find(({ lineClass }) => lineClass.si === kg);
        expect(figure(row?.lineClass)).toBe(`${kg} kg`);
        expect(figure(row?.tests)).toBe(`${tests} lb`);
        expect(figure(row?.customary)).toBe(`${customary} lb`);
    });

    test('has these classes and no others', async () => {
        const classes = (await saltwater()).classes.map(({ lineClass }) => lineClass.si);
        expect(classes).toEqual(CLASSES.map(([kg]) => kg));
    });

    test('limits double, leader and both together up to 10 kg, and above', async () => {
        const { limits } = await saltwater();
        expect(
            limits.map(({ upTo, double, leader, combined }) => ({
                upTo: figure(upTo),
                double: figure(double),
                leader: figure(leader),
                combined: figure(combined),
            })),
        ).toEqual(LENGTHS);
    });

    // Hook, rod, gaff and line figures: the same rules as the Game Fishing Association of Australia prints them in
    // its equipment pages; 30.48 and 45.72 cm are 12 and 18 inches, 101.6 and 68.58 cm are 40 and 27.
    test.each([
        ['hooks in a skirted lure', 'lureHooks', '2'],
        ['between their eyes', 'lureHookSpacing', '30.48 cm'],
        ['hooks in a natural bait', 'baitHooks', '2'],
        ['between their eyes', 'baitHookSpacing', '45.72 cm'],
        ['hooks on a plug', 'plugHooks', '3'],
        ['of line that set the class', 'topLength', '5 m'],
        ['of rod above the reel', 'rodTip', '101.6 cm'],
        ['of butt below it', 'rodButt', '68.58 cm'],
        ['of gaff', 'gaff', '2.44 m'],
        ['of rope on a flying gaff', 'gaffRope', '9.14 m'],
    ] as const)('%s: %s %s', async (_, of, expected) => {
        expect(figure((await saltwater())[of])).toBe(expected);
    });

    test('forbids a main line of wire', async () => {
        expect((await saltwater()).wireLine?.value).toBe(false);
    });

    test('says in its own text where each figure was read, and that it is no ruling', () => {
        const [comment] = packText.split('*/');
        for (const source of ['27 October 2021', 'Game Fishing Association of Australia', 'truncated'])
            expect(comment).toContain(source);
        expect(comment).toContain("Check the current edition and the event's own rules");
    });
});

const longLeader = `outfit own "Own" { line nylon { class 24 kg } }
lure mine "Mine" pusher { leader nylon { length 9 m } }`;
const fishing = '    event cup\n    port short corner { outfit own  lure mine  back wave 2 }';

describe('when an edition changes', () => {
    test('a team copies the pack, changes a figure and the edition, and is judged by that', async () => {
        const copied = packText
            .slice(packText.indexOf('rules saltwater'))
            .replace('rules saltwater "IGFA saltwater"', 'rules own-book "Our copy"')
            .replace(/edition "[^"]*"/, 'edition "Next edition, our copy of 3 May"')
            .replace('leader 9.14 m', 'leader 8.50 m');
        const above = `${copied}\nrules cup "Cup" { written own-book }\n${longLeader}`;
        const pack = await written('cup', above);
        expect(pack.title).toBe('Our copy');
        expect(pack.classes).toHaveLength(CLASSES.length);
        const text = today(fishing, above);
        expect((await checkText(text)).findings.map(({ rule }) => rule)).toEqual(['leader-length']);
        const { findings } = await checkText(text);
        expect(findings[0]?.what).toBe('The leader of Mine is 9 m long, and Our copy allows 8.5 m.');
        expect(findings[0]?.related[0]?.what).toBe(
            'Our copy writes it here, after Next edition, our copy of 3 May.',
        );
    });

    test('or amends it: like the pack, but for one figure', async () => {
        const amended = `rules newer "Newer" like saltwater {
    edition "Next edition"
    limits { leader 8.50 m }
}
rules cup "Cup" { written newer }
${longLeader}`;
        const pack = await written('cup', amended);
        expect(pack.limits.map(({ double }) => figure(double))).toEqual(['4.57 m', '9.14 m']);
        expect(await messagesOf(today(fishing, amended), 'leader-length')).toHaveLength(1);
    });

    test('an event’s own word comes before the pack that it stands on', async () => {
        const own = `rules cup "Cup" { written saltwater  limits { leader 8 m } }\n${longLeader}`;
        expect((await messagesOf(today(fishing, own), 'leader-length'))[0]).toContain('and Cup allows 8 m');
        const silent = `rules cup "Cup" { written saltwater }\n${longLeader}`;
        expect(await messagesOf(today(fishing, silent), 'leader-length')).toEqual([]);
    });
});
