import { describe, expect, test } from 'vitest';
import type { Crest, DrawnLure, Face, SceneElement } from '../../language/src/drawing/elements.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { dense, diamond, finding, makePlan, mirrored, seven } from './plans.ts';

function ofRole<R extends SceneElement['role']>(elements: readonly SceneElement[], role: R) {
    return elements.filter((element): element is Extract<SceneElement, { role: R }> => element.role === role);
}

describe('a scene from above', () => {
    test('puts every lure and tow point where the analysis has it', () => {
        for (const made of [diamond, seven, dense]) {
            const analysed = makePlan(made);
            const scene = sceneFromAbove(analysed);
            for (const { line, astern, lateral, towPoint } of analysed.lines) {
                if (line.role === 'standby' || !astern.known || !lateral.known || !towPoint.known) continue;
                const own = scene.elements.filter(({ position }) => position === line.position.name);
                expect(ofRole(own, 'lure')[0]?.point).toEqual([-astern.value, lateral.value]);
                expect(ofRole(own, 'tow point')[0]?.point).toEqual(towPoint.value.slice(0, 2));
            }
            const lures = ofRole(scene.elements, 'lure').length;
            expect(lures).toBe(made.lines.filter(({ role }) => role !== 'standby').length);
        }
    });

    test('draws crests that satisfy the closed form of Kelvin’s wake, and end at its wedge or at the edge shown', () => {
        const analysed = makePlan(seven);
        if (!analysed.waves.known) throw new Error('The plan has a speed.');
        const { firstCrest, wavelength } = analysed.waves.value;
        const scene = sceneFromAbove(analysed);
        const crests = ofRole(scene.elements, 'crest') as Crest[];
        expect(crests.map(({ wave }) => wave)).toEqual([1, 2, 3, 4, 5, 6, 7]);
        for (const { wave, astern, curve } of crests) {
            expect(astern).toBeCloseTo(firstCrest + (wave - 1) * wavelength, 9);
            let sampled = 0;
            for (const [x, y] of curve) {
                // Eliminating the angle from x = c·cos t·(1 + sin² t), y = c·cos² t·sin t (physics of ship waves,
                // Kelvin 1887): for u = sin t, u - u³ = |y|/c, and x follows.
                const u = rootOf(Math.abs(y) / astern);
                const onCurve = astern * Math.sqrt(1 - u * u) * (1 + u * u);
                // Points between samples lie on the chord, within a few centimetres.
                expect(Math.abs(-x - onCurve)).toBeLessThan(0.06);
                if (Math.abs(-x - onCurve) < 1e-9) sampled++;
                expect(Math.abs(y)).toBeLessThanOrEqual(
                    Math.min(scene.extent.half, -x / Math.sqrt(8)) + 1e-9,
                );
            }
            expect(sampled).toBeGreaterThanOrEqual(curve.length - 2);
        }
    });

    test('shades the front of a wave: from the trough before it up to its crest, the lower third nearest the boat', () => {
        const analysed = makePlan(diamond);
        if (!analysed.waves.known) throw new Error('The plan has a speed.');
        const { firstCrest, wavelength } = analysed.waves.value;
        const faces = ofRole(sceneFromAbove(analysed).elements, 'face') as Face[];
        for (const { wave, outline, lower } of faces.filter(({ wave }) => wave > 1 && wave < 5)) {
            const crest = firstCrest + (wave - 1) * wavelength;
            const onTrack = (points: Face['outline']) =>
                points.filter(([, y]) => y === 0).map(([x]) => -x / wavelength);
            expect(Math.min(...onTrack(outline))).toBeCloseTo(crest / wavelength - 0.5, 9);
            expect(Math.max(...onTrack(outline))).toBeCloseTo(crest / wavelength, 9);
            expect(Math.min(...onTrack(lower))).toBeCloseTo(crest / wavelength - 0.5, 9);
            // A third of the way up a sine, trough to crest: acos(-1/3)/2π = 0.304 of a wave before the crest.
            expect(Math.max(...onTrack(lower))).toBeCloseTo(crest / wavelength - 0.304, 3);
        }
    });

    test('shows the whole hull at its length and beam', () => {
        const [hull] = ofRole(sceneFromAbove(makePlan(diamond)).elements, 'hull');
        const xs = hull!.outline.map(([x]) => x);
        const ys = hull!.outline.map(([, y]) => y);
        expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(10.8, 9);
        expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(3.6, 9);
    });

    test('of a mirrored plan is the mirrored scene', () => {
        for (const made of [diamond, seven, dense]) {
            const scene = sceneFromAbove(makePlan(made));
            const other = sceneFromAbove(makePlan(mirrored(made)));
            expect(other.extent).toEqual(scene.extent);
            const expected = scene.elements.map(mirrorOf).sort();
            expect(other.elements.map((element) => shapeOf(element)).sort()).toEqual(expected);
        }
    });

    test('tells for every element what it is and where the text says it', () => {
        const scene = sceneFromAbove(makePlan(seven));
        const ids = scene.elements.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        for (const { name, at } of scene.elements) {
            expect(name).toMatch(/^[A-Z].*\.$/);
            expect(at?.uri).toBe('file:///plan.spread');
        }
    });

    test('a lure leads to where the plan names it, its line to where the plan says how far back', () => {
        const analysed = makePlan(diamond);
        const scene = sceneFromAbove(analysed);
        for (const { line } of analysed.lines.filter(({ line }) => line.role === 'fished')) {
            const own = (id: string) => scene.elements.find((element) => element.id === id);
            expect(own(`lure:${line.position.name}`)?.at).toBe(line.lure?.origin.place);
            expect(own(`line:${line.position.name}`)?.at).toBe(
                (line.back?.kind === 'wave' ? line.back.wave : line.back?.distance)?.origin.place,
            );
        }
    });

    test('tells line in air from line in water', () => {
        const scene = sceneFromAbove(makePlan(dense));
        const line = ofRole(scene.elements, 'line').find(
            ({ position }) => position === 'starboard short corner',
        )!;
        expect(line.air.at(-1)).toEqual([-6, -1.2]);
        expect(line.water).toEqual([
            [-6, -1.2],
            [-10, -1.2],
        ]);
        expect(line.name).toContain('in the water for its last 4 m');
        expect(ofRole(scene.elements, 'line').filter(({ water }) => water.length > 0)).toHaveLength(1);
    });

    test('draws a fan as the line turned by its sway about its tow point', () => {
        const analysed = makePlan(diamond);
        const scene = sceneFromAbove(analysed);
        for (const { outline, position } of ofRole(scene.elements, 'fan')) {
            const figures = analysed.lines.find(({ line }) => line.position.name === position)!;
            if (!figures.sway.known) throw new Error('A fan needs a sway.');
            const [tow, left, lure, right] = outline;
            const reach = Math.hypot(lure![0] - tow![0], lure![1] - tow![1]);
            for (const side of [left!, right!]) {
                expect(Math.hypot(side[0] - tow![0], side[1] - tow![1])).toBeCloseTo(reach, 9);
                expect(Math.abs(angle(tow!, side) - angle(tow!, lure!))).toBeCloseTo(figures.sway.value, 9);
            }
        }
    });

    test('numbers findings gravest first and hands each position its own', () => {
        const scene = sceneFromAbove(makePlan(diamond), [
            finding('drag-untested', 'hint', ['port long rigger'], 'Never tested.'),
            finding('stagger', 'warning', ['port long rigger', 'starboard short rigger'], 'They touch.'),
            finding('line-class', 'error', [], 'Too heavy.'),
            { ...finding('crew', 'error', [], 'Of another plan.'), plan: 'rough-day' },
        ]);
        expect(scene.marks.map(({ rule, number }) => [rule, number])).toEqual([
            ['line-class', 1],
            ['stagger', 2],
            ['drag-untested', 3],
        ]);
        const marksOf = (name: string) =>
            scene.notes.find(({ position }) => position === name)!.marks.map(({ number }) => number);
        expect(marksOf('port long rigger')).toEqual([2, 3]);
        expect(marksOf('starboard short rigger')).toEqual([2]);
        expect(marksOf('port short corner')).toEqual([]);
    });
});

