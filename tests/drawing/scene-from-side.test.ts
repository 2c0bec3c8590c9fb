import { describe, expect, test } from 'vitest';
import type { SideElement } from '../../language/src/drawing/elements-side.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { svgOfSide } from '../../language/src/drawing/svg-side.ts';
import { dense, diamond, makePlan, seven, silent } from './plans.ts';

function ofRole<R extends SideElement['role']>(elements: readonly SideElement[], role: R) {
    return elements.filter((element): element is Extract<SideElement, { role: R }> => element.role === role);
}

describe('a scene from the side', () => {
    test('has tow points at their heights and lures at their distances', () => {
        for (const made of [diamond, seven, dense]) {
            const analysed = makePlan(made);
            const { elements } = sceneFromSide(analysed);
            for (const { line, towPoint, astern } of analysed.lines.filter(
                ({ line }) => line.role !== 'standby',
            )) {
                if (!towPoint.known || !astern.known) throw new Error('These plans are complete.');
                const own = elements.filter(({ position }) => position === line.position.name);
                expect(ofRole(own, 'tow point')[0]?.point).toEqual([towPoint.value[0], towPoint.value[2]]);
                expect(ofRole(own, 'lure')[0]?.point).toEqual([-astern.value, 0]);
            }
        }
    });

    test('tells the angle at which a line meets the water', () => {
        const { elements } = sceneFromSide(makePlan(diamond));
        const line = ofRole(elements, 'line').find(({ position }) => position === 'port long rigger')!;
        // 6.54 m up over 45 + 4.55 m along: atan(6.54 / 49.55) = 7.52 degrees, from a table of tangents.
        expect((line.angle * 180) / Math.PI).toBeCloseTo(7.52, 2);
        expect(line.name).toContain('7.5° at the water');
        const diver = ofRole(sceneFromSide(makePlan(dense)).elements, 'line').find(
            ({ water }) => water.length > 0,
        )!;
        // It goes in 6 m astern, from 2.2 m up and 0.3 m astern: atan(2.2 / 5.7) = 21.10 degrees.
        expect((diver.angle * 180) / Math.PI).toBeCloseTo(21.1, 1);
    });

    test('has a surface as high as the waves are, crests where the waves have them', () => {
        const analysed = makePlan(diamond);
        if (!analysed.waves.known) throw new Error('The plan has a speed.');
        const { firstCrest, wavelength } = analysed.waves.value;
        const { elements } = sceneFromSide(analysed);
        const [surface] = ofRole(elements, 'surface');
        const heights = surface!.curve.map(([, z]) => z);
        expect(Math.max(...heights) - Math.min(...heights)).toBeCloseTo(0.45, 2);
        const top = surface!.curve
            .filter(([x]) => -x > 12 && -x < 23)
            .reduce((a, b) => (b[1] > a[1] ? b : a));
        expect(Math.abs(-top[0] - (firstCrest + wavelength))).toBeLessThan(wavelength / 24);
        for (const { wave, crest } of ofRole(elements, 'face').slice(0, 4)) {
            expect(-crest[0]).toBeCloseTo(firstCrest + (wave - 1) * wavelength, 9);
        }
    });

    test('is flat, and says so, where the height of the waves is not known', () => {
        const analysed = makePlan(diamond);
        if (!analysed.waves.known) throw new Error('The plan has a speed.');
        const reason = 'The boat has no waterline length.';
        const value = { ...analysed.waves.value, height: silent<number>(reason) };
        const scene = sceneFromSide({ ...analysed, waves: { ...analysed.waves, value } });
        expect(ofRole(scene.elements, 'surface')[0]!.curve.every(([, z]) => Math.abs(z) < 1e-12)).toBe(true);
        expect(scene.remarks.join(' ')).toContain(`drawn flat: ${reason}`);
    });

    test('gives one thing the same name as the view from above does', () => {
        const above = new Set(sceneFromAbove(makePlan(seven)).elements.map(({ id }) => id));
        const shared = sceneFromSide(makePlan(seven)).elements.filter(({ role }) => role !== 'surface');
        for (const { id } of shared) expect(above.has(id)).toBe(true);
    });

    test('states how much heights are exaggerated, and draws them so', () => {
        for (const made of [diamond, seven, dense]) {
            const scene = sceneFromSide(makePlan(made));
            const svg = svgOfSide(scene);
            const exaggeration = Number(/data-exaggeration="([\d.]+)"/.exec(svg)![1]);
            const perMetre = Number(/data-per-metre="([\d.]+)"/.exec(svg)![1]);
            const stated = exaggeration === 1 ? 'as lengths' : `${exaggeration} times lengths`;
            expect(svg).toContain(`>${stated}</text>`);
            const [pole] = ofRole(scene.elements, 'pole');
            const drawn = new RegExp(
                `data-id="${pole!.id}".*?d="M([\\d.]+) ([\\d.]+)L([\\d.]+) ([\\d.]+)"`,
            ).exec(svg)!;
            const [fx, fy, tx, ty] = drawn.slice(1).map(Number) as [number, number, number, number];
            expect(tx - fx).toBeCloseTo((pole!.tip[0] - pole!.foot[0]) * perMetre, 0);
            expect(fy - ty).toBeCloseTo((pole!.tip[1] - pole!.foot[1]) * perMetre * exaggeration, 0);
        }
    });
});
