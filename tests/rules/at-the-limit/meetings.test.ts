import { describe, expect, test } from 'vitest';
import { checkText, crossedRods, messagesOf, relatedOf, today } from '../../language/marked.ts';

/*
 * Lines that meet: astern, in a turn, and on the way there. What is exactly at its limit keeps it, what is a hair beyond does not; and the
 * sentences that only a rare plan brings about. Each test is named after the rule that it is about.
 */

describe('stagger', () => {
    const pair = (port: string, starboard: string, more = '') =>
        today(`    ${more}
    port short corner { lure broad  ${port} }
    starboard long corner { lure dart  ${starboard} }`);

    test('stagger: two that run into each other touch without any sway', async () => {
        const text = today(
            `    port short corner { lure broad  from here  back 20 m }
    starboard short rigger { lure dart  from there  back 20 m }`,
            'boat narrow "Narrow" like fulmar {\n    point here { ahead 0.2 m  out 0.05 m  up 1.1 m }\n    point there { ahead 0.2 m  out 0.05 m  up 1.1 m }\n}',
        ).replace('boat fulmar\n', 'boat narrow\n');
        const [message] = await messagesOf(text, 'stagger');
        expect(message).toMatch(/ touch without any sway, and this plan allows for 4 deg\. /);
    });

    test('stagger: the place of the nearer line is shown by its distance', async () => {
        const text = pair('back 23 m', 'back 23 m');
        const { findings } = await checkText(text);
        const [finding] = findings.filter(({ rule }) => rule === 'stagger');
        expect(finding?.positions.toSorted()).toEqual(['port short corner', 'starboard long corner']);
        expect(finding?.related).toHaveLength(1);
    });
});

describe('set-order', () => {
    test('set-order: of lines that no order keeps apart the others are shown, and the stated order is not blamed as well', async () => {
        for (const order of ['', 'order set port inner, port outer', 'order set port outer, port inner']) {
            expect(await messagesOf(crossedRods('left', order), 'set-order')).toHaveLength(1);
            expect(await relatedOf(crossedRods('left', order), 'set-order')).toEqual([
                'Port outer is set here.',
            ]);
        }
    });

    const four = `
    port short corner { outfit medium-1  lure broad  back wave 2 }
    starboard long corner { outfit medium-2  lure dart  back wave 3 }
    port long rigger { outfit medium-4  lure wisp  back wave 5 }`;

    test('set-order: a reason of nothing but blanks is none', async () => {
        const order = (because: string) =>
            messagesOf(
                today(`${four}\n    order set port short corner, port long rigger because "${because}"`),
                'set-order',
            );
        expect(await order('  ')).toHaveLength(1);
        expect(await order('the rod sticks')).toEqual([]);
    });

    test('set-order: a line that goes out free of another may still be hauled across it to its clip', async () => {
        // The inner line is paid out two metres beside the outer one, and its clip is two metres beyond.
        const hauled = (order: string) =>
            today(
                `
    port inner { outfit medium-1  lure broad  back 40 m  from far }
    port outer { outfit medium-2  lure dart  back 20 m  from straight }
    order ${order}`,
                `boat wide like fulmar {
    position inner "Inner" { ahead 3 m  out 0.5 m  up 1 m }
    position outer "Outer" { ahead 0.5 m  out 2.5 m  up 1 m }
    holder port inner { ahead 3 m  out 0.5 m  up 1 m }
    holder port outer { ahead 0.5 m  out 2.5 m  up 1 m }
    point far { ahead 3 m  out 4.6 m  up 2.2 m }
    point straight { ahead 0 m  out 2.5 m  up 2.2 m }
}`,
            ).replace('boat fulmar\n    speed', 'boat wide\n    speed');
        expect(await messagesOf(hauled('set port inner, port outer'), 'set-order')).toEqual([]);
        expect((await messagesOf(hauled('set port outer, port inner'), 'set-order'))[0]).toMatch(
            /^Port inner goes out after port outer, and crosses it on its way to the clip\. /,
        );
        expect((await messagesOf(hauled('clear port inner, port outer'), 'set-order'))[0]).toMatch(
            /^Port inner comes in before port outer, and crosses it on its way from the clip\. /,
        );
    });

    test('set-order: a line that the stated order does not name is not missed', async () => {
        expect(await messagesOf(today(`${four}\n    order set port short corner`), 'set-order')).toEqual([]);
    });
});

describe('teaser-foul', () => {
    const beside = (teaser: string, corner: string, first = 'corner') => {
        const lines = [
            `    port long corner { outfit medium-1  lure broad  ${corner} }`,
            `    starboard squid chain { teaser chain  ${teaser}  from bridge }`,
        ];
        const ordered = first === 'corner' ? lines : lines.toReversed();
        return today(ordered.join('\n'), 'teaser chain "Chain" { sway 25 deg }');
    };

    test('teaser-foul: the teaser is blamed, whichever of the two stands first in the plan', async () => {
        for (const first of ['corner', 'teaser']) {
            const [finding] = (await checkText(beside('back 7 m', 'back 23 m', first))).findings.filter(
                ({ rule }) => rule === 'teaser-foul',
            );
            expect(finding?.what).toMatch(
                /^Starboard squid chain and port long corner touch at [\d.]+ deg of sway, and this plan allows for 25 deg\.$/,
            );
            expect(finding?.positions).toEqual(['starboard squid chain', 'port long corner']);
            expect(finding?.related.map(({ what }) => what)).toEqual(['Port long corner runs here.']);
        }
    });

    test('teaser-foul: what would clear them is said in the unit of the teaser’s own distance', async () => {
        expect((await messagesOf(beside('back 23 ft', 'back 23 m'), 'teaser-foul'))[0]).toMatch(/ ft more /);
        expect((await messagesOf(beside('back 7 m', 'back 23 m'), 'teaser-foul'))[0]).toMatch(/ m more /);
    });

    test('teaser-foul: two lures that touch are no business of a teaser’s', async () => {
        const text = today(`
    port long corner { outfit medium-1  lure broad  back 23 m }
    starboard short corner { outfit medium-2  lure dart  back 23 m }`);
        expect(await messagesOf(text, 'stagger')).toHaveLength(1);
        expect(await messagesOf(text, 'teaser-foul')).toEqual([]);
    });
});

