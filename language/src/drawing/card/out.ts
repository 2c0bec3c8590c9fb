import type { Position, Spread } from '../../plan/model.ts';
import type { Said } from '../../plan/origin.ts';

/**
 * A plan without what it says of lines that are not out in it: a preset speaks of all of its lines, and a plan that is
 * like it may leave some out. Nobody on deck can do anything about those.
 */
export function ofLinesOut(plan: Spread): Spread {
    const out = new Set(plan.lines.map(({ position }) => position.name));
    const isOut = ({ value }: Said<Position>) => out.has(value.name);
    return {
        ...plan,
        roles: plan.roles.filter(({ position }) => !position || isOut(position)),
        orders: plan.orders.map((order) => ({ ...order, positions: order.positions.filter(isOut) })),
        fallbacks: plan.fallbacks.map((fallback) => ({ ...fallback, drop: fallback.drop.filter(isOut) })),
        // What the team accepts of its own says so, whether or not it has something to accept.
        waivers: plan.waivers.filter(({ inherited, positions }) => !inherited || positions.every(isOut)),
    };
}
