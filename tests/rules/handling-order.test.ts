import { expect, test } from 'vitest';
import type { LineFigures, OrderFigures } from '../../language/src/plan/figures.ts';
import { checkText, today } from '../language/marked.ts';

const four = `
    port short corner { outfit medium-1  lure broad  back wave 2 }
    starboard long corner { outfit medium-2  lure dart  back wave 3 }
    starboard short rigger { outfit medium-3  lure gulp  back wave 4 }
    port long rigger { outfit medium-4  lure wisp  back wave 5 }
    port squid chain { back 9 m  from bridge }
    centre standby { bait live "scad" }`;

async function orderIn(text: string): Promise<OrderFigures> {
    const { order } = (await checkText(text)).plans[0]!;
    if (!order.known) throw new Error(order.reason);
    return order.value;
}

const names = (lines: readonly LineFigures[]) => lines.map(({ line }) => line.position.name);

// Common practice, no source: riggers before flats, the longest first; flats come in first.
test('rigger lines are set before the corner lines that they would sweep across, and come in after them', async () => {
    const order = await orderIn(today(four));
    expect(names(order.set)).toEqual([
        'port long rigger',
        'starboard short rigger',
        'starboard long corner',
        'port short corner',
    ]);
    expect(names(order.takeIn)).toEqual([...names(order.set)].reverse());
    expect(order.cycles).toEqual([]);
});

test('every demand names its two lines, which of them moves, and when; the order meets it', async () => {
    const order = await orderIn(today(four));
    expect(order.demands.length).toBeGreaterThanOrEqual(2);
    for (const { first, second, mover, distance, stage } of order.demands) {
        expect([first, second]).toContain(mover);
        expect(first.line.position.side).toBe(second.line.position.side);
        expect(distance).toBeLessThanOrEqual(0.25);
        expect(['paying out', 'hauling to the clip']).toContain(stage);
        expect(order.set.indexOf(first)).toBeLessThan(order.set.indexOf(second));
        expect(order.takeIn.indexOf(second)).toBeLessThan(order.takeIn.indexOf(first));
    }
});

test('the other side’s plan has the other side’s order', async () => {
    const mirrored = four.replace(/port|starboard/g, (side) => (side === 'port' ? 'starboard' : 'port'));
    const [here, there] = [await orderIn(today(four)), await orderIn(today(mirrored))];
    const across = names(there.set).map((name) =>
        name.startsWith('port') ? name.replace('port', 'starboard') : name.replace('starboard', 'port'),
    );
    expect(across).toEqual(names(here.set));
});

test('without rods in their holders nothing is said of an order', async () => {
    const { plans } = await checkText(
        today(
            '    port short corner { lure broad  back wave 2 }\n    port long rigger { lure wisp  back wave 5 }',
        ),
    );
    expect(plans[0]!.order).toMatchObject({ known: false });
});
