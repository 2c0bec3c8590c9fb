import { describe, expect, test } from 'vitest';
import type { Spread, SpreadLine } from '../../language/src/plan/model.ts';
import { checkText } from './marked.ts';

const KILOGRAM = 9.80665;

const tackle = `
boat tern "Tern" {
    beam 3 m
    flat clip { ahead 0.2 m  out 1.2 m  up 1 m }
    outriggers {
        length 6 m
        foot { ahead 3 m  out 1.5 m  up 2 m }
        rise 45 deg
        sweep 90 deg
        halyards 3 m, 5 m
    }
    point bridge { ahead 3 m  out 1 m  up 4 m }
    position tower "Tower line" { ahead 4 m  out 0.5 m  up 6 m }
}
outfit fifty "Fifty" {
    line nylon { class 24 kg  breaks 22 kg }
    drag { set 2 kg  hooked 6 kg  full 10 kg }
}
outfit sixty like fifty { }
outfit eighty like fifty { line nylon { class 37 kg } }
lure ink "Ink" pusher {
    length 300 mm
    weight 250 g
    hooks single { gap 40 mm  length 80 mm }
}
lure big-ink like ink { length 350 mm }
teaser chain "Chain" { length 900 mm }
method soft { style drop-back  set 1.5 kg  hooked 25 %  loop 1 m }
`;

async function spreadNamed(name: string, text: string): Promise<Spread> {
    const sheet = await checkText(tackle + text);
    expect(sheet.findings.filter(({ severity, rule }) => severity === 'error' && rule !== 'event')).toEqual(
        [],
    );
    return sheet.resolved.spreads.find((spread) => spread.name === name)!;
}

function line(spread: Spread, position: string): SpreadLine {
    return spread.lines.find((each) => each.position.name === position)!;
}

const base = `
spread calm "Calm day" {
    boat tern
    speed 8 kn
    crew 3
    port short corner { outfit fifty  lure big-ink  back 14 m  clip 3 kg }
    starboard long rigger {
        outfit sixty
        lure ink
        back wave 5
    }
    waive stagger on port short corner because "it has always been so"
    note "first light"
}
`;

describe('like', () => {
    test('merges by position and by property, deep', async () => {
        const spread = await spreadNamed(
            'rough',
            `${base}spread rough like calm {
            speed 7 kn
            port short corner { back 12 m }
            starboard long rigger { lure ink { length 280 mm } }
        }`,
        );
        expect(spread.like).toEqual(['calm']);
        expect(spread.boat?.value.name).toBe('tern');
        const corner = line(spread, 'port short corner');
        expect(corner.lure?.value.title).toBe('big-ink');
        expect(corner.back).toMatchObject({ kind: 'distance', distance: { si: 12 } });
        const rigger = line(spread, 'starboard long rigger');
        expect(rigger.lure?.value).toMatchObject({
            title: 'Ink',
            length: { si: 0.28 },
            weight: { si: 0.25 },
        });
        expect(rigger.lure?.value.hooks?.gap?.si).toBeCloseTo(0.04, 12);
    });

    test('every value knows whether it was inherited', async () => {
        const spread = await spreadNamed('rough', `${base}spread rough like calm { speed 7 kn }`);
        expect(spread.speed?.origin).toMatchObject({ definition: 'rough', inherited: false });
        expect(spread.crew?.origin).toMatchObject({ definition: 'calm', inherited: true });
        expect(spread.waivers).toMatchObject([{ rule: { value: 'stagger' }, inherited: true }]);
        expect(spread.notes.map(({ value }) => value)).toEqual(['first light']);
    });

    test('works along a chain and for tackle too', async () => {
        const spread = await spreadNamed(
            'third',
            `${base}
            spread second like calm { crew 4 }
            spread third like second {
                port short corner { outfit eighty }
            }`,
        );
        expect(spread.like).toEqual(['second', 'calm']);
        expect(spread.crew?.si).toBe(4);
        const { outfit } = line(spread, 'port short corner');
        expect(outfit?.value.line).toMatchObject({ lineClass: { si: 37 }, title: 'Nylon' });
        expect(outfit?.value.drag.hooked?.si).toBeCloseTo(6 * KILOGRAM, 9);
    });

    test('a part that names another definition starts from that one, not from the preset', async () => {
        const spread = await spreadNamed(
            'rough',
            `${base}spread rough like calm {
            port short corner { lure ink }
        }`,
        );
        expect(line(spread, 'port short corner').lure?.value.length?.si).toBeCloseTo(0.3, 12);
    });

    test('a circle is said once and read without end', async () => {
        const sheet = await checkText(
            `${tackle}spread a like b { crew 2 }\nspread b like a { speed 8 kn }\n`,
        );
        const circles = sheet.findings.filter(({ rule }) => rule === 'like');
        expect(circles.map(({ what }) => what)).toEqual([
            '`a` is like itself: a → b → a.',
            '`b` is like itself: b → a → b.',
        ]);
        expect(sheet.resolved.spreads).toHaveLength(2);
    });
});

