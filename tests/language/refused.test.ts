import { describe, expect, test } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { checkText } from './marked.ts';

const plan = (speed: string, line: string) => `boat gannet {
    beam 3 m
    waterline 9 m
    outriggers {
        length 6 m
        foot { ahead 3 m  out 1.5 m  up 2 m }
        rise 45 deg
        sweep 70 deg
        halyards 3 m, 5.5 m
    }
}
lure broad pusher { length 300 mm  weight 200 g  pull 2 kg at 8 kn }
method easy { set 2 kg  clip 2.5 kg }
outfit fifty { drag { set 3 kg  hooked 6 kg } }
spread calm {
    boat gannet
    speed ${speed}
    method easy
    port long rigger { outfit fifty  lure broad  ${line} }
}
`;

async function analysed(speed: string, line: string) {
    const { findings, plans } = await checkText(plan(speed, line));
    const { waves, tightestHeld, lines } = plans[0]!;
    return { findings, waves, tightestHeld, line: lines[0]! };
}

describe('a number that is refused counts as absent, and whatever would come from it says so', () => {
    test('a speed that no boat trolls at gives no waves, no pull, no line out and no turn', async () => {
        const { findings, waves, tightestHeld, line } = await analysed('118 kn', 'back wave 3');
        const reason = '`speed 118 kn` cannot be used.';
        for (const figure of [waves, tightestHeld, line.pull, line.astern, line.rest, line.wave])
            expect(figure).toEqual({ known: false, reason });
        expect(findings.filter(({ severity }) => severity === 'error').map(messageOf)).toEqual([
            expect.stringContaining('Speed 118 kn is outside what makes sense'),
        ]);
    });

    test('a speed in metres is as absent as one that is too high', async () => {
        const { waves } = await analysed('8 m', 'back wave 3');
        expect(waves).toEqual({ known: false, reason: '`speed 8 m` cannot be used.' });
    });

    test.each(['back wave 401', 'back wave 0', 'back wave 99', 'back 4000 m', 'back 0 m'])(
        '%s leaves the lure nowhere',
        async (back) => {
            const { line } = await analysed('8 kn', back);
            expect(line.astern).toEqual({ known: false, reason: `\`${back}\` cannot be used.` });
            expect(line.reel?.known ?? false).toBe(false);
        },
    );

    test('waves have bounds of their own, in words', async () => {
        for (const count of [0, 21, 99, 401]) {
            const { findings } = await analysed('8 kn', `back wave ${count}`);
            expect(findings.map(messageOf)).toContain(
                `There is no wave ${count} to tell of: they count from 1 to 20 behind the boat. It counts as not written: nothing is computed from it. Count again, or say how far back in metres or feet.`,
            );
        }
        for (const count of [1, 20]) {
            const { findings } = await analysed('8 kn', `back wave ${count}`);
            expect(findings.filter(({ rule }) => rule === 'quantity')).toEqual([]);
        }
    });

    test('nothing usual stands in for a tow point, a clip or a drag that cannot be used', async () => {
        const { line } = await analysed('8 kn', 'back 40 m  from halyard 0  clip 9000 kg  drag { set 3 m }');
        expect(line.towPoint).toEqual({ known: false, reason: '`from halyard 0` cannot be used.' });
        expect(line.line.clip).toBeUndefined();
        expect(line.line.drag.set).toBeUndefined();
        expect(line.line.drag.hooked?.si).toBeCloseTo(6 * 9.80665);
    });

    test('waves are counted off: no lure is set on half of one', async () => {
        const { findings, line } = await analysed('8 kn', 'back wave 2.5');
        expect(findings.map(messageOf)).toContain(
            'Waves are counted, and `2.5` lies between two of them. A lure runs on the face of one, and in between on none. It counts as not written. Write a whole number, or how far back in metres or feet.',
        );
        expect(line.astern.known).toBe(false);
    });

    test('halyards are counted off', async () => {
        const { findings, line } = await analysed('8 kn', 'back 40 m  from halyard 1.5');
        expect(findings.map(messageOf)).toContain(
            'Halyards are counted, and `1.5` is none of them. It counts as not written: nothing is computed from it. Number 1 is the inner one.',
        );
        expect(line.towPoint.known).toBe(false);
    });
});

test('the weight of a fish has no word of its own, and bounds all the same', async () => {
    const { findings } = await checkText('log 2026-03-07 {\n    at 08:12 bite shotgun 99999 kg\n}\n');
    expect(findings.map(messageOf).join()).toContain('99999 kg is outside what makes sense');
});

describe('every number of a boat has a sense that it must keep', () => {
    test.each([
        ['outriggers { rise 95 deg }', 'Rise 95 deg is outside what makes sense (0 deg to 90 deg).'],
        ['outriggers { sweep 200 deg }', 'Sweep 200 deg is outside what makes sense (0 deg to 180 deg).'],
        ['flat clip { ahead 99999999 m  out 1 m  up 1 m }', 'Ahead 99999999 m is outside what makes sense'],
        ['speed 6 kn to 100 kn', 'Speed 100 kn is outside what makes sense'],
        ['crests 6 m, 9000 m at 8 kn', 'Crests 9000 m is outside what makes sense'],
    ])('%s', async (property, message) => {
        const { findings } = await checkText(`boat gannet { ${property} }`);
        expect(findings.map(messageOf).join('\n')).toContain(message);
    });

    test.each([
        ['heading 400 deg', 'Heading 400 deg is outside what makes sense (-180 deg to 360 deg).'],
        ['wind 12 kn from 500 deg', 'Wind 500 deg is outside what makes sense (-180 deg to 360 deg).'],
        ['sway 90 deg', 'Sway 90 deg is outside what makes sense (0 deg to 45 deg).'],
    ])('%s', async (property, message) => {
        const { findings } = await checkText(`spread calm { ${property} }`);
        expect(findings.map(messageOf).join('\n')).toContain(message);
    });
});

test('a flat clip a thousand leagues ahead is refused before anybody draws it', async () => {
    const { plans } = await checkText(`boat gannet { flat clip { ahead 99999999 m  out 1 m  up 1 m } }
spread calm { boat gannet  speed 8 kn  port short corner { back 12 m } }`);
    expect(plans[0]!.lines[0]!.towPoint).toEqual({
        known: false,
        reason: 'The flat clip needs `ahead`, `out` and `up`.',
    });
});

test('a version behind a definition is sent to the first line', async () => {
    const { findings } = await checkText('boat b { length 9 m }\nlayback 1\n');
    const said = findings.find(({ rule }) => rule === 'syntax');
    expect(said?.at.range.start.line).toBe(1);
    expect(messageOf(said!)).toMatch(/Move `layback` and its number to the first line/);
});
