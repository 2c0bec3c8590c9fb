import type { Position, Spread } from '../../plan/model.ts';
import type { Origin } from '../../plan/origin.ts';
import { rule } from '../rule.ts';
import { listed } from '../say.ts';
import { housekeeping } from '../standing.ts';

/** An order, a fallback or a role that names a position which the plan does not have. */
export const positionMissing = rule({
    name: 'position-missing',
    group: 'crew',
    standing: housekeeping,
    severity: 'warning',
    summary: 'An order, a fallback or a role names a position that the plan does not have.',
    settings: {},

    check({ plan }, _, report) {
        const names = plan.lines.map(({ position }) => position.name);
        for (const { position, origin, where } of mentions(plan)) {
            // What a preset says of a line that this plan takes out is harmless.
            if (names.includes(position.name) || origin.inherited) continue;
            report({
                at: origin,
                what: `${where} names ${position.name}, and this plan has none.`,
                why: 'Whoever reads it on deck looks for a line that is not there.',
                remedy: `Name one that there is: ${listed(names, 'or')}.`,
                positions: [{ position }],
            });
        }
    },
});

interface Mention {
    readonly position: Position;
    readonly origin: Origin;
    readonly where: string;
}

function* mentions({ orders, fallbacks, roles }: Spread): Generator<Mention> {
    for (const { what, positions } of orders)
        for (const { value, origin } of positions)
            yield { position: value, origin, where: `The order to ${what}` };
    for (const { when, drop } of fallbacks)
        for (const { value, origin } of drop)
            yield { position: value, origin, where: `The fallback “${when.value}”` };
    for (const { position, name } of roles)
        if (position)
            yield { position: position.value, origin: position.origin, where: `The role of ${name.value}` };
}