describe('rule packs in a circle', () => {
    const circles = async (text: string) =>
        (await checkText(text)).findings.filter(({ rule }) => rule === 'like').map(({ what }) => what);

    test('are told at the line that closes it, a pack over itself too', async () => {
        expect(await circles('rules r { written r }\n')).toEqual(['`r` is written over itself: r → r.']);
        expect(
            await circles('rules r { written s }\nrules s { written t }\nrules t { written r }\n'),
        ).toEqual([
            '`r` is written over itself: r → s → t → r.',
            '`s` is written over itself: s → t → r → s.',
            '`t` is written over itself: t → r → s → t.',
        ]);
    });

    test('one that only leads to a circle is in none, and two ways to one pack are none', async () => {
        expect(await circles('rules q { written r }\nrules r { written r }\n')).toHaveLength(1);
        const ways = 'rules a { written b  written c }\nrules b { written d }\nrules c { written d }\n';
        expect(await circles(`${ways}rules d { }\n`)).toEqual([]);
    });
});

describe('without, no and swap', () => {
    test('take positions and properties of the preset away, and change two over', async () => {
        const spread = await spreadNamed(
            'rough',
            `${base}spread rough like calm {
            no crew
            swap port short corner with starboard short corner
            without starboard long rigger
            starboard short corner { no clip }
        }`,
        );
        expect(spread.crew).toBeUndefined();
        expect(spread.lines.map((each) => each.position.name)).toEqual(['starboard short corner']);
        expect(spread.lines[0]).toMatchObject({
            position: { side: 'starboard' },
            lure: { value: { name: 'big-ink' } },
        });
        expect(spread.lines[0]!.clip).toBeUndefined();
    });

    test.each([
        [
            'without',
            'without centre standby',
            '`without centre standby` finds nothing to act on in the preset.',
        ],
        ['no', 'no turn', '`no turn` finds nothing to act on in the preset.'],
        [
            'swap',
            'swap port long corner with starboard long corner',
            'finds nothing to act on in the preset.',
        ],
    ])('%s that finds nothing is said', async (_word, written, what) => {
        const sheet = await checkText(`${tackle}${base}spread rough like calm {\n    ${written}\n}\n`);
        const idle = sheet.findings.filter(({ rule }) => rule === 'preset-idle');
        expect(idle.map((finding) => finding.what)).toEqual([expect.stringContaining(what)]);
    });
});

describe('a part that is named again', () => {
    const reel = `line braid-24 "Braid" { class 24 kg }
outfit racked "Racked" like fifty { line braid-24 { knot "double" 92 %  fitted 2026-01-10 } }
`;
    const lostIn = async (text: string) =>
        (await checkText(tackle + reel + text)).findings.filter(({ rule }) => rule === 'preset-lost');

    test('says what of the preset is lost by that, and its fix keeps it', async () => {
        const text = 'outfit respooled like racked { line braid-24 { fitted 2026-03-03 } }\n';
        const [finding, ...more] = await lostIn(text);
        expect(more).toEqual([]);
        expect(finding?.severity).toBe('hint');
        expect(finding?.what).toBe(
            'Naming braid-24 starts anew, so the knot that Racked says of it is gone.',
        );
        expect(finding?.fixes[0]?.edits.map((edit) => edit.text)).toEqual(['line { fitted 2026-03-03 }']);
        expect(await lostIn('outfit respooled like racked { line { fitted 2026-03-03 } }\n')).toEqual([]);
    });

    test('at a position of a plan as well', async () => {
        const plan = `spread a { boat tern  port short corner { lure ink { weight 240 g } } }
spread b like a { port short corner { lure ink { length 310 mm } } }
`;
        expect((await lostIn(plan)).map(({ what }) => what)).toEqual([
            'Naming ink starts anew, so the weight that a says of it is gone.',
        ]);
    });

    test('is nothing to speak of where all is said again, nothing is added, or a material is named', async () => {
        for (const text of [
            'outfit o like racked { line braid-24 { knot "double" 90 %  fitted 2026-03-03 } }\n',
            'outfit o like racked { line braid-24 }\n',
            'outfit o like racked { line clear { fitted 2026-03-03 } }\nline clear { class 24 kg }\n',
            'outfit o like fifty { line nylon { class 37 kg } }\n',
        ])
            expect(await lostIn(text), text).toEqual([]);
    });
});

