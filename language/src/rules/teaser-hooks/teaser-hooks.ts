import { hooksOf } from '../gear.ts';
import { rule } from '../rule.ts';
import { written } from '../standing.ts';

/** A teaser with hooks, where the event wants none. */
export const teaserHooks = rule({
    name: 'teaser-hooks',
    group: 'written rules',
    standing: written("The event's own rules, as the team wrote them down."),
    severity: 'error',
    summary: 'A teaser carries hooks, and the event wants teasers hookless.',
    settings: {},

    check({ plan: { event }, lines }, _, report) {
        const hookless = event?.value.teasersHookless;
        if (!event || !hookless?.value) return;
        for (const { line } of lines) {
            const hooks = line.role === 'teaser' ? hooksOf(line) : undefined;
            if (!hooks || hooks.count.si === 0) continue;
            report({
                at: hooks,
                what: `${line.teaser?.value.title ?? line.position.name} carries hooks, and ${event.value.title} wants teasers hookless.`,
                why: 'A hooked teaser counts as one more line.',
                remedy: 'Take the hooks off.',
                related: [{ at: hookless, what: 'The rule is written here.' }],
                positions: [line],
            });
        }
    },
});
