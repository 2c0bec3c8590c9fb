import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stiffness } from '../../language/src/physics/coefficients.ts';
import { KNOT, STANDARD_GRAVITY } from '../../language/src/physics/constants.ts';
import {
    FISH_BETWEEN,
    type StrikeMoment,
    type StrikeQuestion,
    strike,
    strikeBetween,
    UNKNOWN_FISH,
} from '../../language/src/physics/strike.ts';
import { integrate } from './integrate.ts';

const kg = STANDARD_GRAVITY;
const nylon = { out: 50, diameter: 0.9e-3, modulus: 2.5e9 };
const rate = stiffness(nylon.diameter, nylon.modulus);

/** Light drag on 24 kg tackle, a rigger line that drops 10 m back. */
const light: StrikeQuestion = {
    style: 'drop-back',
    clip: { setting: 6 * kg, slack: 10 },
    pull: 3 * kg,
    line: nylon,
    drag: { set: 2 * kg, hooked: 5.5 * kg },
    wait: 2.5,
    speed: 8 * KNOT,
};

const answerTo = (question: StrikeQuestion) => {
    const answer = strike(question);
    if (answer.kind !== 'strike') throw new Error(answer.reason);
    const at = (name: StrikeMoment['name']) => answer.moments.find((moment) => moment.name === name);
    return { ...answer, at };
};

describe('a fish that nothing slows, by hand', () => {
    const fish = { speed: 2, pull: 1e9 };
    const apart = light.speed + fish.speed;
    const { at, series } = answerTo({ ...light, fish, line: nylon });

    test('the clip opens when the line has stretched to its setting', () => {
        expect(at('clip opens')!.time).toBeCloseTo((3 * kg * 50) / rate / apart, 2);
    });

    test('the line is tight when boat and fish have taken the slack and the stretch that the clip let go', () => {
        const slack = 10 + (6 * kg * 50) / rate;
        expect(at('line tight')!.time - at('clip opens')!.time).toBeCloseTo(slack / apart, 2);
    });

    test('the reel slips when the line has stretched to the set drag, and gives what they draw apart', () => {
        const slips = at('reel slips')!;
        expect(slips.time - at('line tight')!.time).toBeCloseTo((2 * kg * 50) / rate / apart, 2);
        expect(at('push')!.time - at('clip opens')!.time).toBeCloseTo(2.5, 6);
        const later = series.find(({ time }) => time > slips.time && time < at('push')!.time)!;
        expect(later.lineOff).toBeCloseTo(apart * (later.time - slips.time), 1);
        expect(later.reel).toBeCloseTo(2 * kg, 6);
    });

    test('in the end the reel stands at hooked drag and line runs at the speed at which they part', () => {
        const [before, last] = series.slice(-2);
        expect(last!.reel).toBeCloseTo(5.5 * kg, 6);
        expect((last!.lineOff - before!.lineOff) / 0.05).toBeCloseTo(apart, 6);
        expect(at('hooked drag')!.time).toBeGreaterThanOrEqual(at('push')!.time + 0.5);
    });

    test('the water adds its skin friction on the line that the fish draws', () => {
        const last = series.at(-1)!;
        const water = 0.5 * 1025 * Math.PI * nylon.diameter * 0.005 * (50 + last.lineOff) * fish.speed ** 2;
        expect(last.hook - last.reel).toBeCloseTo(water, 2);
    });
});

test('against a fish that tires with load, the tension follows its differential equation', () => {
    // A thin line, whose friction in the water is negligible, that holds: dT/dt = (EA/L)·(V + v·(1 − T/P)).
    const fish = { speed: 3, pull: 400 };
    const thread = { out: 60, diameter: 3e-5, modulus: 9e11 };
    const { series } = answerTo({
        ...light,
        clip: undefined,
        style: 'direct',
        pull: 0,
        speed: 1,
        line: thread,
        drag: { set: 1e4, hooked: 1e4 },
        fish,
    });
    const spring = stiffness(thread.diameter, thread.modulus) / thread.out;
    for (const time of [0.5, 1, 2, 5]) {
        const [expected] = integrate((_, [t]) => [spring * (1 + 3 * (1 - t! / 400))], 0, [0], time);
        expect(series.find((sample) => sample.time >= time - 1e-9)!.reel / expected!).toBeCloseTo(1, 2);
    }
});

