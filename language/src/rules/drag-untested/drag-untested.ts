import { daysBetween } from '../../units/date.ts';
import { DAY } from '../../units/time.ts';
import { rule } from '../rule.ts';
import { counted } from '../say.ts';
import { time } from '../settings.ts';
import { practice } from '../standing.ts';

/** A drag that no scale has seen, or not for long. */
export const dragUntested = rule({
    name: 'drag-untested',
    group: 'drag and strike',
    standing: practice(
        'Washers settle, heat and salt change them; how long a test holds is the team’s to say.',
    ),
    severity: 'warning',
    summary: "An outfit's drag has no scale test, or one that is too old on the plan's date.",
    settings: { age: time('30 d', ['1 d', '1000 d'], 'A test older than this is stale.') },

    check({ plan, lines }, { age }, report) {
        // No rule reads the clock: a plan without a date has no day on which a test could be old.
        if (!plan.date) return;
        for (const { line, drags } of lines) {
            const outfit = line.outfit;
            if (!outfit || drags.length === 0) continue;
            const { title, tested } = outfit.value;
            const days = tested ? daysBetween(tested.date.value, plan.date.value) : undefined;
            if (days !== undefined && days * DAY <= age) continue;
            report({
                at: tested?.date ?? outfit,
                what:
                    days === undefined
                        ? `The drag of ${title} has no scale test.`
                        : `The drag of ${title} was tested ${counted(days, 'day')} before this plan, and a test holds for ${counted(Math.round(age / DAY), 'day')}.`,
                why: 'Marks on a lever say little; a scale says what the line will feel.',
                remedy: 'Pull it over a scale with the rod in its holder, and write down the day.',
                positions: [line],
            });
        }
    },
});