describe('turn-foul', () => {
    const turning = (radius: string, lines: string) => today(`    turn within ${radius}${lines}`);
    const corners = `
    port short corner { outfit medium-1  lure broad  back 12 m }
    starboard long corner { outfit medium-2  lure dart  back 23 m }`;

    test('turn-foul: two teasers that touch in a turn take nobody’s fish', async () => {
        const text = turning(
            '16 m',
            `
    port squid chain { back 5 m  from bridge }
    starboard squid chain { back 14 m  from bridge }`,
        );
        expect(await messagesOf(text, 'turn-foul')).toEqual([]);
    });

    test('turn-foul: a lure that a teaser fouls is named with it, whichever of the two stands first', async () => {
        const lines = [
            '    starboard squid chain { back 9 m  from bridge }',
            '    port long corner { outfit medium-1  lure broad  back 23 m }',
        ];
        for (const ordered of [lines, lines.toReversed()])
            expect(await messagesOf(turning('16 m', `\n${ordered.join('\n')}`), 'turn-foul')).toHaveLength(1);
    });

    test('turn-foul: what touches on a straight course takes nothing from what touches only in the turn', async () => {
        const level = `
    port long rigger { outfit medium-3  lure gulp  back 45 m }
    port short rigger { outfit medium-4  lure wisp  back 45 m }`;
        expect(await messagesOf(turning('40 m', level + corners), 'stagger')).toHaveLength(1);
        for (const lines of [corners + level, level + corners]) {
            const messages = await messagesOf(turning('40 m', lines), 'turn-foul');
            expect(messages).toHaveLength(1);
            expect(messages[0]).toMatch(/^Port short corner and starboard long corner touch at/);
        }
    });

    test('turn-foul: lines that a turn lays across each other touch without any sway', async () => {
        const [message] = await messagesOf(turning('9 m', corners), 'turn-foul');
        expect(message).toMatch(
            /^Port short corner and starboard long corner touch without any sway in a turn of 9 m/,
        );
    });

    test('turn-foul: a fix is offered for the plan’s own sway only, and each line is shown by its distance', async () => {
        const strict = turning('40 m\n    rule turn-foul { sway 2 deg }', corners);
        const own = turning('40 m', corners);
        const [finding] = (await checkText(own)).findings.filter(({ rule }) => rule === 'turn-foul');
        expect(finding?.fixes).toHaveLength(1);
        expect(finding?.related.map(({ at }) => own.slice(at.start, at.end))).toEqual([
            'back 12 m',
            'back 23 m',
        ]);
        const asked = (await checkText(strict)).findings.filter(({ rule }) => rule === 'turn-foul');
        for (const { fixes } of asked) expect(fixes).toEqual([]);
    });

    test('turn-foul: where the team asks for more, what lacks it on a straight course has that as its cause', async () => {
        const near = corners.replace('back 12 m', 'back 20 m');
        expect(
            await messagesOf(turning('90 m\n    rule turn-foul { sway 20 deg }', near), 'turn-foul'),
        ).toEqual([]);
        const tight = turning('40 m\n    rule turn-foul { sway 4 deg }', corners);
        expect(await messagesOf(tight, 'turn-foul')).toHaveLength(1);
    });
});

test('turn-stall: a line is told on the side to which it slows the most, its mirror on the other', async () => {
    const slows = async (side: string) => {
        const text = today(
            `    turn within 80 m\n    ${side} long rigger { outfit medium-4  lure slow  back 45 m }`,
            'lure slow "Slow" plunger { runs 7 kn to 9 kn }',
        );
        return (await messagesOf(text, 'turn-stall'))[0]!;
    };
    const [port, starboard] = [await slows('port'), await slows('starboard')];
    expect(port).toMatch(/^Port long rigger slows to [\d.]+ kn in a turn of 80 m to port, /);
    expect(starboard).toMatch(/^Starboard long rigger slows to [\d.]+ kn in a turn of 80 m to starboard, /);
    const speed = /slows to ([\d.]+) kn/;
    expect(speed.exec(starboard)![1]).toBe(speed.exec(port)![1]);
});

test('set-order: two lines that one clip holds have that as their fault, and no order parts them', async () => {
    const text = today(`
    port short corner { outfit medium-1  lure broad  back 20 m  from flat clip }
    port long corner { outfit medium-2  lure dart  back 20 m  from flat clip }`);
    const { plans } = await checkText(text);
    const order = plans[0]!.order;
    expect(order.known && order.value.cycles.length).toBeGreaterThan(0);
    expect(await messagesOf(text, 'used-twice')).toHaveLength(1);
    expect(await messagesOf(text, 'set-order')).toEqual([]);
});