describe('precedence', () => {
    test('the position over the method over the outfit, and each says who spoke', async () => {
        const spread = await spreadNamed(
            'day',
            `spread day {
            boat tern
            method soft
            port short corner { outfit fifty  lure ink  drag { set 1.2 kg } }
        }`,
        );
        const { drag, loop } = line(spread, 'port short corner');
        expect(drag.set).toMatchObject({ origin: { voice: 'position' } });
        expect(drag.set?.si).toBeCloseTo(1.2 * KILOGRAM, 9);
        expect(drag.hooked).toMatchObject({ origin: { voice: 'method' }, standing: 'computed' });
        expect(drag.hooked?.si).toBeCloseTo(0.25 * 24 * KILOGRAM, 9);
        expect(drag.full).toMatchObject({ origin: { voice: 'outfit' } });
        expect(loop).toMatchObject({ si: 1, origin: { voice: 'method' } });
    });

    test("a line's own method goes before the spread's", async () => {
        const spread = await spreadNamed(
            'day',
            `method firm { style direct  hooked 7 kg }
        spread day {
            boat tern
            method soft
            port short corner { outfit fifty  lure ink  method firm }
        }`,
        );
        expect(line(spread, 'port short corner').drag.hooked?.si).toBeCloseTo(7 * KILOGRAM, 9);
    });
});

describe('tow points', () => {
    const day = (lines: string) => `spread day {\nboat tern\nspeed 8 kn\n${lines}\n}`;

    test('short takes the inner halyard, long the outer, unless the plan says otherwise', async () => {
        const spread = await spreadNamed(
            'day',
            day(`port short rigger { lure ink  back 30 m }
            port long rigger { lure big-ink  back 45 m }
            starboard long rigger { lure ink  back 45 m  from halyard 1 }`),
        );
        expect(spread.lines.map(({ from }) => from)).toMatchObject([
            { kind: 'halyard', number: 1, origin: { voice: 'default' } },
            { kind: 'halyard', number: 2, origin: { voice: 'default' } },
            { kind: 'halyard', number: 1, origin: { voice: 'position' } },
        ]);
    });

    test('both words of the trade are one position', async () => {
        const spread = await spreadNamed(
            'day',
            day(`port short flat line { lure ink  back 12 m }
            centre stinger { lure big-ink  back 60 m }
            starboard bridge teaser { teaser chain  back 8 m }
            port tower { lure ink  back 50 m }`),
        );
        expect(spread.lines.map(({ position, role }) => [position.name, role])).toEqual([
            ['port short corner', 'fished'],
            ['shotgun', 'fished'],
            ['starboard bridge teaser', 'teaser'],
            ['port tower', 'fished'],
        ]);
        expect(spread.lines[3]!.position.extra).toBe(true);
    });

    test('stand where the geometry puts them: halyard on a pole square out, by hand', async () => {
        const sheet = await checkText(`${tackle}${day('starboard long rigger { lure ink  back 45 m }')}`);
        const { towPoint } = sheet.plans[0]!.lines[0]!;
        const along = 5 * Math.SQRT1_2;
        expect(towPoint.known && towPoint.value[0]).toBeCloseTo(3, 12);
        expect(towPoint.known && towPoint.value[1]).toBeCloseTo(-(1.5 + along), 12);
        expect(towPoint.known && towPoint.value[2]).toBeCloseTo(2 + along, 12);
    });
});

describe('line classes', () => {
    test('customary pounds name the class and are never converted', async () => {
        const spread = await spreadNamed(
            'day',
            `outfit pounds { line nylon { class 50 lb } }
            spread day {\nboat tern\nport short corner { outfit pounds  lure ink }\n}`,
        );
        const { lineClass } = line(spread, 'port short corner').outfit!.value.line!;
        expect(lineClass?.si).toBe(24);
        expect(lineClass?.quantity).toMatchObject({ number: 50, unit: { symbol: 'lb' } });
    });
});

describe('the log', () => {
    test('reads what happened, its times counted on past midnight', async () => {
        const sheet = await checkText(`${tackle}${base}species marlin "Marlin" { speed 6 kn to 9 kn }
            log 2026-02-14 "Night session" {
                zone "+10:00"
                using calm from 22:00
                at 23:50 bite port short corner hooked lost "hook pulled"
                at 00:20 bite starboard long rigger hooked released marlin 80 kg by "Noor" fought 22 min water 24 C
                    place "the bank"
            }`);
        expect(sheet.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
        const [log] = sheet.resolved.logs;
        expect(log?.using.map(({ plan }) => plan.value.name)).toEqual(['calm']);
        const [first, second] = log!.events;
        expect(first?.outcome.map(({ value }) => value)).toEqual(['bite', 'hooked', 'lost: hook pulled']);
        expect(second!.time.value - first!.time.value).toBe(30 * 60);
        expect(second).toMatchObject({
            position: { value: { name: 'starboard long rigger' } },
            species: { value: 'marlin' },
            weight: { si: 80 },
            angler: { value: 'Noor' },
            fought: { si: 1320 },
            spot: { value: 'the bank' },
        });
        expect(second!.water!.si).toBeCloseTo(297.15, 9);
    });
});
