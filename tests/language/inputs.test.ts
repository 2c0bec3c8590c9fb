import { describe, expect, test } from 'vitest';
import { checkText } from './marked.ts';

/*
 * Every input that a rule, a figure or the card needs has a place to be written. A row is what is asked for, the
 * block and the words that say it, and where each value is found in the resolved plan, in SI.
 */

type Row = readonly [input: string, block: Block, words: string, lands: Readonly<Record<string, unknown>>];

type Block = keyof typeof usually;

/** What stands in each block where a row says nothing of it. */
const usually = {
    boat: '',
    rod: '',
    reel: '',
    line: '',
    leader: '',
    hooks: '',
    outfit: 'line { class 24 kg }',
    lure: '',
    teaser: '',
    bait: '',
    method: '',
    rules: '',
    spread: '',
    position: '',
    teased: '',
    day: '',
    log: '',
};

const EQUIPPED = `outriggers { length 6 m  halyards 3 m, 5 m }\npoint bridge { ahead 2 m  out 1 m  up 4 m }`;

/** Everything that a row may look into, by the words that paths begin with. */
async function written(block: Block, words: string): Promise<Readonly<Record<string, unknown>>> {
    const said = { ...usually, [block]: `${block === 'line' ? '' : usually[block]}\n${words}\n` };
    if (block === 'line') said.outfit = 'line cord';
    // What lines are towed from has to be there; a boat that is written about brings her own.
    if (block !== 'boat') said.boat = EQUIPPED;
    const sheet = await checkText(`
use "layback:species"
use "layback:written-rules"
boat b { ${said.boat} }
rod stick { ${said.rod} }
reel wheel { ${said.reel} }
line cord { ${said.line} }
leader trace { ${said.leader} }
hooks rig { ${said.hooks} }
outfit o {\nrod stick\nreel wheel\n${said.outfit} }
lure l plunger {\nleader trace\nhooks rig\n${said.lure} }
teaser t { ${said.teaser} }
bait c { ${said.bait} }
method m { ${said.method} }
rules r { ${said.rules} }
spread s {
    boat b
    method m
    event r
    port short corner {\noutfit o\nlure l\n${said.position} }
    starboard long corner { bait c }
    port dredge {\nteaser t\n${said.teased} }
    ${said.spread}
}
day d { ${said.day} }
log 2026-02-14 { using s ${said.log} }
`);
    const faults = sheet.findings.filter(({ rule }) => LANGUAGE.has(rule));
    expect(faults.map(({ what }) => what)).toEqual([]);
    const [spread] = sheet.resolved.spreads;
    const [log] = sheet.resolved.logs;
    const [line, baited, teased] = spread!.lines;
    return {
        ...{ spread, line, baited, teased, log, event: log!.events[0] },
        ...{ boat: spread!.boat, outfit: line!.outfit, lure: line!.lure, method: spread!.method },
        rules: spread!.event,
    };
}

const LANGUAGE = new Set(['syntax', 'unknown-word', 'unknown-name', 'quantity', 'value', 'duplicate', 'use']);

const G = 9.80665;
const KNOT = 1852 / 3600;
const DEG = Math.PI / 180;

