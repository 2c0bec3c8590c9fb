import { describe, expect, test } from 'vitest';
import { spoolCurvesOf } from '../../language/src/plan/analyse/spool-curve.ts';
import type { LineFigures } from '../../language/src/plan/figures.ts';
import { figuresTable } from '../../language/src/reports/figures-table.ts';
import { checkText } from './marked.ts';

const BOAT = `
boat tern "Tern" {
    length 12 m
    beam 4 m
    flat clip { ahead 0 m  out 1.5 m  up 1.2 m }
    holder centre shotgun { ahead 3 m  up 4 m  lean 30 deg }
}`;

/** One line down the middle from a reel that holds 800 m of 0.88 mm, 65 mm full and 37 mm bare in radius. */
async function spooledWith(line: string, outfit = '') {
    const { plans } = await checkText(`${BOAT}
rod stick { length 1.7 m  tip 1.2 m }
reel wide { spool { full 130 mm  arbor 74 mm }  capacity 800 m of 0.88 mm }
line main { material nylon  class 60 kg  ${line} }
lure ink "Ink" jet { length 250 mm  weight 200 g  submerged 100 g  pull 2 kg at 8 kn }
outfit one { rod stick  reel wide  line main  drag { hooked 15 kg }  ${outfit} }
spread calm "Calm" {
    boat tern
    speed 8 kn
    shotgun { outfit one  lure ink  back 60 m  from rod tip }
}`);
    const [plan] = plans;
    return { plan: plan!, figures: plan!.lines[0]! };
}

/** By hand: a spool that holds `holds` metres, full and bare radius in mm, drag of 15 kg when full. */
function byHand(holds: number, left: number): number {
    const radius = Math.sqrt(37 ** 2 + ((65 ** 2 - 37 ** 2) * left) / holds);
    return (15 * 9.80665 * 65) / radius;
}

function afterRun({ drags }: LineFigures) {
    return drags.find(({ stage }) => stage === 'hooked')!.afterRun;
}

describe('the drag after a run', () => {
    test('is that of the line that the reel has left then: less what is out, on a spool that holds a volume', async () => {
        for (const diameter of [0.6, 0.88, 1.05]) {
            const { figures } = await spooledWith(`diameter ${diameter} mm`, 'run 420 m');
            const reel = figures.reel!;
            if (!reel.known) throw new Error(reel.reason);
            const holds = 800 * (0.88 / diameter) ** 2;
            expect(reel.value.holds).toBeCloseTo(holds, 6);
            expect(reel.value.left).toBeCloseTo(holds - reel.value.out - 420, 6);
            expect(reel.value.out).toBeGreaterThan(55);
            const after = afterRun(figures);
            if (typeof after !== 'object') throw new Error('no line left');
            expect(after.force).toBeCloseTo(byHand(holds, reel.value.left), 6);
            expect(after.left).toBeCloseTo(reel.value.left / holds, 9);
        }
    });

    test('is none where the reel has none left: of a line too thick, and of one cut short', async () => {
        for (const line of ['diameter 1.2 mm', 'diameter 0.88 mm  length 450 m']) {
            const { figures } = await spooledWith(line, 'run 420 m');
            expect(figures.reel).toMatchObject({ known: true });
            expect(figures.reel!.known && figures.reel!.value.left).toBeLessThan(0);
            expect(afterRun(figures)).toBe('spooled');
        }
    });

    test('follows the curve that is drawn, which ends where the spool is bare', async () => {
        const { figures } = await spooledWith('diameter 1.05 mm', 'run 300 m');
        const curves = spoolCurvesOf(figures.line);
        const [curve] = curves.known ? curves.value : [];
        expect(curve!.off.at(-1)).toBeCloseTo(800 * (0.88 / 1.05) ** 2, 6);
        expect(curve!.force.at(-1)).toBeCloseTo((15 * 9.80665 * 65) / 37, 6);
    });

    test('leans on an estimate only where nobody said how far a fish runs', async () => {
        const row = async (outfit: string) => {
            const { plan } = await spooledWith('diameter 0.88 mm', outfit);
            const table = await figuresTable([{ path: 'calm.spread', plans: [plan] }]);
            return /^shotgun +hooked.*$/m.exec(table)![0].split(/ {2,}/)[6]!;
        };
        expect(await row('run 400 m')).toMatch(/^\d/);
        expect(await row('')).toBe(`~${await row('run 400 m')}`);
    });
});
