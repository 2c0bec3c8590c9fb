import { beforeAll, describe, expect, test } from 'vitest';
import {
    sceneOfTurn,
    type TurnScene,
    turnToLookAt,
    turnWords,
} from '../../language/src/drawing/scene-turn.ts';
import { layOutTurn } from '../../language/src/drawing/sheet-turn.ts';
import { turnInTime } from '../../language/src/plan/analyse/turn-in-time.ts';
import { overlaps } from './boxes.ts';
import { type ExamplePlan, examplePlans } from './examples.ts';

let examples: readonly ExamplePlan[];
beforeAll(async () => {
    examples = await examplePlans();
});

const named = (name: string) => examples.find((each) => each.name === name)!;

function sceneOf(
    { plan, findings }: ExamplePlan,
    wishes: Parameters<typeof turnToLookAt>[1] = {},
): TurnScene {
    const chosen = turnToLookAt(plan, wishes);
    return sceneOfTurn(plan, chosen, turnInTime(plan, chosen.side, chosen.radius), findings);
}

describe('a turn in time', () => {
    test('comes as near as the analysis says, at the moment that it says, on both sides', () => {
        let compared = 0;
        for (const example of examples) {
            const turns = example.plan.turns;
            if (!turns?.known || !turns.value.asked) continue;
            for (const side of ['port', 'starboard'] as const) {
                const scene = sceneOf(example, { side });
                const [first] = turns.value[side].pairs;
                expect(scene.radius).toBe(turns.value.asked.si);
                expect(scene.nearest?.least).toBe(first!.clearance);
                expect(scene.nearest?.time).toBe(first!.time);
                expect(Math.min(...scene.nearest!.distance)).toBeCloseTo(first!.clearance, 2);
                compared++;
            }
        }
        expect(compared).toBeGreaterThan(8);
    });

    test('takes π·radius/speed and leads along a circle of that radius', () => {
        const example = named('bank-settled');
        const { steadyFrom, boat, times } = sceneOf(example, { side: 'port', radius: 60 });
        expect(steadyFrom).toBeCloseTo((Math.PI * 60) / example.plan.plan.speed!.si, 9);
        for (const [frame, time] of times.entries()) {
            if (time > steadyFrom) break;
            const [x, y] = [boat[3 * frame]!, boat[3 * frame + 1]!];
            expect(Math.hypot(x, y - 60)).toBeCloseTo(60, 1);
        }
    });

    test('starts with every lure where the analysis has it at rest', () => {
        const example = named('bank-settled');
        const scene = sceneOf(example);
        expect(scene.lines.length).toBe(6);
        for (const { position, path, points } of scene.lines) {
            const { astern, lateral } = example.plan.lines.find(
                ({ line }) => line.position.name === position,
            )!;
            if (!astern.known || !lateral.known) throw new Error('The example places all its lines.');
            expect(path[2 * points - 2]).toBeCloseTo(-astern.value, 1);
            expect(path[2 * points - 1]).toBeCloseTo(lateral.value, 1);
        }
    });

    test('has a lure run as fast as its tow point when the helm goes over, and marks the one that then stops working', () => {
        const example = named('bank-settled');
        const scene = sceneOf(example, { side: 'starboard', radius: 60 });
        const speed = example.plan.plan.speed!.si;
        const shotgun = scene.lines.find(({ position }) => position.endsWith('shotgun'))!;
        for (const { position, speed: each } of scene.lines) {
            const { towPoint } = example.plan.lines.find(({ line }) => line.position.name === position)!;
            // Without a ramp the tow point at once runs on a circle of its own, and the line is still straight astern.
            const own = towPoint.known ? speed * (1 + towPoint.value[1] / 60) : Number.NaN;
            expect(Math.abs(each[0]! - own)).toBeLessThan(0.02);
        }
        expect(Math.min(...shotgun.speed)).toBeLessThan(0.5 * speed);
        expect(scene.trouble).toMatchObject({ kind: 'slow', positions: [shotgun.position], grave: true });
    });

    test('is a mirror of itself for a boat that is mirrored', () => {
        const [day, afternoon] = [named('bank-settled'), named('bank-afternoon')];
        const one = sceneOf(day, { side: 'port', radius: 100 });
        const other = sceneOf(afternoon, { side: 'starboard', radius: 100 });
        expect(other.nearest!.least).toBeCloseTo(one.nearest!.least, 6);
        expect(other.extent.from[1]).toBeCloseTo(-one.extent.to[1], 1);
    });

    test('goes over a wire as it is, and stays small', () => {
        for (const example of examples) {
            const scene = sceneOf(example);
            const wire = JSON.stringify(scene);
            expect(JSON.parse(wire)).toEqual(scene);
            expect(wire.length).toBeLessThan(80_000);
            for (const { path, points, speed } of scene.lines) {
                expect(path).toHaveLength(2 * points * scene.times.length);
                expect(speed).toHaveLength(scene.times.length);
                expect(path.every(Number.isFinite)).toBe(true);
            }
        }
    });

    test('says in a sentence why there is none', () => {
        const { turns } = named('slips').plan;
        const reason = turns!.known ? '' : turns!.reason;
        expect(reason).toMatch(/speed/);
        const scene = sceneOf(named('slips'));
        expect(scene.times).toEqual([]);
        expect(scene.heading).toBe('No turn can be shown.');
        expect(scene.unknown).toEqual([reason]);
        expect(turnWords(scene).join(' ')).toContain(reason);
    });

    test('chooses the turn that the plan allows, else the tightest clean one, to the side that needs more room', () => {
        const { plan } = named('slow-baits');
        const turns = plan.turns!.known ? plan.turns!.value : undefined;
        expect(turnToLookAt(plan)).toMatchObject({ side: 'port', chosen: 'asked' });
        const { turn: _turn, ...unsaid } = plan.plan;
        const { asked: _asked, ...found } = turns!;
        const free = { ...plan, plan: unsaid, turns: { ...plan.turns!, value: found } } as typeof plan;
        const chosen = turnToLookAt(free, { side: 'starboard' });
        expect(chosen.chosen).toBe('clean');
        expect(chosen.radius).toBe(
            Math.max(found.starboard.noFoul.radius!, found.starboard.allWorking.radius!),
        );
    });
});

