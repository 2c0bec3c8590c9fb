import { beforeAll, describe, expect, test } from 'vitest';
import { sceneOfStrike, strikeWords } from '../../language/src/drawing/scene-strike.ts';
import { layOutStrike } from '../../language/src/drawing/sheet-strike.ts';
import { spoolRadius } from '../../language/src/physics/drag.ts';
import { strikesOn } from '../../language/src/plan/analyse/strikes.ts';
import { overlaps } from './boxes.ts';
import { type ExamplePlan, examplePlans } from './examples.ts';

let examples: readonly ExamplePlan[];
beforeAll(async () => {
    examples = await examplePlans();
});

const fished = () =>
    examples.flatMap(({ plan, findings }) =>
        plan.lines
            .filter(({ line }) => line.role === 'fished')
            .map((figures) => ({ plan, findings, figures, position: figures.line.position.name })),
    );

describe('a strike', () => {
    test('has the key moments of the computation, in either style, at every position', () => {
        let compared = 0;
        for (const { plan, figures, position } of fished()) {
            const strikes = strikesOn(figures, plan.plan)!;
            for (const style of ['direct', 'drop-back'] as const) {
                const strike = style === 'direct' ? strikes.direct : strikes.dropBack;
                const scene = sceneOfStrike(plan, { position, style });
                if (!strike.known) {
                    expect(scene.strike).toBeUndefined();
                    expect(scene.unknown).toContain(strike.reason);
                    continue;
                }
                const { moments, peak, time, hook } = scene.strike!;
                expect(moments.map(({ words: _words, ...moment }) => moment)).toEqual(strike.value.moments);
                expect(peak).toBe(strike.value.peak);
                expect(time).toHaveLength(201);
                expect(time.at(-1)).toBe(10);
                expect(hook[100]).toBeCloseTo(strike.value.series![100]!.hook, 2);
                compared++;
            }
        }
        expect(compared).toBeGreaterThan(20);
    });

    test('draws drag by brake torque over radius as the spool empties', () => {
        const { plan, figures, position } = fished().find(
            ({ figures: { line } }) => line.outfit?.value.reel?.arbor,
        )!;
        const { spool } = sceneOfStrike(plan, { position });
        const { full, arbor, capacity } = figures.line.outfit!.value.reel!;
        const reel = { fullRadius: full!.si / 2, arborRadius: arbor!.si / 2, capacity: capacity!.length.si };
        for (const { off, force } of spool!.curves) {
            for (const [index, metres] of off.entries()) {
                const radius = spoolRadius(reel, Math.max(0, reel.capacity - metres))!;
                expect(force[index]!).toBeCloseTo((force[0]! * reel.fullRadius) / radius, 6);
            }
            expect(force.at(-1)! / force[0]!).toBeCloseTo(full!.si / arbor!.si, 6);
        }
    });

    test('says loads in the author’s unit and shares of class beside them', () => {
        const words = strikeWords(
            sceneOfStrike(examples.find(({ name }) => name === 'slow-baits')!.plan),
        ).join('\n');
        expect(words).toMatch(/hooked drag [\d.]+ lb, \d+ % of class/);
        expect(words).not.toMatch(/\d kg/);
    });

    test('tells the peak with what a fish that nobody has met leaves open of it', () => {
        const words = fished()
            .map(({ plan, position }) => sceneOfStrike(plan, { position }))
            .filter(({ strike }) => strike)
            .map((scene) => strikeWords(scene).join('\n'));
        expect(words.length).toBeGreaterThan(10);
        for (const each of words)
            expect(each).toMatch(
                /At most [\d.]+ (kg|lb) \([\d.]+ \1 to [\d.]+ \1\) at the hook in ten seconds\./,
            );
    });

    test('says in a sentence what is missing', () => {
        const { plan } = examples.find(({ name }) => name === 'slow-baits')!;
        const { outfit: _, ...bare } = plan.lines[0]!.line;
        const first = { ...plan.lines[0]!, line: bare };
        expect(sceneOfStrike({ ...plan, lines: [first] }).unknown.length).toBeGreaterThan(0);
        expect(sceneOfStrike(plan, { position: 'centre tower' }).unknown).toEqual([
            'The plan fishes no centre tower.',
        ]);
        expect(sceneOfStrike({ ...plan, lines: [] }).unknown).toEqual(['The plan fishes no line.']);
    });

    test('goes over a wire as it is, and stays small', () => {
        for (const { plan, findings, position } of fished()) {
            const scene = sceneOfStrike(plan, { position }, findings);
            const wire = JSON.stringify(scene);
            expect(JSON.parse(wire)).toEqual(scene);
            expect(wire.length).toBeLessThan(40_000);
        }
    });
});

test('a strike on a sheet keeps its labels apart, in both styles', () => {
    let looked = 0;
    for (const { plan, findings, position } of fished()) {
        for (const style of ['direct', 'drop-back'] as const) {
            const sheet = layOutStrike(sceneOfStrike(plan, { position, style }, findings), 2100);
            expect(overlaps(sheet.moments)).toEqual([]);
            const ends = (labels: typeof sheet.ends) =>
                labels.map(({ lines, x, y }) => ({
                    x,
                    y: y - (lines.length * 29) / 2,
                    width: 300,
                    height: lines.length * 29,
                }));
            expect(overlaps(ends(sheet.levels))).toEqual([]);
            expect(overlaps(ends(sheet.ends))).toEqual([]);
            for (const { x, width } of sheet.moments) {
                expect(x).toBeGreaterThanOrEqual(0);
                expect(x + width).toBeLessThanOrEqual(2100);
            }
            looked += sheet.moments.length;
        }
    }
    expect(looked).toBeGreaterThan(60);
});

test('the strikes of the examples are what they were', () => {
    const seen = fished().map(({ plan, position }) => {
        const { strike, levels, unknown } = sceneOfStrike(plan, { position });
        return [
            `${plan.plan.name}, ${position}`,
            strike?.moments.map(({ name, time, hook, lineOff }) =>
                [name, time, hook, lineOff].map(short).join(' '),
            ),
            levels.map(({ words }) => words),
            unknown,
        ];
    });
    expect(seen).toMatchSnapshot();
});

function short(value: string | number): string {
    return typeof value === 'number' ? value.toFixed(1) : value;
}
