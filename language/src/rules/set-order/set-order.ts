import type { LineFigures, OrderDemand, OrderFigures } from '../../plan/figures.ts';
import type { Spread, StatedOrder } from '../../plan/model.ts';
import { haveOneHold } from '../clips.ts';
import { replaceProperty } from '../fixes.ts';
import { known } from '../neighbours.ts';
import { type Report, rule } from '../rule.ts';
import { listed } from '../say.ts';
import { physics } from '../standing.ts';

/** An order of handling that takes one line across another; or lines that no order keeps apart. */
export const setOrder = rule({
    name: 'set-order',
    group: 'crew',
    standing: physics(
        'Lines hang straight from their rod tips while they are paid out and hauled to their clips.',
        'The distance at which lines count as touching.',
    ),
    severity: 'warning',
    summary: 'The stated order takes a line across one that is set, or no order keeps the lines apart.',
    settings: {},
    givesWayTo: ['stagger'],

    check(analysis, _, report) {
        const order = known(analysis.order);
        if (!order) return;
        for (const cycle of order.cycles) {
            if (!hangTogether(cycle, analysis.plan)) noOrder(cycle, report);
        }
        for (const stated of analysis.plan.orders) {
            // A reason is the crew's last word on its own order.
            if (!stated.because?.value.trim()) wrongOrder(stated, order, report);
        }
    },
});

/** Two lines that one thing holds are in one place, and no order parts them. */
function hangTogether(cycle: readonly LineFigures[], plan: Spread): boolean {
    return cycle.some(({ line }, index) =>
        cycle.slice(0, index).some((other) => haveOneHold(line, other.line, plan)),
    );
}

function noOrder(cycle: readonly LineFigures[], report: Report): void {
    const lines = cycle.map(({ line }) => line);
    report({
        at: lines[0]!,
        what: `No order sets ${listed(lines.map(({ position }) => position.name))} clear of one another.`,
        why: 'Whichever goes first, the next one is taken across it.',
        remedy: 'Put one of the rods in another holder, or tow its line from elsewhere.',
        related: lines.slice(1).map((line) => ({ at: line, what: `${line.position.name} is set here.` })),
        positions: lines,
    });
}

function wrongOrder({ what, positions, origin }: StatedOrder, order: OrderFigures, report: Report): void {
    const places = new Map(positions.map((said, index) => [said.value.name, { ...said, index }]));
    const inRing = (line: LineFigures) => order.cycles.some((cycle) => cycle.includes(line));
    for (const demand of order.demands) {
        const { mover } = demand;
        const other = mover === demand.first ? demand.second : demand.first;
        const [moved, waiting] = [places.get(nameOf(mover)), places.get(nameOf(other))];
        if (!moved || !waiting || (inRing(mover) && inRing(other))) continue;
        const setting = what === 'set';
        // Whoever moves goes out before what it would cross, and comes in after it.
        if (setting ? moved.index < waiting.index : moved.index > waiting.index) continue;
        const names = positions.map(({ value }) => value.name);
        const better = inOrder(names, setting ? order.set : order.takeIn);
        report({
            at: moved,
            what: `${nameOf(mover)} ${setting ? 'goes out after' : 'comes in before'} ${nameOf(other)}, and crosses it ${stageInWords(demand, setting)}.`,
            why: 'A line taken across one that is set hooks it.',
            remedy: `${setting ? `Set ${nameOf(mover)}` : `Take in ${nameOf(other)}`} first, or say why it is done otherwise (because "...").`,
            related: [{ at: other.line, what: `${nameOf(other)} runs here.` }],
            fixes: [
                replaceProperty(
                    'Put them in an order that crosses nothing',
                    origin,
                    `order ${what} ${better.join(', ')}`,
                ),
            ],
            positions: [mover.line, other.line],
        });
    }
}

function nameOf({ line }: LineFigures): string {
    return line.position.name;
}

function stageInWords({ stage }: OrderDemand, setting: boolean): string {
    if (stage === 'paying out') return setting ? 'as it is paid out' : 'as it is taken in';
    return setting ? 'on its way to the clip' : 'on its way from the clip';
}

/** The same lines in the computed order; those that it does not know keep their places. */
function inOrder(names: readonly string[], computed: readonly LineFigures[]): string[] {
    const sorted = computed.map(nameOf).filter((name) => names.includes(name));
    return names.map((name) => (sorted.includes(name) ? sorted : [name])).map((from) => from.shift()!);
}
