import { describe, expect, test } from 'vitest';
import { checkText, crossedRods, expectMarked, mended, messagesOf, today } from '../language/marked.ts';

/*
 * What is exactly at its limit keeps it, what is a hair beyond does not; and the sentences that only a rare plan
 * brings about. Each test is named after the rule that it is about.
 */

const pulling = `lure mine "Mine" pusher { pull 3 kg at 8 kn }
method unsaid "Unsaid" { }
method shy "Shy" { opens 3.2 kg }`;
const corner = (rest: string, day = 'sea 0.5 m') =>
    today(`    ${day}\n    port short corner { lure mine  back wave 2  ${rest} }`, pulling);
const severityOf = async (text: string, rule: string) =>
    (await checkText(text)).findings.find((finding) => finding.rule === rule)?.severity;
const relatedOf = async (text: string, rule: string) =>
    (await checkText(text)).findings
        .find((finding) => finding.rule === rule)
        ?.related.map(({ what }) => what);

describe('clip-false-release', () => {
    test('clip-false-release: a clip at the pull itself opens with the surge, not by itself', async () => {
        const [message] = await messagesOf(corner('clip 3 kg'), 'clip-false-release');
        expect(message).toContain('opens at 3 kg, and Mine pulls 3.6 kg with surge');
        expect(await severityOf(corner('clip 3 kg'), 'clip-false-release')).toBe('warning');
        expect(await messagesOf(corner('clip 3 kg', ''), 'clip-false-release')).toEqual([]);
    });

    test('clip-false-release: only a drop-back is meant to be light', async () => {
        expect(
            await severityOf(corner('clip 3.4 kg  method unsaid', 'sea 0.5 m'), 'clip-false-release'),
        ).toBe('warning');
    });

    test('clip-false-release: a clip taken over from another plan is shown where the lure was chosen', async () => {
        const text = `use "cockpit.spread"\n${pulling}
spread before { boat fulmar  speed 8 kn  sea 0.5 m  port short corner { back wave 2  clip 2 kg } }
spread after like before {
    port short corner { lure mine }
    //                       ^^^^ clip-false-release: by itself
}
`;
        await expectMarked(text, 'clip-false-release');
    });
});

describe('clip-stiff', () => {
    test('clip-stiff: the lure itself opens it, and the method should ask for more', async () => {
        const [message] = await messagesOf(corner('clip 5 kg  method shy'), 'clip-stiff');
        expect(message).toMatch(
            /^The clip at port short corner opens at 5 kg, and Shy wants 3\.2 kg at most\. .* Below 3\.6 kg the lure itself opens it: tow one that pulls less, or let the method ask for more\.$/,
        );
        expect(await relatedOf(corner('clip 5 kg  method shy'), 'clip-stiff')).toEqual(['Shy says it here.']);
    });
});

describe('drag-under-tow', () => {
    test('drag-under-tow: set drag at the pull itself holds until a sea comes', async () => {
        expect(await messagesOf(corner('from rod tip  drag { set 3 kg }', ''), 'drag-under-tow')).toEqual([]);
        const text = corner('from rod tip  drag { set 3 kg }');
        expect(await severityOf(text, 'drag-under-tow')).toBe('hint');
        expect((await messagesOf(text, 'drag-under-tow'))[0]).toContain('with surge');
    });

    test('drag-under-tow: only a drop-back lives with light drag', async () => {
        const text = corner('from rod tip  drag { set 2 kg }  method unsaid');
        expect(await severityOf(text, 'drag-under-tow')).toBe('warning');
        expect((await messagesOf(text, 'drag-under-tow'))[0]).toMatch(/or tow it from a clip\.$/);
    });

    test('drag-under-tow: a bait without a pull of its own is judged by its size, and has nothing to show', async () => {
        const text = today(
            '    sea 0.5 m\n    port short corner { lure plain  back wave 2  from rod tip  drag { set 0.1 kg } }',
            'lure plain "Plain" pusher { head 45 mm }',
        );
        expect(await messagesOf(text, 'drag-under-tow')).toHaveLength(1);
        expect(await relatedOf(text, 'drag-under-tow')).toEqual([]);
    });

    test('drag-under-tow: a drag taken over from another plan is shown where the lure was chosen', async () => {
        const text = `use "cockpit.spread"\n${pulling}
spread before { boat fulmar  speed 8 kn  sea 0.5 m  port short corner { back wave 2  from rod tip  drag { set 2 kg } } }
spread after like before {
    port short corner { lure mine }
    //                       ^^^^ drag-under-tow: by itself
}
`;
        await expectMarked(text, 'drag-under-tow');
    });
});

