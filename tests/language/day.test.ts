import { describe, expect, test } from 'vitest';
import { briefOfDay } from '../../language/src/drawing/card/brief.ts';
import { cardContents } from '../../language/src/drawing/card/contents.ts';
import { changeOver, type Step } from '../../language/src/plan/day/change-over.ts';
import { messageOf } from '../../language/src/plan/finding.ts';
import { boats, plan, tackle } from '../editor/team.ts';
import { checkText } from './marked.ts';

const team = [boats, tackle, plan].join('\n').replaceAll(/^use "\.\..*$/gm, '');
const rest = `
spread mirrored like morning {
    swap port short corner with starboard short corner
}
spread quick like morning { speed 8.5 kn }
spread other-lure like morning { starboard short rigger { lure sliver } }
spread no-order like morning { order set starboard short rigger, port long rigger, port short corner }
`;
const day = (entries: string) => `day saturday "Saturday" {\n${entries}\n}\n`;
const checked = async (entries: string) => checkText(`${team}${rest}${day(entries)}`);
const said = async (entries: string) =>
    (await checked(entries)).findings
        .filter(
            ({ rule }) =>
                rule === 'value' || rule === 'duplicate' || rule === 'unknown-name' || rule === 'quantity',
        )
        .map(messageOf);

const spread = async (name: string) => {
    const { plans } = await checkText(team + rest);
    return plans.find(({ plan: { name: own } }) => own === name)!;
};
const shown = (step: Step) =>
    step.kind === 'all' ? step.difference.path.join(' ') : `${step.kind} ${step.line.line.position.name}`;
const way = async (from: string, to: string) => changeOver(await spread(from), await spread(to));

describe('a day', () => {
    test('has its hours by the clock, from the first that is written', async () => {
        const { resolved } = await checked(
            'from 20:00 fish breeze\nfrom 02:00 fish quick\nfrom 22:30 fish morning',
        );
        expect(
            resolved.days[0]?.hours.map(({ from, plan: { value } }) => [from.value / 3600, value.name]),
        ).toEqual([
            [20, 'breeze'],
            [22.5, 'morning'],
            [26, 'quick'],
        ]);
    });

    test('can be like another one, and say some of it otherwise', async () => {
        const { resolved } = await checkText(
            `${team}${rest}${day('from 06:00 fish morning\nfrom 12:00 fish quick\nwhen sea over 1 m fish breeze')}
day sunday like saturday {\nfrom 12:00 fish mirrored\nno when\n}\n`,
        );
        const [, sunday] = resolved.days;
        expect(sunday?.hours.map(({ plan: { value } }) => value.name)).toEqual(['morning', 'mirrored']);
        expect(sunday?.conditions).toEqual([]);
    });

    test('that is sound has nothing found in it', async () => {
        const entries = `date 2026-03-02
from 06:00 fish morning
from 12:00 fish mirrored
when sea over 0.8 m fish breeze
when wind over 20 kn fish breeze
when light dusk fish quick
until 16:00`;
        expect(await said(entries)).toEqual([]);
    });

    test.each([
        [
            'a line that another one above it always goes before',
            'when sea over 0.5 m fish breeze\nwhen sea over 0.8 m fish breeze',
            'is never fished at sea over 0.8 m: `breeze` is already fished at sea over 0.5 m.',
        ],
        [
            'the same the other way round',
            'when wind under 12 kn fish morning\nwhen wind under 8 kn fish quick',
            '`quick` is never fished at wind under 8 kn',
        ],
        [
            'a spread that is for another sea',
            'when sea over 1.5 m fish breeze',
            '`breeze` is for a sea of 0.9 m, and is fished here when it is over 1.5 m.',
        ],
        ['a light that nobody knows', 'when light dusky fish quick', 'There is no light called `dusky`.'],
        ['an end before the last hour', 'from 12:00 fish quick\nuntil 11:00', ''],
        ['one hour twice', 'from 06:00 fish morning\nfrom 06:00 fish quick', '`from 06:00` is said twice'],
        ['a spread that is not there', 'from 06:00 fish mornin', 'Did you mean `morning`?'],
        ['a sea in knots', 'when sea over 9 kn fish breeze', 'kn'],
        ['no such time', 'from 26:00 fish morning', 'There is no time 26:00'],
    ])('is told of %s', async (_, entries, part) => {
        const found = await said(entries);
        // From 12:00 on 11:00 is tomorrow's, which is a long day and no contradiction.
        if (part === '') expect(found).toEqual([]);
        else expect(found).toContainEqual(expect.stringContaining(part));
    });

    test('that ends before its last spread is told so', async () => {
        expect(await said('from 06:00 fish morning\nfrom 12:00 fish quick\nuntil 11:00')).toEqual([
            'The day ends at 11:00, and a spread goes out at 12:00. One of the two is not what was meant. Mend one of the two times.',
        ]);
    });

    test('keeps to its event’s hours and to one boat', async () => {
        const event = `rules open { lines in 07:30  lines out 16:00 }\nspread entered like morning { event open }\n`;
        const other = `boat gull "Gull" like petrel { }\nspread on-gull like morning { boat gull }\n`;
        const { findings } = await checkText(
            `${team}${event}${other}${day('from 07:00 fish entered\nfrom 09:00 fish on-gull\nuntil 16:30')}`,
        );
        const told = findings.filter(({ rule }) => rule === 'value').map(({ what }) => what);
        expect(told).toEqual([
            'Lines go in at 07:00, and open opens at 07:30.',
            '`on-gull` is for Gull, and the day began on Petrel.',
            'The day ends at 16:30, and open has lines out at 16:00.',
        ]);
    });
});

describe('the way from one spread to another', () => {
    test('is nothing where both are the same', async () => {
        expect((await way('morning', 'morning')).steps).toEqual([]);
    });

    test('takes in what has no place, and moves no other line', async () => {
        const { steps } = await way('morning', 'breeze');
        expect(steps.map(shown)).toEqual([
            'speed',
            'in port long rigger',
            'adjust starboard short rigger',
            'adjust port short corner',
        ]);
    });

    test('takes in before it sets, what is moved and what is rigged anew', async () => {
        expect((await way('morning', 'mirrored')).steps.map(shown)).toEqual([
            'in port short corner',
            'set starboard short corner',
        ]);
        expect((await way('morning', 'other-lure')).steps.map(shown)).toEqual([
            'in starboard short rigger',
            'set starboard short rigger',
        ]);
    });

    test('moves lures on waves when the speed moves the waves', async () => {
        const { steps } = await way('morning', 'quick');
        const adjusted = steps.flatMap((step) => (step.kind === 'adjust' ? [step] : []));
        // `back 45 m` stays where it is.
        expect(adjusted.map(({ line }) => line.line.position.name)).toEqual([
            'starboard short rigger',
            'port short corner',
        ]);
        for (const { line, was } of adjusted) {
            if (!line.astern.known || !was.astern.known) throw new Error('Both places are known.');
            // Kelvin: the length of a wave goes with the square of the speed; (8.5 / 8)² = 1.129.
            expect(line.astern.value).toBeGreaterThan(was.astern.value);
        }
    });

    test('goes by the team’s own order where it states one', async () => {
        const back = await way('breeze', 'no-order');
        expect(back.steps.filter(({ kind }) => kind !== 'all').map(shown)).toEqual([
            'adjust starboard short rigger',
            'set port long rigger',
            'adjust port short corner',
        ]);
    });

    test.each([
        ['morning', 'breeze'],
        ['morning', 'mirrored'],
        ['breeze', 'mirrored'],
        ['other-lure', 'quick'],
    ])('from %s to %s ends with exactly what the second has out', async (from, to) => {
        for (const [one, other] of [
            [from, to],
            [to, from],
        ] as const) {
            const { before, after, steps } = await way(one, other);
            const out = new Set(before.lines.map(({ line }) => line.position.name));
            for (const step of steps) {
                if (step.kind === 'all') continue;
                const { name } = step.line.line.position;
                if (step.kind === 'in')
                    expect(out.delete(name), `${name} is out before it comes in`).toBe(true);
                else if (step.kind === 'set') expect(out.has(name), `${name} is free`).toBe(false);
                else expect(out.has(name), `${name} is out to be handled`).toBe(true);
                if (step.kind === 'set') out.add(name);
            }
            expect([...out].sort()).toEqual(after.lines.map(({ line }) => line.position.name).sort());
        }
    });
});

describe('the words of a day', () => {
    const entries = 'from 06:00 fish morning\nfrom 12:00 fish mirrored\nwhen sea over 0.8 m fish breeze';

    test('say every change-over once, with what is done to each line', async () => {
        const { resolved } = await checked(entries);
        const words = briefOfDay(resolved.days[0]!);
        expect(words).toContain('THE DAY: SATURDAY');
        expect(words.match(/^(AT|SEA) .*$/gm)).toEqual([
            'AT 12:00: QUIET MORNING TO MIRRORED',
            'SEA OVER 0.8 M: QUIET MORNING TO FRESH BREEZE',
            'SEA OVER 0.8 M: MIRRORED TO FRESH BREEZE',
        ]);
        expect(words).toContain('Port short corner: take in Broom; it goes to starboard short corner.');
        expect(words).toContain('Starboard short corner: set Broom, from port short corner; on Red');
        expect(words).toContain('1. Speed: 7 kn (it was 8 kn).');
        expect(words).toMatch(/back wave 5 \(it was wave 4\), [\d.]+ m \([\d.]+ ft\) (nearer|farther out)/);
        expect(words).toContain('no loop of it round a hand');
    });

    test('stand on the card of each spread, from that spread on', async () => {
        const { resolved, plans } = await checked(entries);
        const titles = (name: string) =>
            cardContents(plans.find(({ plan: own }) => own.name === name)!, [], resolved.days).days.map(
                ({ title }) => title,
            );
        expect(titles('morning')).toEqual([
            'The day: Saturday',
            'At 12:00: over to mirrored',
            'Sea over 0.8 m: over to Fresh breeze',
        ]);
        expect(titles('breeze')).toEqual(['The day: Saturday']);
        expect(titles('quick')).toEqual([]);
    });
});
