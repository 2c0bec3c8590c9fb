import type {
    AnalysedPlan,
    ClearingFigures,
    ClearingReason,
    Figure,
    LineFigures,
    OrderDemand,
} from '../../plan/figures.ts';
import type { Spread, StatedOrder } from '../../plan/model.ts';
import { spokenUnits } from '../../plan/spoken-units.ts';
import { listed } from '../../plan/wording.ts';
import { print } from '../../units/print.ts';
import { type Unit, units } from '../../units/unit.ts';
import { inWords } from './told.ts';

export interface SettingOnCard {
    /** Names of positions, first to set first. */
    readonly order: readonly { readonly position: string; readonly reason?: string }[];
    /** The team's own order, with the reason that it gives. */
    readonly stated?: { readonly because?: string };
    /** Sentences: what bends the order, why there is none. */
    readonly remarks: readonly string[];
}

export interface ClearingOnCard {
    /** The team's own order goes before the computed ones. */
    readonly stated?: { readonly order: readonly string[]; readonly because?: string };
    readonly after: readonly {
        readonly hooked: string;
        readonly order: readonly { readonly position: string; readonly reason: string }[];
    }[];
    readonly remarks: readonly string[];
}

export function settingOnCard({ plan, order }: AnalysedPlan): SettingOnCard {
    const stated = statedOrder(plan, 'set');
    const demands = order.known ? order.value.demands : [];
    const computed = order.known ? order.value.set.map(nameOf) : [];
    const first = stated?.positions.map(({ value }) => value.name) ?? [];
    const names = [...first, ...computed.filter((name) => !first.includes(name))];
    return {
        order: names.map((position) => {
            const reason = reasonToSet(position, demands);
            return { position, ...(reason && { reason }) };
        }),
        ...(stated && { stated: because(stated) }),
        remarks: [
            ...(order.known ? [] : [`Not computed: ${order.reason}`]),
            ...(order.known ? order.value.cycles.map(ringWords) : []),
            ...(order.known && !stated
                ? ['Where nothing is in the way the longest goes first (common practice).']
                : []),
            ...brokenBy(names, demands),
        ],
    };
}

/** `before starboard long corner, across which it would sweep on the way to its clip`. */
function reasonToSet(position: string, demands: readonly OrderDemand[]): string | undefined {
    const swept = demands.filter(({ first, mover }) => nameOf(first) === position && mover === first);
    if (swept.length === 0) return undefined;
    const stages = (['paying out', 'hauling to the clip'] as const).flatMap((stage) => {
        const others = swept.filter((demand) => demand.stage === stage).map(({ second }) => nameOf(second));
        const way = stage === 'paying out' ? 'while it is paid out' : 'on the way to its clip';
        return others.length > 0 ? [`${listed(others)}, which it would sweep across ${way}`] : [];
    });
    return `before ${stages.join('; and before ')}`;
}

function ringWords(ring: readonly LineFigures[]): string {
    return `No order sets ${listed(ring.map(nameOf))} without one sweeping across another.`;
}

/** What a stated order brings about that the computed one avoids. */
function brokenBy(names: readonly string[], demands: readonly OrderDemand[]): string[] {
    return demands
        .filter(
            ({ first, second }) =>
                names.includes(nameOf(second)) &&
                names.indexOf(nameOf(first)) > names.indexOf(nameOf(second)),
        )
        .map(({ first, second }) => `Set in this order, ${nameOf(first)} sweeps across ${nameOf(second)}.`);
}

export function clearingOnCard(
    analysed: AnalysedPlan,
    clearings: Figure<readonly ClearingFigures[]>,
): ClearingOnCard {
    const { plan } = analysed;
    const { length } = spokenUnits(analysed);
    const stated = statedOrder(plan, 'clear');
    return {
        ...(stated && {
            stated: { order: stated.positions.map(({ value }) => value.name), ...because(stated) },
        }),
        after: clearings.known
            ? clearings.value.map(({ hooked, order }) => ({
                  hooked: nameOf(hooked),
                  order: order.map(({ line, reason }) => ({
                      position: nameOf(line),
                      reason: reasonToClear(reason, length),
                  })),
              }))
            : [],
        remarks: clearings.known ? clearings.leaning : [`Not computed: ${clearings.reason}`],
    };
}

function reasonToClear(reason: ClearingReason, unit: Unit): string {
    switch (reason.kind) {
        case 'release':
            return 'the line falls across it';
        case 'run':
            return `${fishAside(reason.aside, unit)} to ${reason.side}`;
        case 'astern':
            return 'met straight astern';
        case 'in the way':
            return `in the way of ${nameOf(reason.of)}`;
        case 'rest':
            return 'clear of it';
    }
}

/** Where the fish is then, in whole units; under a metre tells nothing. */
function fishAside(metres: number, unit: Unit): string {
    const other = unit.beside && units[unit.beside];
    const whole = (like: Unit) => print(Math.max(1, metres), like, { digits: 0 });
    return `fish ${inWords({ own: whole(unit), ...(other && { other: whole(other) }) })}`;
}

/** The order that the team states; the last one said, where it says several. */
function statedOrder({ orders }: Spread, what: StatedOrder['what']): StatedOrder | undefined {
    const said = orders.findLast((order) => order.what === what);
    return said && said.positions.length > 0 ? said : undefined;
}

function because({ because }: StatedOrder): { because?: string } {
    return because ? { because: because.value } : {};
}

function nameOf({ line }: LineFigures): string {
    return line.position.name;
}