describe('a plan with gaps', () => {
    const gaps = makePlan({
        ...diamond,
        knots: null,
        boat: { title: 'Sandpiper', length: 10.8 },
        poles: [],
        lines: [
            diamond.lines[0]!,
            { position: 'port long rigger', gear: 'Slim', back: 45 },
            { position: 'centre shotgun', gear: 'Bare', tow: [0, 0, 3], from: 'rod tip' },
        ],
    });
    const scene = sceneFromAbove(gaps);

    test('is drawn as far as it is known', () => {
        const ids = scene.elements.map(({ id }) => id);
        expect(ids).toContain('hull');
        expect(ids).toContain('tow:port short corner');
        expect(ids).toContain('tow:centre shotgun');
        expect(ids.filter((id) => /^(lure|line|crest|face|wedge)/.test(id))).toEqual([]);
        expect(scene.notes.find(({ position }) => position === 'port long rigger')?.distance).toBe('45 m');
    });

    test('says what is not known, each reason once', () => {
        expect(scene.unknown).toEqual([
            'Sandpiper: no beam given, so no hull is drawn.',
            'The plan has no speed, so its waves are not known.',
            'Port short corner and centre shotgun: The plan does not say how far back it runs.',
            'Port short corner, port long rigger and centre shotgun: The wave it runs on is not known.',
            'Port long rigger: The boat has no such tow point.',
        ]);
    });

    test('without boat and lines it is still a sheet that says so', () => {
        const bare = sceneFromAbove(makePlan({ boat: null, knots: null, lines: [] }));
        expect(bare.unknown).toEqual([
            'No boat is given.',
            'The plan has no speed, so its waves are not known.',
            'The plan has no lines yet.',
        ]);
        expect(bare.elements.map(({ role }) => role)).toEqual(['transom']);
    });

    test('a wave train that is in doubt is drawn so and the doubt is told', () => {
        const analysed = makePlan(diamond);
        if (!analysed.waves.known) throw new Error('The plan has a speed.');
        const doubt = 'A sea of 1.8 m hides the boat’s own waves.';
        const doubtful = sceneFromAbove({
            ...analysed,
            waves: { ...analysed.waves, value: { ...analysed.waves.value, doubt } },
        });
        expect(ofRole(doubtful.elements, 'crest').every((crest) => crest.doubtful)).toBe(true);
        expect(doubtful.remarks).toContain(doubt);
    });
});

