import { describe, expect, test } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { checkText } from './marked.ts';

/** What is said of the text itself, with what it is said about. */
async function said(text: string): Promise<string[]> {
    const { findings } = await checkText(text);
    return findings
        .filter(({ rule }) => ['value', 'unknown-name', 'quantity'].includes(rule))
        .map((finding) => `${text.slice(finding.at.start, finding.at.end)}: ${messageOf(finding)}`);
}

const pole = 'foot { ahead 3 m  out 1.5 m  up 2 m }  rise 45 deg  sweep 70 deg';

describe('a boat that cannot be is told of in its own numbers', () => {
    test('wider than long', async () => {
        expect(await said('boat b "Bee" { length 10 m  beam 30 m }')).toEqual([
            expect.stringMatching(/^30 m: Bee has a beam of 30 m, and is 10 m long\..*slip/),
        ]);
    });

    test('a waterline longer than the boat', async () => {
        expect(await said('boat b "Bee" { length 30 ft  waterline 10 m }')).toEqual([
            expect.stringMatching(/^10 m: Bee has a waterline of 10 m, and is 30 ft long\./),
        ]);
    });

    test('halyards beyond the end of the pole, and out of their order', async () => {
        const text = `boat b { outriggers { length 6 m  halyards 6 m, 3 m, 9 m  ${pole} } }`;
        expect(await said(text)).toEqual([
            expect.stringMatching(
                /^3 m: Halyard 2, at 3 m, is no farther out than halyard 1, at 6 m\..*`halyards 3 m, 6 m, 9 m`/,
            ),
            expect.stringMatching(/^9 m: Halyard 3 is 9 m along a pole of 6 m\./),
        ]);
    });

    test('a boat that takes the fault from another is not told of it again, and one that brings it about is', async () => {
        const text = `boat a "Ay" { length 10 m  beam 3 m  outriggers { length 6 m  halyards 2 m, 5 m  ${pole} } }
boat b "Bee" like a { beam 12 m }
boat c "Cee" like b { waterline 8 m }
boat d "Dee" like a { outriggers { length 4 m } }`;
        expect(await said(text)).toEqual([
            expect.stringMatching(/^12 m: Bee has a beam of 12 m/),
            expect.stringMatching(/^4 m: Halyard 2 is 5 m along a pole of 4 m/),
        ]);
    });

    test('a sound boat is left alone, in either system of units', async () => {
        expect(
            await said(
                `boat b { length 33 ft  beam 11 ft  waterline 9 m  outriggers { length 20 ft  halyards 10 ft, 6 m  ${pole} } }`,
            ),
        ).toEqual([]);
    });
});

describe('stages of drag that do not follow one another are told of where they are said', () => {
    test('on an outfit', async () => {
        expect(await said('outfit o { drag { set 12 kg  hooked 6 kg  full 2 kg } }')).toEqual([
            expect.stringMatching(/^6 kg: Hooked drag is 6 kg, and set drag is 12 kg\./),
            expect.stringMatching(/^2 kg: Full drag is 2 kg, and hooked drag is 6 kg\./),
        ]);
    });

    test('a drag that goes down within one position is told of there, once', async () => {
        const text = `outfit o "Oh" { drag { set 4 kg  hooked 9 kg } }
spread s { shotgun { outfit o  drag { set 9 kg  hooked 6 kg } } }`;
        expect(await said(text)).toEqual([
            expect.stringMatching(/^6 kg: Hooked drag is 6 kg, and set drag is 9 kg\./),
        ]);
    });

    test('on a method, in shares of the class too', async () => {
        expect(await said('method m { set 30 %  hooked 20 % }')).toHaveLength(1);
    });

    test('where a position has the last word over an outfit', async () => {
        const text = `outfit o { drag { set 2 kg  hooked 6 kg  full 10 kg } }
spread s { port short corner { outfit o  drag { set 7 kg } } }`;
        const { findings } = await checkText(text);
        const found = findings.filter(({ rule }) => rule === 'value');
        expect(found.map(({ severity, at }) => [severity, text.slice(at.start, at.end)])).toEqual([
            ['warning', '7 kg'],
        ]);
    });

    test('equal stages are as good as rising ones', async () => {
        expect(await said('outfit o { drag { set 6 kg  hooked 6 kg  full 10 kg } }')).toEqual([]);
    });
});

describe('a line that is towed from what the boat does not have', () => {
    const boat = (parts: string) => `boat b "Bee" { beam 3 m  ${parts} }\n`;
    const two = `outriggers { length 6 m  halyards 3 m, 5.5 m  ${pole} }`;
    const from = (what: string, position = 'port short corner') =>
        `spread s { boat b  speed 8 kn  ${position} { back 20 m  from ${what} } }`;

    test('a halyard too many', async () => {
        expect(await said(boat(two) + from('halyard 7', 'port long rigger'))).toEqual([
            'from halyard 7: Bee has 2 halyards on her outriggers, and no halyard 7. So nobody can tell where the line of the port long rigger runs. Use halyard 1 or 2, or add it to the `halyards` of the boat.',
        ]);
        expect(await said(boat(two) + from('halyard 3'))).toHaveLength(1);
        expect(await said(boat(two) + from('halyard 2'))).toEqual([]);
    });

    test('a halyard of a boat without outriggers', async () => {
        expect(await said(boat('') + from('halyard 1'))).toEqual([
            expect.stringContaining('Bee has no outriggers, so there is no halyard 1.'),
        ]);
    });

    test('a flat clip of a boat without one', async () => {
        expect(await said(boat('') + from('flat clip'))).toEqual([
            expect.stringContaining('Bee has no flat clip.'),
        ]);
    });

    test('a point that is not there, with the nearest one that is', async () => {
        const text = boat('point bridge { ahead 3 m  out 1 m  up 4 m }') + from('brigde');
        const { findings } = await checkText(text);
        const [found] = findings.filter(({ rule }) => rule === 'unknown-name');
        expect(messageOf(found!)).toContain('Bee has no point called `brigde`.');
        expect(messageOf(found!)).toContain('Did you mean `bridge`?');
        expect(found!.fixes[0]!.edits[0]!.text).toBe('bridge');
        expect(await said(boat('') + from('bridge'))).toEqual([
            expect.stringContaining('Add `point bridge { ahead …  out …  up … }` to the boat.'),
        ]);
    });

    test('a preset on another boat is told of at that boat, and once', async () => {
        const text = `${boat(two)}boat c "Cee" { beam 3 m }
spread s { boat b  port long rigger { from halyard 2 } }
spread t like s { boat c }
spread u like t { speed 8 kn }`;
        expect(await said(text)).toEqual([expect.stringMatching(/^c: Cee has no outriggers/)]);
    });

    test('a boat whose text is torn is not told to lack anything', async () => {
        const found = await said(
            `boat b "Bee" { beam 3 m  outriggers { length 6 m  halyards 3 m, } } }\n${from('halyard 2')}`,
        );
        expect(found.filter((message) => message.includes('no halyard'))).toEqual([]);
    });

    test('with one halyard refused nobody knows the number of the next', async () => {
        const { findings, plans } = await checkText(
            `${boat(`outriggers { length 6 m  halyards 900 m, 5.5 m  ${pole} }`)}${from('halyard 1', 'port long rigger')}`,
        );
        expect(findings.map(({ rule }) => rule)).toContain('quantity');
        expect(findings.map(({ rule }) => rule)).not.toContain('unknown-name');
        expect(plans[0]!.lines[0]!.towPoint).toEqual({
            known: false,
            reason: '`halyards 900 m, 5.5 m` cannot be used.',
        });
    });
});
