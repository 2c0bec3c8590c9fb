import { describe, expect, test } from 'vitest';
import { turnsInSteps, withTurns } from '../../language/src/plan/analyse/turns.ts';
import type { AnalysedPlan, TurnFigures } from '../../language/src/plan/figures.ts';
import { limitWords } from '../../language/src/plan/turn-words.ts';
import { sentencesOf } from '../../language/src/reports/figures-sentences.ts';
import { units } from '../../language/src/units/unit.ts';
import { checkText } from './marked.ts';

const boat = `boat tern "Tern" {
    beam 3.6 m
    waterline 9 m
    flat clip { ahead 0.3 m  out 1.4 m  up 2.4 m }
    outriggers {
        length 6 m
        foot { ahead 2 m  out 2 m  up 2 m }
        rise 40 deg
        sweep 90 deg
        halyards 3 m, 5.5 m
    }
}
outfit fifty { line nylon { diameter 0.8 mm  class 24 kg } }
lure ink "Ink" pusher { length 300 mm  head 40 mm  weight 250 g  pull 2.4 kg at 8 kn  runs 6 kn to 9 kn }
lure plug "Plug" diver { length 200 mm  head 30 mm  weight 120 g  pull 3 kg at 8 kn  runs 4 kn to 9 kn }
`;

async function turnsOf(lines: string, turn = 'turn within 80 m'): Promise<TurnFigures> {
    const sheet = await checkText(`${boat}spread day {\nboat tern\nspeed 8 kn\n${turn}\n${lines}\n}\n`);
    const { turns } = withTurns(sheet.plans[0]!);
    if (!turns?.known) throw new Error(`no turns: ${JSON.stringify(turns)}`);
    return turns.value;
}

const corners = (
    port: string,
    starboard: string,
) => `port short corner { outfit fifty  lure ink  back ${port} }
starboard long corner { outfit fifty  lure ink  back ${starboard} }`;

/** The checker has looked at the turns of the plan already: a change that nobody sees makes it a new question. */
function atAnotherSpeed(analysed: AnalysedPlan): AnalysedPlan {
    const { plan } = analysed;
    return { ...analysed, plan: { ...plan, speed: { ...plan.speed!, si: plan.speed!.si * 1.0001 } } };
}