const rows: Readonly<Record<string, readonly Row[]>> = {
    boat: [
        ['length', 'boat', 'length 10.8 m', { 'boat.length': 10.8 }],
        ['waterline', 'boat', 'waterline 32 ft', { 'boat.waterline': 9.7536 }],
        ['beam', 'boat', 'beam 3.6 m', { 'boat.beam': 3.6 }],
        [
            'speed range',
            'boat',
            'speed 6 kn to 10 kn',
            { 'boat.speed.from': 6 * KNOT, 'boat.speed.to': 10 * KNOT },
        ],
        [
            'one measured crest',
            'boat',
            'first crest 6.5 m at 8 kn',
            { 'boat.crests.distances.0': 6.5, 'boat.crests.speed': 8 * KNOT },
        ],
        ['several measured crests', 'boat', 'crests 6 m, 17 m at 8 kn', { 'boat.crests.distances.1': 17 }],
        [
            'wash',
            'boat',
            'wash { near 1.1 m  far 0.5 m  length 10 m }',
            { 'boat.wash.near': 1.1, 'boat.wash.far': 0.5, 'boat.wash.length': 10 },
        ],
        [
            'outriggers',
            'boat',
            'outriggers { length 6 m  rise 45 deg  sweep 70 deg }',
            {
                'boat.outriggers.length': 6,
                'boat.outriggers.rise': 45 * DEG,
                'boat.outriggers.sweep': 70 * DEG,
            },
        ],
        [
            'their foot',
            'boat',
            'outriggers { foot { ahead 3 m  out 1.7 m  up 2.3 m } }',
            { 'boat.outriggers.foot.ahead': 3, 'boat.outriggers.foot.up': 2.3 },
        ],
        [
            'halyards',
            'boat',
            'outriggers { halyards 3.4 m, 6 m }',
            { 'boat.outriggers.halyards.0': 3.4, 'boat.outriggers.halyards.1': 6 },
        ],
        [
            'centre rigger',
            'boat',
            'centre rigger { length 5 m  halyards 4.5 m }',
            { 'boat.centreRigger.halyards.0': 4.5 },
        ],
        [
            'flat clips',
            'boat',
            'flat clip { ahead 0.2 m  out 1.3 m  up 1.1 m }',
            { 'boat.flatClip.out': 1.3 },
        ],
        [
            'holders',
            'boat',
            'holder port corner { up 1 m  lean 15 deg  splay 20 deg }',
            { 'boat.holders.0.lean': 15 * DEG, 'boat.holders.0.splay': 20 * DEG },
        ],
        ['extra positions', 'boat', 'position tower "Tower" { up 6 m }', { 'boat.positions.tower.up': 6 }],
        ['extra tow points', 'boat', 'point bridge { out 1.2 m }', { 'boat.points.bridge.out': 1.2 }],
    ],
    line: [
        ['material', 'line', 'material nylon', { 'outfit.line.material': 'nylon' }],
        ['diameter', 'line', 'diameter 0.71 mm', { 'outfit.line.diameter': 0.00071 }],
        ['class', 'line', 'class 37 kg', { 'outfit.line.lineClass': 37 }],
        ['class in customary pounds', 'line', 'class 50 lb', { 'outfit.line.lineClass': 24 }],
        ['breaking load', 'line', 'breaks 22.6 kg', { 'outfit.line.breaks': 22.6 * G }],
        ['stretch', 'line', 'stretch 18 %', { 'outfit.line.stretch': 0.18 }],
        ['date fitted', 'line', 'fitted 2026-01-20', { 'outfit.line.fitted': '2026-01-20' }],
        ['double', 'outfit', 'double { length 4 m }', { 'outfit.double.length': 4 }],
        ['knot, as a share', 'line', 'knot "Bimini" 95 %', { 'outfit.line.joints.0.share': 0.95 }],
        ['swivel, as rated', 'outfit', 'swivel 180 kg', { 'outfit.joints.0.strength': 180 * G }],
        [
            'capacity',
            'reel',
            'capacity 800 m of 0.71 mm',
            { 'outfit.reel.capacity.length': 800, 'outfit.reel.capacity.diameter': 0.00071 },
        ],
        [
            'spool',
            'reel',
            'spool { full 100 mm  arbor 48 mm }',
            { 'outfit.reel.full': 0.1, 'outfit.reel.arbor': 0.048 },
        ],
        [
            'rod above and below the reel',
            'rod',
            'tip 1.3 m  butt 0.45 m',
            { 'outfit.rod.tip': 1.3, 'outfit.rod.butt': 0.45 },
        ],
        ['marks', 'outfit', 'marks every 10 m', { 'outfit.marks.every': 10 }],
        ['counter', 'outfit', 'counter', { 'outfit.marks.counter': true }],
    ],
    'leader, hooks': [
        ['material', 'leader', 'material fluorocarbon', { 'lure.leader.material': 'fluorocarbon' }],
        ['diameter', 'leader', 'diameter 1.6 mm', { 'lure.leader.diameter': 0.0016 }],
        ['breaking load', 'leader', 'breaks 250 lb', { 'lure.leader.breaks': 250 * 0.45359237 * G }],
        ['length', 'leader', 'length 4.2 m', { 'lure.leader.length': 4.2 }],
        ['crimp', 'leader', 'crimp 90 %', { 'lure.leader.joints.0.share': 0.9 }],
        ['date inspected', 'leader', 'inspected 2026-02-10', { 'lure.leader.inspected': '2026-02-10' }],
        ['kind', 'hooks', 'kind J', { 'lure.hooks.kind': 'J' }],
        ['offset', 'hooks', 'kind circle  offset', { 'lure.hooks.kind': 'offset circle' }],
        ['count', 'hooks', 'count 2', { 'lure.hooks.count': 2 }],
        ['gap', 'hooks', 'gap 48 mm', { 'lure.hooks.gap': 0.048 }],
        ['length of the hook', 'hooks', 'length 92 mm', { 'lure.hooks.length': 0.092 }],
        ['eye spacing', 'hooks', 'spacing 180 mm', { 'lure.hooks.spacing': 0.18 }],
        ['angle between', 'hooks', 'angle 180 deg', { 'lure.hooks.angle': Math.PI }],
        ['point direction', 'hooks', 'point up', { 'lure.hooks.point': 'up' }],
        ['distance past the skirt', 'hooks', 'overhang 20 mm', { 'lure.hooks.overhang': 0.02 }],
        [
            'linked, dangling',
            'hooks',
            'linked  dangling',
            { 'lure.hooks.linked': true, 'lure.hooks.dangling': true },
        ],
        ['hooks inspected', 'hooks', 'inspected 2026-02-10', { 'lure.hooks.inspected': '2026-02-10' }],
        [
            'leader and hooks of a position',
            'position',
            'leader { length 4 m }  hooks { gap 5 cm }',
            { 'line.leader.length': 4, 'line.hooks.gap': 0.05 },
        ],
    ],
    'lure, teaser, bait': [
        ['head', 'lure', '', { 'lure.kind': 'plunger' }],
        ['length', 'lure', 'length 330 mm', { 'lure.length': 0.33 }],
        ['head diameter', 'lure', 'head 46 mm', { 'lure.head': 0.046 }],
        ['weight', 'lure', 'weight 290 g', { 'lure.weight': 0.29 }],
        ['weight in water', 'lure', 'submerged 140 g', { 'lure.submerged': 0.14 }],
        ['displaced volume', 'lure', 'displaces 150 ml', { 'lure.displaces': 150e-6 }],
        [
            'measured pull at a speed',
            'lure',
            'pull 2.6 kg at 8 kn',
            { 'lure.pull.load': 2.6 * G, 'lure.pull.speed': 8 * KNOT },
        ],
        [
            'speed range',
            'lure',
            'runs 6 kn to 9 kn',
            { 'lure.runs.from': 6 * KNOT, 'lure.runs.to': 9 * KNOT },
        ],
        ['sway', 'lure', 'sway 5 deg', { 'lure.sway': 5 * DEG }],
        ['colour', 'lure', 'colour "blue"', { 'lure.colour': 'blue' }],
        ['spares of it', 'lure', 'spares 2', { 'lure.spares': 2 }],
        ['kind of teaser', 'teaser', 'kind dredge', { 'teased.teaser.kind': 'dredge' }],
        ['pull of a teaser', 'teaser', 'pull 9 kg at 6 kn', { 'teased.teaser.pull.load': 9 * G }],
        [
            'tow point of a teaser',
            'teased',
            'from bridge',
            { 'teased.from.kind': 'point', 'teased.from.name': 'bridge' },
        ],
        ['distance of a teaser', 'teased', 'back 6 m', { 'teased.back.distance': 6 }],
        ['bait kind', 'bait', 'kind strip', { 'baited.bait.kind': 'strip' }],
        [
            'bait length and weight',
            'bait',
            'length 25 cm  weight 400 g',
            { 'baited.bait.length': 0.25, 'baited.bait.weight': 0.4 },
        ],
        ['bait pull', 'bait', 'pull 1.2 kg at 5 kn', { 'baited.bait.pull.load': 1.2 * G }],
        ['bait speed range', 'bait', 'runs 2 kn to 5 kn', { 'baited.bait.runs.from': 2 * KNOT }],
        ['bait sway', 'bait', 'sway 3 deg', { 'baited.bait.sway': 3 * DEG }],
    ],
    drag: [
        ['set, as a force', 'outfit', 'drag { set 2 kg }', { 'line.drag.set': 2 * G }],
        [
            'hooked, as a share of class',
            'outfit',
            'drag { hooked 30 % }',
            { 'line.drag.hooked': 0.3 * 24 * G },
        ],
        ['full', 'outfit', 'drag { full 100 N }', { 'line.drag.full': 100 }],
        ['wanted by a method', 'method', 'hooked 25 %', { 'line.drag.hooked': 0.25 * 24 * G }],
        [
            'decided at a position',
            'position',
            'drag { hooked 15 lb }',
            { 'line.drag.hooked': 15 * 0.45359237 * G },
        ],
        [
            'scale test',
            'outfit',
            'tested 2026-02-11 by "K."',
            { 'outfit.tested.date': '2026-02-11', 'outfit.tested.by': 'K.' },
        ],
        ['expected run', 'outfit', 'run 350 m', { 'outfit.run': 350 }],
    ],
    spread: [
        ['boat', 'spread', '', { 'spread.boat.name': 'b' }],
        ['target', 'spread', 'target mahi', { 'spread.target.name': 'mahi' }],
        ['method', 'spread', '', { 'spread.method.name': 'm' }],
        ['style of a method', 'method', 'style drop-back', { 'method.style': 'drop-back' }],
        [
            'loop, wait, wraps',
            'method',
            'loop 1.2 m  wait 4 s  wraps 12',
            { 'line.loop': 1.2, 'line.wait': 4, 'line.wraps': 12 },
        ],
        ['clip', 'position', 'clip 3.4 kg', { 'line.clip': 3.4 * G }],
        ['most to open the clip', 'method', 'opens 6 kg', { 'method.opens': 6 * G }],
        ['back, by wave', 'position', 'back wave 2', { 'line.back.wave': 2 }],
        ['back, by distance', 'position', 'back 13 m', { 'line.back.distance': 13 }],
        ['from', 'position', 'from halyard 2', { 'line.from.kind': 'halyard', 'line.from.number': 2 }],
        ['speed', 'spread', 'speed 8 kn', { 'spread.speed': 8 * KNOT }],
        [
            'speeds that the helm keeps',
            'spread',
            'speeds 7 kn to 8 kn',
            { 'spread.speeds.from': 7 * KNOT, 'spread.speeds.to': 8 * KNOT },
        ],
        ['sea', 'spread', 'sea 0.7 m', { 'spread.sea': 0.7 }],
        ['heading to the sea', 'spread', 'heading 45 deg', { 'spread.heading': 45 * DEG }],
        [
            'wind',
            'spread',
            'wind 12 kn from 40 deg',
            { 'spread.wind.speed': 12 * KNOT, 'spread.wind.from': 40 * DEG },
        ],
        ['depth', 'spread', 'depth 200 m', { 'spread.depth': 200 }],
        ['crew', 'spread', 'crew 3', { 'spread.crew': 3 }],
        ['turn', 'spread', 'turn within 90 m', { 'spread.turn': 90 }],
        ['sway', 'spread', 'sway 5 deg', { 'spread.sway': 5 * DEG }],
        ['date', 'spread', 'date 2026-02-14', { 'spread.date': '2026-02-14' }],
        ['author', 'spread', 'author "Rhea"', { 'spread.author': 'Rhea' }],
        ['edition', 'spread', 'edition "3"', { 'spread.edition': '3' }],
        [
            'stated order with its reason',
            'spread',
            'order clear port short corner, shotgun because "habit"',
            {
                'spread.orders.0.what': 'clear',
                'spread.orders.0.positions.1.name': 'shotgun',
                'spread.orders.0.because': 'habit',
            },
        ],
        [
            'fallbacks',
            'spread',
            'fallback "a hand short" { drop shotgun  say "go slow" }',
            {
                'spread.fallbacks.0.when': 'a hand short',
                'spread.fallbacks.0.drop.0.name': 'shotgun',
                'spread.fallbacks.0.say': 'go slow',
            },
        ],
        [
            'roles',
            'spread',
            'roles { helm "Ana"  port short corner "Ben" }',
            { 'spread.roles.0.name': 'Ana', 'spread.roles.1.role': 'port short corner' },
        ],
        ['angler', 'position', 'angler "Noor"', { 'line.angler': 'Noor' }],
        ['steps', 'position', 'step "ratchet on"', { 'line.steps.0': 'ratchet on' }],
        ['steps of the whole', 'spread', 'step "clips tried"', { 'spread.steps.0': 'clips tried' }],
        ['notes', 'spread', 'note "ice"', { 'spread.notes.0': 'ice' }],
        ['spares', 'spread', 'spare o', { 'spread.spares.0.of.name': 'o' }],
        [
            'weather limit',
            'spread',
            'weather "home over 20 kn"',
            { 'spread.weatherLimit': 'home over 20 kn' },
        ],
        ['event', 'spread', '', { 'spread.event.name': 'r' }],
        ['hold for a second bite', 'spread', 'hold', { 'spread.hold': true }],
        [
            'waivers',
            'spread',
            'waive wash on port short corner because "seen" until 2026-02-15',
            {
                'spread.waivers.0.rule': 'wash',
                'spread.waivers.0.positions.0.side': 'port',
                'spread.waivers.0.because': 'seen',
                'spread.waivers.0.until': '2026-02-15',
            },
        ],
    ],
    rules: [
        ['written pack', 'rules', 'written saltwater', { 'rules.written.0.name': 'saltwater' }],
        ['most lines', 'rules', 'at most 6 lines', { 'rules.mostLines': 6 }],
        ['most lines an angler', 'rules', 'at most 1 lines per angler', { 'rules.mostLinesPerAngler': 1 }],
        ['classes', 'rules', 'class among 15 kg, 24 kg', { 'rules.classes.among.1': 24 }],
        [
            'hook kind with natural bait',
            'rules',
            'hooks circle with natural bait',
            { 'rules.baitHook': 'circle' },
        ],
        ['teasers', 'rules', 'teasers hookless', { 'rules.teasersHookless': true }],
        [
            'severity by rule',
            'rules',
            'rule stagger { severity error }',
            { 'spread.settings.0.severity': 'error' },
        ],
        [
            'settings by rule',
            'rules',
            'rule stagger { sway 5 deg }',
            { 'spread.settings.0.settings.sway': 5 * DEG },
        ],
        [
            'settings in a plan',
            'spread',
            'rule stagger { sway 6 deg }',
            { 'spread.settings.0.settings.sway': 6 * DEG },
        ],
        ['stretch margin', 'rules', 'stretch margin 15 cm', { 'rules.stretchMargin': 0.15 }],
        [
            'lines in, lines out',
            'rules',
            'lines in 08:00  lines out 16:30',
            { 'rules.linesIn': '08:00', 'rules.linesOut': '16:30' },
        ],
        ['call-in', 'rules', 'call in "boat, fish"', { 'rules.callIn': 'boat, fish' }],
        [
            'limits of length',
            'rules',
            'limits up to 10 kg { leader 4.57 m }',
            { 'rules.own.limits.0.upTo': 10, 'rules.own.limits.0.leader': 4.57 },
        ],
    ],
    log: [
        ['plan', 'log', 'from 07:00', { 'log.using.0.plan.name': 's', 'log.using.0.from': 7 * 3600 }],
        ['zone', 'log', 'zone "+10:00"', { 'log.zone': '+10:00' }],
        ['time', 'log', 'at 07:42 raise', { 'event.time': 7 * 3600 + 42 * 60 }],
        [
            'position',
            'log',
            'at 07:42 bite port short corner',
            { 'event.position.name': 'port short corner' },
        ],
        ['lure', 'log', 'at 07:42 bite lure l', { 'event.lure': 'l' }],
        [
            'raise, bite, hooked',
            'log',
            'at 07:42 raise bite hooked',
            { 'event.outcome.0': 'raise', 'event.outcome.1': 'bite', 'event.outcome.2': 'hooked' },
        ],
        ['lost, and how', 'log', 'at 07:42 lost "hook pulled"', { 'event.outcome.0': 'lost: hook pulled' }],
        [
            'released, tagged',
            'log',
            'at 07:42 released tagged',
            { 'event.outcome.0': 'released', 'event.outcome.1': 'tagged' },
        ],
        ['landed', 'log', 'at 07:42 landed', { 'event.outcome.0': 'landed' }],
        [
            'species and weight',
            'log',
            'at 07:42 landed mahi 11 kg',
            { 'event.species': 'mahi', 'event.weight': 11 },
        ],
        ['angler', 'log', 'at 07:42 bite by "Noor"', { 'event.angler': 'Noor' }],
        ['fight time', 'log', 'at 07:42 bite fought 22 min', { 'event.fought': 1320 }],
        [
            'speed and sea',
            'log',
            'at 07:42 bite speed 7 kn sea 1.2 m',
            { 'event.speed': 7 * KNOT, 'event.sea': 1.2 },
        ],
        [
            'water',
            'log',
            'at 07:42 bite water 24 C colour "blue"',
            { 'event.water': 297.15, 'event.colour': 'blue' },
        ],
        ['place', 'log', 'at 07:42 bite place "the step"', { 'event.spot': 'the step' }],
        ['note', 'log', 'at 07:42 raise note "a second one"', { 'event.note': 'a second one' }],
    ],
};

describe.each(Object.entries(rows))('%s', (_, inputs) => {
    test.each(inputs)('%s', async (_input, block, words, lands) => {
        const found = await written(block, words);
        for (const [path, wanted] of Object.entries(lands)) {
            const value = path.split('.').reduce(step, found);
            if (typeof wanted === 'number') expect(value, path).toBeCloseTo(wanted, 9);
            else expect(value, path).toEqual(wanted);
        }
    });
});

/** One word further along a path, into the value of what was said, the SI of what was measured. */
function step(from: unknown, word: string): unknown {
    const next = from instanceof Map ? from.get(word) : (from as Readonly<Record<string, unknown>>)[word];
    return plain(next);
}

function plain(found: unknown): unknown {
    if (typeof found !== 'object' || found === null) return found;
    if ('si' in found) return found.si;
    if (!('origin' in found) || !('value' in found)) return found;
    return found.value;
}