describe('drag-over-class', () => {
    const outfit = (drag: string, lineClass = '24 kg') =>
        today(
            '    port short corner { outfit own  lure broad  back wave 2 }',
            `outfit own "Own" { line nylon { class ${lineClass} }  drag { ${drag} } }`,
        );

    test('drag-over-class: above the class it says that the line goes first', async () => {
        expect(await messagesOf(outfit('full 25 kg'), 'drag-over-class')).toEqual([
            'Full drag 25 kg is 104 % of the 24 kg class. A line that keeps its class breaks before the reel gives. Lower it to 16.8 kg or use a heavier outfit.',
        ]);
        expect(await relatedOf(outfit('full 25 kg'), 'drag-over-class')).toEqual(['The class of Own.']);
    });

    test('drag-over-class: what is too much with a fish on is too much while trolling', async () => {
        expect(await messagesOf(outfit('set 12 kg'), 'drag-over-class')).toEqual([
            'Set drag 12 kg is 50 % of the 24 kg class. Common practice is 25–33 % (6–8 kg), and that with a fish on. Lower it or use a heavier outfit.',
        ]);
    });

    test('drag-over-class: half of one per cent is not over, a little more is', async () => {
        // 33.3 % and half a per cent of 20 kg are 6.76 kg.
        expect(await messagesOf(outfit('hooked 6.75 kg', '20 kg'), 'drag-over-class')).toEqual([]);
        expect(await messagesOf(outfit('hooked 6.77 kg', '20 kg'), 'drag-over-class')).toHaveLength(1);
    });
});

test('combined-length: where the double alone is over, cutting the leader to nothing is no fix', async () => {
    const text = (double: string) =>
        today(
            '    event harbour-cup\n    port short corner { outfit own  lure broad  back wave 2 }',
            `outfit own "Own" { line nylon { class 15 kg }  double { length ${double} } }`,
        );
    // In this class the pack allows 12.19 m together, and the leader has 4 m.
    expect(await messagesOf(text('12.5 m'), 'combined-length')).toHaveLength(1);
    await expect(mended(text('12.5 m'), 'combined-length')).rejects.toThrow('offers no fix');
    const after = await checkText(text('8.5 m'));
    const fixes = after.findings.find(({ rule }) => rule === 'combined-length')?.fixes;
    expect(fixes?.map(({ title }) => title)).toEqual(['Cut the leader to 3.5 m']);
});

test('entry-angle: pulled too flat a head does not breathe, and the remedy is the other way round', async () => {
    const text = today(`    rule entry-angle { flattest 30 deg  steepest 60 deg }
    port short corner { lure broad  back wave 3 }`);
    expect((await messagesOf(text, 'entry-angle'))[0]).toMatch(
        /works at 30 deg to 60 deg\. Pulled too flat a head does not come up to breathe, and works little\. Raise its clip, or bring it in\.$/,
    );
});