/** The smallest u ≥ 0 with u - u³ = q, by bisection. */
function rootOf(q: number): number {
    let [low, high] = [0, 1 / Math.sqrt(3)];
    for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (middle - middle ** 3 < q) low = middle;
        else high = middle;
    }
    return low;
}

function angle(from: readonly [number, number], to: readonly [number, number]): number {
    return Math.atan2(to[1] - from[1], from[0] - to[0]);
}

/** An element as its role, owner and the set of its points, which is what must mirror. */
function shapeOf(element: SceneElement, flip = 1, rename = (name: string) => name): string {
    const points = JSON.stringify(element, (key, value) => (key === 'at' ? undefined : value)).match(
        /\[-?[\d.e-]+,-?[\d.e-]+\]/g,
    );
    const spots = (points ?? []).map((pair) => {
        const [x, y] = JSON.parse(pair) as [number, number];
        return `${x.toFixed(6)} ${(y * flip || 0).toFixed(6)}`.replace('-0.000000', '0.000000');
    });
    const turn = element.role === 'lure' ? (element as DrawnLure).heading * flip || 0 : 0;
    return [
        element.role,
        rename(element.id),
        turn.toFixed(9).replace(/^-0\.0+$/, '0.000000000'),
        ...spots.sort(),
    ].join('|');
}

function mirrorOf(element: SceneElement): string {
    return shapeOf(element, -1, (id) =>
        id.replace(/port|starboard/, (side) => (side === 'port' ? 'starboard' : 'port')),
    );
}