describe('the turns of a plan', () => {
    test('mirror with the boat', async () => {
        const one = await turnsOf(corners('16 m', '24 m'));
        const other = await turnsOf(
            corners('24 m', '16 m')
                .replace('port short', 'port long')
                .replace('starboard long', 'starboard short'),
        );
        expect(other.starboard.noFoul.radius).toBeCloseTo(one.port.noFoul.radius!, 6);
        expect(other.port.pairs[0]!.clearance).toBeCloseTo(one.starboard.pairs[0]!.clearance, 6);
    });

    test('name the lure that stops working first, at less than its least running speed', async () => {
        const { port } = await turnsOf(corners('16 m', '24 m'));
        const { limit, radius, halfTurn } = port.allWorking;
        expect(limit?.kind).toBe('slow');
        expect(limit!.speed!).toBeLessThan((6 * 1852) / 3600);
        expect(halfTurn).toBeCloseTo((Math.PI * radius!) / ((8 * 1852) / 3600), 6);
    });

    test('are silent about pairs where the plan names no turn, and still know the tightest clean one', async () => {
        const { port, asked } = await turnsOf(corners('16 m', '24 m'), '');
        expect(asked).toBeUndefined();
        expect(port.pairs).toEqual([]);
        expect(port.noFoul.radius).toBeGreaterThan(0);
    });

    test('follow a diver as a chain, and say how far a taut line would have been out', async () => {
        const { port } = await turnsOf(`port short corner { outfit fifty  lure plug  back 20 m }
            starboard long corner { outfit fifty  lure ink  back 24 m }`);
        const [plug, ink] = port.lures;
        expect(ink).toMatchObject({ model: 'taut' });
        expect(plug).toMatchObject({ model: 'chain' });
        expect(plug!.astray).toBeGreaterThan(0);
        expect(plug!.astray).toBeLessThan(20);
        expect(plug!.slowest).toBeGreaterThan(0);
    });

    test('come a few milliseconds at a time, for whoever listens to others in between', async () => {
        const sheet = await checkText(
            `${boat}spread day {\nboat tern\nspeed 7.9 kn\nturn within 81 m\n${corners('17 m', '25 m')}\n}\n`,
        );
        const plan = atAnotherSpeed(sheet.plans[0]!);
        const steps = turnsInSteps(plan);
        let pauses = 0;
        while (!steps.next().done) pauses++;
        expect(pauses).toBeGreaterThan(100);
        // Known by then: only the sides are told apart.
        const again = turnsInSteps(plan);
        expect(again.next().done).toBe(false);
        expect(again.next()).toMatchObject({ done: true, value: { known: true } });
    });

    test('of seven lines under water never hold up who waits, and what is left off is not remembered', async () => {
        const seven = ['short corner', 'long corner', 'short rigger', 'long rigger'].flatMap((name, index) =>
            (index === 3 ? ['port'] : ['port', 'starboard']).map(
                (side, other) =>
                    `${side} ${name} { outfit fifty  lure plug  back ${14 + 9 * index + 3 * other} m }`,
            ),
        );
        const sheet = await checkText(
            `${boat}spread day {\nboat tern\nspeed 6.3 kn\nturn within 71 m\n${seven.join('\n')}\n}\n`,
        );
        const plan = atAnotherSpeed(sheet.plans[0]!);
        const left = turnsInSteps(plan);
        for (let step = 0; step < 60; step++) expect(left.next().done).toBe(false);
        left.return(undefined as never);

        const steps = turnsInSteps(plan);
        const slices: number[] = [];
        for (;;) {
            const began = process.cpuUsage();
            const step = steps.next();
            const { user, system } = process.cpuUsage(began);
            slices.push((user + system) / 1000);
            if (!step.done) continue;
            if (!step.value.known) throw new Error(step.value.reason);
            const { lures } = step.value.value.port;
            expect(lures).toHaveLength(7);
            for (const { model, slowest } of lures) {
                expect(model).toBe('chain');
                expect(slowest).toBeGreaterThan(0);
            }
            break;
        }
        // Fourteen chains, forty-two pairs of them: hundreds of slices. No slice is more than one search, which is bounded
        // by its work; here only that the usual one is short, since a busy machine may stretch any single one.
        expect(slices.length).toBeGreaterThan(200);
        expect(slices.sort((a, b) => a - b)[slices.length >> 1]!).toBeLessThan(30);
    });

    test.each(['29 kn', '8 kn'])(
        'are sought down to the tightest that a boat can be held to, when the plan asks for a tighter: %s',
        async (speed) => {
            const [sheet] = (
                await checkText(
                    `${boat}spread day {\nboat tern\nspeed ${speed}\nturn within 3 m\n${corners('16 m', '24 m')}\n}\n`,
                )
            ).plans;
            const { turns, tightestHeld } = withTurns(sheet!);
            if (!turns?.known || !tightestHeld?.known) throw new Error('the plan has turns');
            expect(turns.value.asked).toBeUndefined();
            expect(turns.value.port.pairs).toEqual([]);
            expect(turns.value.port.noFoul.radius).toBeGreaterThanOrEqual(tightestHeld.value);
        },
    );

    test('are not sought at a speed that no lure is towed at', async () => {
        const sheet = await checkText(
            `${boat}spread day {\nboat tern\nspeed 118 kn\nturn within 90 m\n${corners('16 m', '24 m')}\n}\n`,
        );
        expect(withTurns(sheet.plans[0]!).turns).toMatchObject({
            known: false,
            reason: '`speed 118 kn` cannot be used.',
        });
    });

    test('stay within a bounded search up to the hardest turn that is sought', async () => {
        const sheet = await checkText(
            `${boat}spread day {\nboat tern\nspeed 29 kn\nturn within 48 m\n${corners('16 m', '24 m')}\n}\n`,
        );
        const { turns } = withTurns(sheet.plans[0]!);
        expect(turns?.known && turns.value.fanPairs).toBeLessThan(100_000);
    });

    test.each([
        ['no speed', 'boat tern', 'The plan has no `speed`.'],
        [
            'no boat',
            'speed 8 kn',
            'No line of the plan has both a tow point (`from`) and a distance (`back`).',
        ],
    ])('say why there are none: %s', async (_what, has, reason) => {
        const sheet = await checkText(`${boat}spread day {\n${has}\n${corners('16 m', '24 m')}\n}\n`);
        expect(withTurns(sheet.plans[0]!).turns).toEqual({ known: false, reason });
    });
});