describe('the two methods', () => {
    test('light drag of 2 kg, two to three seconds, then 5 to 6 kg, plays out as crews tell it', () => {
        // Common practice, no source.
        const { moments, at, series, peak } = answerTo(light);
        expect(moments.map(({ name }) => name)).toEqual([
            'bite',
            'clip opens',
            'line tight',
            'reel slips',
            'push',
            'hooked drag',
        ]);
        expect(at('clip opens')!.time).toBeLessThan(0.5);
        const stall = at('line tight')!.time - at('clip opens')!.time;
        expect(stall).toBeGreaterThan(1);
        expect(stall).toBeLessThan(2.5);
        const light2 = series.filter(({ time }) => time > at('clip opens')!.time && time < at('push')!.time);
        for (const { reel } of light2) expect(reel).toBeLessThanOrEqual(2 * kg + 1e-9);
        expect(peak).toBeLessThan(24 * kg);
        expect(series.at(-1)!.reel).toBeCloseTo(5.5 * kg, 6);
    });

    test('direct, the reel stands at hooked drag from the bite and there is no push', () => {
        const { at, series } = answerTo({ ...light, style: 'direct' });
        expect(at('push')).toBeUndefined();
        expect(series.every(({ drag }) => drag === 5.5 * kg)).toBe(true);
        expect(at('hooked drag')!.time).toBe(at('reel slips')!.time);
        const patient = answerTo(light);
        expect(at('hooked drag')!.time).toBeLessThan(patient.at('hooked drag')!.time);
        expect(series.at(-1)!.lineOff).toBeLessThan(patient.series.at(-1)!.lineOff);
    });

    test('without a clip nothing falls slack, and the wait counts from the bite', () => {
        const { moments, at, series } = answerTo({ ...light, clip: undefined });
        expect(moments.map(({ name }) => name)).toEqual(['bite', 'reel slips', 'push', 'hooked drag']);
        expect(at('push')!.time).toBeCloseTo(2.5, 6);
        expect(series.every(({ slack }) => slack === 0)).toBe(true);
    });

    test('a clip set above all that a weak fish and the boat can pull stays shut', () => {
        const { moments } = answerTo({
            ...light,
            clip: { setting: 400, slack: 10 },
            speed: 0,
            fish: { speed: 2, pull: 300 },
        });
        expect(moments.map(({ name }) => name)).toEqual(['bite']);
    });

    test('a fish that swims at the boat faster than it runs leaves the line slack', () => {
        const { at, series } = answerTo({ ...light, fish: { speed: -6, pull: 300 } });
        expect(at('line tight')).toBeUndefined();
        expect(series.at(-1)!.hook).toBe(0);
    });

    test('a longer stall gives the fish more time: more slack, a later hook', () => {
        const short = answerTo({ ...light, clip: { setting: 60, slack: 1.2 } });
        const long = answerTo({ ...light, clip: { setting: 60, slack: 12 } });
        expect(long.at('line tight')!.time).toBeGreaterThan(short.at('line tight')!.time + 1);
    });
});