describe('a turn on a sheet', () => {
    test('keeps its labels apart and on the paper', () => {
        for (const example of examples) {
            const sheet = layOutTurn(sceneOf(example), 2100);
            const boxes = sheet.labels.map(({ box }) => box);
            expect(overlaps(boxes)).toEqual([]);
            for (const { x, y, width } of boxes) {
                expect(x).toBeGreaterThan(0);
                expect(x + width).toBeLessThanOrEqual(2100);
                expect(y).toBeGreaterThan(0);
            }
        }
    });

    test('draws both parts to the scale that it names', () => {
        const { water, detail } = layOutTurn(sceneOf(named('bank-settled')), 2100);
        for (const part of [water!, detail!]) {
            const [ax, ay] = part.toPage([0, 0]);
            const [bx, by] = part.toPage([30, 40]);
            expect(Math.hypot(ax - bx, ay - by)).toBeCloseTo((50 * 10_000) / part.denominator, 6);
        }
    });
});

test('the turns of the examples are what they were', () => {
    const seen = examples.map((example) => {
        const { radius, side, clean, moments, extent, steadyFrom, nearest } = sceneOf(example);
        return {
            plan: example.name,
            side,
            radius,
            clean: [clean.port.words, clean.starboard.words],
            steadyFrom: Number(steadyFrom.toFixed(2)),
            moments: moments.map(({ time, words }) => `${time.toFixed(1)} ${words}`),
            extent: [...extent.from, ...extent.to].map((metres) => Math.round(metres)),
            nearest: nearest && [nearest.words, Number(nearest.least.toFixed(3))],
        };
    });
    expect(seen).toMatchSnapshot();
});