describe('natural baits', () => {
    const baits = `bait mullet "Mullet" { kind dead  length 280 mm  weight 220 g  runs 5 kn to 7 kn }
bait squid "Squid" { kind dead  length 250 mm  weight 200 g }
`;
    const plan = async (lines: string) => {
        const sheet = await checkText(
            `${boat}${baits}spread slow {\nboat tern\nspeed 6 kn\nturn within 80 m\n${lines}\n}\n`,
        );
        return withTurns(sheet.plans[0]!);
    };
    const at = (position: string, bait: string, back: number) =>
        `${position} { outfit fifty  bait ${bait}  back ${back} m }`;

    test('have their own least speed, which a turn is judged by', async () => {
        const { turns } = await plan(at('port short corner', 'mullet', 40));
        if (!turns?.known) throw new Error('no turns');
        const { port, leastKnown, leastUnknown } = turns.value;
        expect(port.allWorking.limit?.kind).toBe('slow');
        expect(port.allWorking.limit!.speed!).toBeLessThan((5 * 1852) / 3600);
        expect([leastKnown.length, leastUnknown.length]).toEqual([1, 0]);
    });

    test('of which nobody said how slowly they work are named, and nothing is promised of them', async () => {
        const analysed = await plan(at('port short corner', 'squid', 40));
        const { turns } = analysed;
        if (!turns?.known) throw new Error('no turns');
        expect(turns.value.leastUnknown.map(({ line }) => line.position.name)).toEqual(['port short corner']);
        const said = sentencesOf(analysed, units.m).join('\n');
        expect(said).not.toContain('works down to');
        expect(said).toContain(
            'Whether port short corner still works in a turn is not known: say from which speed it `runs`.',
        );
    });

    test('settle behind the boat, from an estimate of their drag that is told as one', async () => {
        const [line] = (await plan(at('port short corner', 'squid', 30))).lines;
        expect(line!.rest.known && line!.rest.standing).toBe('estimated');
        expect(line!.rest.known && line!.rest.leaning.join(' ')).toContain('bait');
        expect(line!.pull.known && line!.pull.standing).toBe('estimated');
    });
});