describe('over what nobody measured', () => {
    test('the peak is at most hooked drag and the skin friction of the line at the fastest fish’s speed', () => {
        const { peak } = strikeBetween(light, [light.pull])!;
        const [slow, fast] = FISH_BETWEEN.map((fish) => answerTo({ ...light, fish }));
        expect(peak.low).toBe(Math.min(slow!.peak, fast!.peak, answerTo(light).peak));
        expect(peak.high).toBe(Math.max(slow!.peak, fast!.peak, answerTo(light).peak));
        expect(peak.low).toBeGreaterThanOrEqual(light.drag.hooked);
        // ½·ρ·π·d·c·v² a metre of line; by the end no more is out than the fish and the boat have drawn apart.
        const drawn = nylon.out + 10 * (light.speed + FISH_BETWEEN[1]!.speed);
        const friction = 0.5 * 1025 * Math.PI * nylon.diameter * 0.005 * FISH_BETWEEN[1]!.speed ** 2 * drawn;
        expect(peak.high).toBeGreaterThan(light.drag.hooked * 1.05);
        expect(peak.high).toBeLessThan(light.drag.hooked + friction);
    });

    test('the slack is gone between when a fast and when a slow fish have drawn it out with the boat', () => {
        const { times } = strikeBetween(light, [light.pull])!;
        // What the clip lets go: its slack, and the stretch of the line behind it.
        const slack = light.clip!.slack + (light.clip!.setting * nylon.out) / rate;
        const [slow, fast] = FISH_BETWEEN.map(({ speed }) => slack / (light.speed + speed));
        const tight = times.get('line tight')!;
        const opened = times.get('clip opens')!;
        expect(tight.low - opened.low).toBeCloseTo(fast!, 2);
        expect(tight.high - opened.high).toBeCloseTo(slow!, 2);
        expect(tight.low).toBeLessThan(answerTo(light).at('line tight')!.time);
        expect(tight.high).toBeGreaterThan(answerTo(light).at('line tight')!.time);
    });

    test('a pull that reaches over the clip’s setting opens it at once; figures that cannot be have no range', () => {
        const { times } = strikeBetween(light, [2 * kg, 7 * kg])!;
        expect(times.get('clip opens')!.low).toBeLessThan(0.01);
        expect(times.get('clip opens')!.high).toBeGreaterThan(0.02);
        expect(strikeBetween({ ...light, pull: -1 }, [light.pull])).toBeUndefined();
        expect(strikeBetween(light, [-1])).toBeUndefined();
    });
});

describe('properties', () => {
    const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true });
    const questions = fc.record({
        style: fc.constantFrom('direct' as const, 'drop-back' as const),
        clip: fc.option(fc.record({ setting: positive(300), slack: positive(20) }), { nil: undefined }),
        pull: positive(100),
        line: fc.record({
            out: positive(150),
            diameter: fc.double({ min: 2e-4, max: 2e-3, noNaN: true }),
            modulus: fc.constantFrom(2.5e9, 5e10),
        }),
        drag: fc.record({ set: positive(100), hooked: positive(400) }),
        wait: positive(8),
        push: positive(2),
        speed: positive(8),
        fish: fc.record({ speed: fc.double({ min: -8, max: 9, noNaN: true }), pull: positive(2000) }),
    });

    test('no tension is negative, none at the reel is above its drag, line only goes out, moments come in order', () => {
        fc.assert(
            fc.property(questions, (question) => {
                const { series, moments, peak } = answerTo(question);
                let off = 0;
                for (const { hook, reel, drag, slack, lineOff } of series) {
                    expect(hook).toBeGreaterThanOrEqual(0);
                    expect(reel).toBeLessThanOrEqual(drag + 1e-9);
                    expect(slack).toBeGreaterThanOrEqual(0);
                    expect(lineOff).toBeGreaterThanOrEqual(off);
                    expect(hook).toBeLessThanOrEqual(peak);
                    if (slack > 0) expect(hook).toBe(0);
                    off = lineOff;
                }
                expect(series).toHaveLength(201);
                const times = moments.map(({ time }) => time);
                expect([...times].sort((a, b) => a - b)).toEqual(times);
            }),
            { numRuns: 40 },
        );
    });

    test('figures that cannot be are named, wild ones never become what is not a number', () => {
        const wild = fc.double();
        const any = fc.record({
            style: fc.constantFrom('direct' as const, 'drop-back' as const),
            pull: wild,
            line: fc.record({ out: wild, diameter: wild, modulus: wild }),
            drag: fc.record({ set: wild, hooked: wild }),
            wait: wild,
            speed: wild,
            fish: fc.record({ speed: wild, pull: wild }),
        });
        fc.assert(
            fc.property(any, (question) => {
                const answer = strike(question);
                if (answer.kind === 'bad-input') expect(answer.reason).not.toBe('');
                else expect(Number.isFinite(answer.peak)).toBe(true);
            }),
            { numRuns: 500 },
        );
        expect(strike({ ...light, drag: { set: 0, hooked: 50 } }).kind).toBe('bad-input');
        expect(strike({ ...light, speed: Number.NaN }).kind).toBe('bad-input');
        expect(strike({ ...light, fish: { ...UNKNOWN_FISH, pull: 0 } }).kind).toBe('bad-input');
    });
});