test('entry-angle, lift: a diver goes down and not up, and a lure of no known head is not judged', async () => {
    for (const rule of ['entry-angle { steepest 0.1 deg }', 'lift { most 0.001 }']) {
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

describe('event', () => {
    const logged = (hours: string, events: string) => `use "cockpit.spread"
rules open "Open" { ${hours} }
spread today { boat fulmar  event open  port short corner { lure broad  back 12 m } }
log 2026-03-07 {
    zone "+10:00"
    using today
    ${events}
}
`;

    test('event: an event may say only when lines go in, or only when they come out', async () => {
        const bites = 'at 05:00 bite port short corner lost\n    at 21:00 bite port short corner lost';
        expect(await messagesOf(logged('', bites), 'event')).toEqual([]);
        expect(await messagesOf(logged('lines in 07:30', bites), 'event')).toEqual([
            'A bite is logged at 05:00, and Open has lines in at 07:30. A fish from outside the hours does not count. Put the time right, or leave it out of what you call in.',
        ]);
        expect(await messagesOf(logged('lines out 16:30', bites), 'event')).toEqual([
            'A bite is logged at 21:00, and Open has lines out at 16:30. A fish from outside the hours does not count. Put the time right, or leave it out of what you call in.',
        ]);
    });

    test('event: the minute of the hour itself is inside', async () => {
        const hours = 'lines in 07:30  lines out 16:30';
        const bites = 'at 07:30 bite port short corner lost\n    at 16:30 bite port short corner lost';
        expect(await messagesOf(logged(hours, bites), 'event')).toEqual([]);
        expect(
            await messagesOf(
                logged('lines in 07:30  lines out 07:30', 'at 07:31 bite port short corner'),
                'event',
            ),
        ).toHaveLength(1);
    });

    test('event: a plan without an event has no hours, and a bite before any plan has none', async () => {
        const bite = 'at 05:00 bite port short corner lost';
        expect(await messagesOf(logged('lines in 07:30', bite).replace('event open', ''), 'event')).toEqual(
            [],
        );
        const late = logged('lines in 07:30', bite).replace('using today', 'using today from 06:00');
        expect(await messagesOf(late, 'event')).toEqual([]);
    });
});

describe('teaser-hooks', () => {
    test('teaser-hooks: a teaser without hooks carries none, whether or not it has a name', async () => {
        const club = 'rules club "Club" { teasers hookless }\n';
        const text = (hooks: string) =>
            today(`    event club\n    port squid chain { back 12 m  hooks ${hooks} }`, club);
        expect(await messagesOf(text('single { }'), 'teaser-hooks')).toEqual([
            'Port squid chain carries hooks, and Club wants teasers hookless. A hooked teaser counts as one more line. Take the hooks off.',
        ]);
        expect(await relatedOf(text('single { }'), 'teaser-hooks')).toEqual(['The rule is written here.']);
        expect(await messagesOf(text('{ count 0 }'), 'teaser-hooks')).toEqual([]);
    });
});

describe('hook-kind', () => {
    const rigged = (what: string, event = 'harbour-cup', own = '') =>
        today(`    event ${event}\n    port short corner { ${what}  back wave 2 }`, own);

    test('hook-kind: hooks that do not say their kind are asked to, in a whole sentence', async () => {
        const text = rigged('bait own', 'harbour-cup', 'bait own "Own" { hooks { gap 20 mm } }');
        expect(await messagesOf(text, 'hook-kind')).toEqual([
            'The hooks of Own do not say their kind, and Harbour cup wants circle hooks with natural bait. A fish on it does not count. Write it down: kind circle.',
        ]);
    });

    test('hook-kind: a double is no single either, and a hook that hangs free is fixed to the bait', async () => {
        expect((await messagesOf(rigged('lure broad  hooks { kind double }'), 'hook-kind'))[0]).toMatch(
            /^Broad has double hooks, and IGFA saltwater allows only singles on a skirted lure\. .* Rig single hooks\.$/,
        );
        const loose = rigged('bait own', 'harbour-cup', 'bait own "Own" { hooks circle { dangling } }');
        expect((await messagesOf(loose, 'hook-kind'))[0]).toMatch(/ Fix it to the bait\.$/);
    });

    test('hook-kind: only a bait has a hook that hangs free of it, and bare hooks are on nothing', async () => {
        expect(await messagesOf(rigged('lure broad  hooks { dangling }'), 'hook-kind')).toEqual([]);
        expect(await messagesOf(rigged('hooks treble { dangling }'), 'hook-kind')).toEqual([]);
    });

    test('hook-kind: a pack that speaks of baits alone forbids a treble on a lure as well', async () => {
        const pack = (own: string) => `rules mine "Mine" { ${own} }\nrules day "Day" { written mine }`;
        const treble = 'lure broad  hooks { kind treble }';
        expect(
            await messagesOf(rigged(treble, 'day', pack('natural { count 2 }')), 'hook-kind'),
        ).toHaveLength(1);
        expect(
            await messagesOf(rigged(treble, 'day', pack('skirted { count 2 }')), 'hook-kind'),
        ).toHaveLength(1);
        expect(await messagesOf(rigged(treble, 'day', pack('at most 5 lines')), 'hook-kind')).toEqual([]);
    });
});

test('hook-fit: a lure without hooks and hooks without a lure have nothing to fit', async () => {
    for (const towed of [
        'hooks single { gap 1 mm  point down }',
        'lure blank',
        'bait live "scad"  hooks single { gap 1 mm }',
    ])
        expect(
            await messagesOf(
                today(`    port short corner { ${towed}  back wave 2 }`, 'lure blank { head 90 mm }'),
                'hook-fit',
            ),
        ).toEqual([]);
});

test('hook-overhang, hook-spacing: hooks that are rigged to no lure are not judged as a lure’s', async () => {
    const text = (towed: string) =>
        today(
            `    event harbour-cup\n    port short corner { ${towed}  back wave 2 }`,
            'lure deep "Deep" diver { }',
        );
    const hooks = 'hooks twin { length 60 mm  overhang 200 mm  spacing 700 mm }';
    expect(await messagesOf(text(hooks), 'hook-overhang')).toEqual([]);
    expect(await messagesOf(text(`lure deep  ${hooks}`), 'hook-overhang')).toEqual([]);
    expect(await messagesOf(text(`lure broad  ${hooks}`), 'hook-overhang')).toHaveLength(1);
    expect(await messagesOf(text(hooks), 'hook-spacing')).toEqual([]);
    expect(await messagesOf(text(`lure broad  ${hooks}`), 'hook-spacing')).toHaveLength(1);
});

test('hook-spacing: 12 in are allowed, and no more', async () => {
    const text = (spacing: string) =>
        today(
            `    event harbour-cup\n    port short corner { lure broad  back wave 2  hooks twin { length 60 mm  spacing ${spacing} } }`,
        );
    expect(await messagesOf(text('30.48 cm'), 'hook-spacing')).toEqual([]);
    expect(await messagesOf(text('30.5 cm'), 'hook-spacing')).toHaveLength(1);
});

test('inspection-due: what is due is done anew, each thing in its own way', async () => {
    const text = today(
        '    date 2027-03-02\n    port short corner { outfit own  lure broad  back wave 2 }',
        'outfit own "Own" { line nylon { class 24 kg  fitted 2020-01-01 } }',
    );
    expect((await messagesOf(text, 'inspection-due'))[0]).toMatch(
        /Spool up anew, or cut back to sound line and write down the day\.$/,
    );
});

test('lateral-gap: neighbours alone are compared, and a gap that is kept is kept', async () => {
    const text = (gap: string) =>
        today(`    rule lateral-gap { severity warning  gap ${gap} }
    port short corner { lure broad  back wave 2 }
    starboard long corner { lure dart  back wave 3 }
    port long rigger { lure wisp  back wave 5 }`);
    // The flat clips are 2.8 m apart; the rigger line is further out than either.
    expect(await messagesOf(text('2.79 m'), 'lateral-gap')).toEqual([]);
    const found = await messagesOf(text('50 m'), 'lateral-gap');
    expect(found).toHaveLength(2);
    expect(
        found.filter(
            (message) => /starboard long corner/i.test(message) && /port long rigger/i.test(message),
        ),
    ).toEqual([]);
});

test('line-class: a teaser is on no class, and a strength at the class’s own passes', async () => {
    const text = (position: string, line: string) =>
        today(
            `    event harbour-cup\n    ${position} { outfit own  back 12 m }`,
            `outfit own "Own" { line nylon { ${line} } }`,
        );
    expect(await messagesOf(text('port squid chain', 'class 37 kg'), 'line-class')).toEqual([]);
    expect(await messagesOf(text('port short corner', 'class 37 kg'), 'line-class')).toHaveLength(1);
    expect(await messagesOf(text('port short corner', 'class 24 kg  breaks 52.91 lb'), 'line-class')).toEqual(
        [],
    );
    const listed = text('port short corner', 'class 15 kg  breaks 90 kg').replace(
        '\noutfit',
        '\nrules named "Named" { class among 15 kg }\noutfit',
    );
    expect(await messagesOf(listed.replace('event harbour-cup', 'event named'), 'line-class')).toEqual([]);
});

describe('log-mismatch', () => {
    const logged = (events: string) =>
        `${today('    port short corner { lure broad  back wave 2 }\n    starboard short rigger { bait live "scad"  back 20 m }\n    port squid chain { teaser toy  back 12 m }\n    spare dart', 'teaser toy "Toy" { }')}log 2026-03-14 {\n    using today\n${events}\n}\n`;

    test('log-mismatch: what is towed and what is spare may have been bitten, nothing else', async () => {
        for (const lure of ['broad', 'dart', 'toy'])
            expect(
                await messagesOf(logged(`    at 07:00 bite port short corner lure ${lure}`), 'log-mismatch'),
            ).toEqual([]);
        const strange = logged('    at 07:00 bite port short corner lure pin');
        expect(await messagesOf(strange, 'log-mismatch')).toEqual([
            'Today carries no lure pin. Figures by lure count it for one that was not fished. Name it as a spare in the plan, if it was aboard.',
        ]);
        expect(await relatedOf(strange, 'log-mismatch')).toEqual(['The plan in use at that hour.']);
    });
});

describe('shotgun-inside', () => {
    test('shotgun-inside: a shotgun inside another line, said whole, both lines named and shown', async () => {
        const text = today(`
    port long rigger { lure wisp  back wave 5 }
    shotgun { lure pin  back wave 4 }`);
        const { findings } = await checkText(text);
        const [finding] = findings.filter(({ rule }) => rule === 'shotgun-inside');
        expect(finding?.what).toMatch(
            /^Shotgun runs 3\d\.\d m back, inside port long rigger at 4\d\.\d m\.$/,
        );
        expect(finding?.why).toBe('The shotgun is the longest line, down the middle.');
        expect(finding?.remedy).toBe('Run it behind the others, or give it another name.');
        expect(finding?.positions).toEqual(['shotgun', 'port long rigger']);
        const related = finding?.related.map(({ at, what }) => [text.slice(at.start, at.end), what]);
        expect(related).toEqual([['back wave 5', 'The longest line runs here.']]);
    });
});

describe('position-mismatch', () => {
    test('position-mismatch: lines at one distance are in no wrong order', async () => {
        const level = today(`
    port short corner { lure broad  back 20 m }
    starboard long corner { lure dart  back 20 m }
    shotgun { lure pin  back 20 m }`);
        expect(await messagesOf(level, 'position-mismatch')).toEqual([]);
    });

    test('position-mismatch: only a short line is behind a long one', async () => {
        const text = today(`
    port short corner { lure broad  back 30 m }
    starboard long corner { lure dart  back 20 m }`);
        const { findings } = await checkText(text);
        const found = findings.filter(({ rule }) => rule === 'position-mismatch');
        expect(found.map(({ positions }) => positions)).toEqual([
            ['port short corner', 'starboard long corner'],
        ]);
        expect(found[0]!.related.map(({ at }) => text.slice(at.start, at.end))).toEqual(['back 20 m']);
    });

    test('position-mismatch: a rigger line from a flat clip hangs as low as one from a rod tip', async () => {
        const from = (what: string) =>
            messagesOf(
                today(`    port long rigger { lure wisp  back wave 5  ${what} }`),
                'position-mismatch',
            );
        expect(await from('from flat clip')).toEqual([
            'Port long rigger is towed from a flat clip. A rigger line runs from a halyard, high and wide of the corner lines. Tow it from a halyard, or name the position for what it is.',
        ]);
        expect(await from('from rod tip')).toHaveLength(1);
        expect(await from('from halyard 2')).toEqual([]);
        expect(await from('from bridge')).toEqual([]);
    });

    test('position-mismatch: distances that another plan says are not swapped in this one', async () => {
        const text = (own: string) => `use "cockpit.spread"
spread before { boat fulmar  speed 8 kn  port short corner { lure broad  back 30 m }  starboard long corner { lure dart } }
spread after like before { ${own} }
`;
        await expect(
            mended(text('starboard long corner { back 20 m }'), 'position-mismatch'),
        ).rejects.toThrow('offers no fix');
    });
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

test('line-count: an event that counts no lines, and no event at all, allow any number', async () => {
    const lines = 'port short corner { lure broad  back wave 2 }';
    expect(
        await messagesOf(today(`    event open\n    ${lines}`, 'rules open "Open" { }'), 'line-count'),
    ).toEqual([]);
    expect(await messagesOf(today(`    ${lines}`), 'line-count')).toEqual([]);
});

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

describe('thin-inside-thick', () => {
    const fine = 'outfit fine "Fine" { line nylon { diameter 0.4 mm } }\noutfit plain "Plain" { }';
    const found = (lines: string) => messagesOf(today(lines, fine), 'thin-inside-thick');

    test('thin-inside-thick: only a rigger line runs above a corner line', async () => {
        expect(
            await found(
                '    port short corner { outfit fine  back 12 m }\n    port long corner { outfit medium-1  back 34 m }',
            ),
        ).toEqual([]);
        expect(
            await found(
                '    port short rigger { outfit fine  back 12 m }\n    port long rigger { outfit medium-1  back 34 m }',
            ),
        ).toEqual([]);
        expect(
            await found(
                '    port short corner { outfit fine  back 12 m }\n    port long rigger { outfit medium-1  back 34 m }',
            ),
        ).toHaveLength(1);
    });

    test('thin-inside-thick: a line that says nothing of itself is not compared', async () => {
        for (const [near, far] of [
            ['outfit plain', 'outfit medium-1'],
            ['outfit fine', 'outfit plain'],
            ['lure broad', 'outfit medium-1'],
            ['outfit fine', 'lure broad'],
        ])
            expect(
                await found(
                    `    port short corner { ${near}  back 12 m }\n    port long rigger { ${far}  back 34 m }`,
                ),
            ).toEqual([]);
    });
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