describe('in sentences', () => {
    test('a turn that no lure bears is said, with what stops', async () => {
        const sheet = await checkText(
            `${boat}lure fast "Fast" bullet { length 300 mm  head 30 mm  weight 200 g  pull 1 kg at 8 kn  runs 8 kn to 16 kn }\nspread day {\nboat tern\nspeed 8 kn\nturn within 80 m\nport short corner { outfit fifty  lure fast  back 60 m }\n}\n`,
        );
        const said = sentencesOf(withTurns(sheet.plans[0]!), units.m);
        expect(
            said.some((each) => /^No turn to port that was looked at keeps every lure working: /.test(each)),
        ).toBe(true);
    });

    test.each([
        ['3 m', /A boat cannot be held to the 3 m that the plan turns within \(~\d m is the tightest/],
        ['2 m', /^`turn within 2 m` cannot be used: the pairs and lures of that turn are not computed\./m],
    ])('a turn within %s has neither pairs nor lures, and it is said why', async (radius, reason) => {
        const sheet = await checkText(
            `${boat}spread day {\nboat tern\nspeed 8 kn\nturn within ${radius}\n${corners('16 m', '24 m')}\n}\n`,
        );
        expect(sentencesOf(withTurns(sheet.plans[0]!), units.m).join('\n')).toMatch(reason);
    });

    test('both tightest turns are whole metres, with their limit and their seconds', async () => {
        const sheet = await checkText(
            `${boat}spread day {\nboat tern\nspeed 8 kn\nturn within 80 m\n${corners('16 m', '24 m')}\n}\n`,
        );
        const analysed = withTurns(sheet.plans[0]!);
        if (!analysed.turns?.known) throw new Error('no turns');
        const { allWorking } = analysed.turns.value.port;
        expect(allWorking.radius! % 1).toBeCloseTo(0, 9);
        expect(sentencesOf(analysed, units.m)).toContain(
            `To port every lure works down to ~${Math.round(allWorking.radius!)} m (a half turn takes ${Math.round(allWorking.halfTurn!)} s); tighter, ${limitWords(allWorking.limit!)}.`,
        );
    });
});

describe('what an estimate leaves open', () => {
    const figuresOf = async (lure: string) => {
        const sheet = await checkText(
            `${boat}method firm "Firm" { style direct  hooked 6 kg }\nlure own "Own" ${lure}\nspread day {\nboat tern\nmethod firm\nspeed 6 kn\nport short corner { outfit fifty  lure own  back 30 m  from flat clip  clip 3 kg }\n}\n`,
        );
        return sheet.plans[0]!.lines[0]!;
    };

    test('is a range of pull, lift and clip; a pull read at this speed has none', async () => {
        const guessed = await figuresOf('pusher { length 300 mm  head 40 mm  weight 250 g }');
        if (!guessed.pull.known || !guessed.rest.known || !guessed.clip?.known) throw new Error('unknown');
        const { low, high } = guessed.pull.range!;
        expect(high / low).toBeCloseTo(2.5 / 1.3, 6);
        const { range, tension } = guessed.rest.value;
        expect(range!.towPoint.low).toBeLessThan(tension.towPoint);
        expect(range!.towPoint.high).toBeGreaterThan(tension.towPoint);
        // A taut line pulls up in proportion to its pull.
        expect(range!.lift.high / range!.lift.low).toBeCloseTo(high / low, 0);
        const { ratio, ratioRange, spare, setting, towing, belowHooked } = guessed.clip.value;
        expect(ratioRange!.low).toBeLessThan(ratio);
        expect(ratioRange!.high / ratioRange!.low).toBeCloseTo(high / low, 6);
        expect(spare).toBeCloseTo(setting.si - towing, 9);
        expect(belowHooked! / 9.80665).toBeCloseTo(3, 6);
        const read = await figuresOf('pusher { length 300 mm  weight 250 g  pull 2 kg at 6 kn }');
        expect(read.pull.known && [read.pull.standing, read.pull.range]).toEqual(['measured', undefined]);
        expect(read.rest.known && read.rest.value.range).toBeUndefined();
    });

    test('a diver runs deep, by an estimate of its lip: between its shallowest and deepest', async () => {
        const diver = await figuresOf('diver { length 200 mm  weight 120 g  pull 3 kg at 6 kn }');
        if (!diver.rest.known) throw new Error(diver.rest.reason);
        const { depth, range, atSurface } = diver.rest.value;
        expect(atSurface).toBe(false);
        expect(range!.depth!.low).toBeLessThan(depth!);
        expect(range!.depth!.high).toBeGreaterThan(depth!);
        expect(diver.rest.leaning.join(' ')).toContain('lip');
        const pusher = await figuresOf('pusher { length 200 mm  weight 120 g  pull 3 kg at 6 kn }');
        expect(pusher.rest.known && pusher.rest.value.depth).toBeUndefined();
    });
});
