import type { SpreadLine } from '../../plan/model.ts';
import type { Said } from '../../plan/origin.ts';
import { daysBetween } from '../../units/date.ts';
import { DAY } from '../../units/time.ts';
import { hooksOf, leaderOf, runnerOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { counted } from '../say.ts';
import { time } from '../settings.ts';
import { practice } from '../standing.ts';

/** A leader, a hook rig or a line that nobody has gone over for too long. */
export const inspectionDue = rule({
    name: 'inspection-due',
    group: 'tackle',
    standing: practice(
        'Leaders nick, points blunt, nylon tires in the sun; how long each lasts is the team’s to say.',
    ),
    severity: 'warning',
    summary: "A leader or hooks were inspected, or a line fitted, too long before the plan's date.",
    settings: {
        leader: time('30 d', ['1 d', '1000 d'], 'An inspection of a leader older than this is stale.'),
        hooks: time('30 d', ['1 d', '1000 d'], 'An inspection of hooks older than this is stale.'),
        line: time('180 d', ['1 d', '3000 d'], 'Line that was fitted longer ago than this is due.'),
    },

    check(analysis, ages, report) {
        const { date } = analysis.plan;
        // No rule reads the clock: a plan without a date has no day on which anything could be due.
        if (!date) return;
        for (const { line } of tackledLines(analysis)) {
            for (const { what, done, on, after, remedy } of datesOf(line, ages)) {
                const days = daysBetween(on.value, date.value);
                if (days * DAY <= after) continue;
                report({
                    at: on,
                    what: `${what} ${done} ${counted(days, 'day')} before this plan, and this team allows ${counted(Math.round(after / DAY), 'day')}.`,
                    why: 'What nobody has looked at parts on the fish that was waited for.',
                    remedy,
                    positions: [line],
                });
            }
        }
    },
});

interface Dated {
    /** As a sentence begins: `The leader of Broad was inspected`. */
    readonly what: string;
    readonly done: string;
    readonly on: Said<string>;
    /** s */
    readonly after: number;
    readonly remedy: string;
}

function datesOf(line: SpreadLine, ages: { leader: number; hooks: number; line: number }): Dated[] {
    const runner = runnerOf(line)?.value.title ?? line.position.name;
    const [leader, hooks] = [leaderOf(line)?.inspected, hooksOf(line)?.inspected];
    const fitted = line.outfit?.value.line?.fitted;
    const look = 'Go over it for nicks, and write down the day.';
    const sharpen = 'Check and sharpen them, and write down the day.';
    return [
        ...(leader
            ? [
                  {
                      what: `The leader of ${runner}`,
                      done: 'was inspected',
                      on: leader,
                      after: ages.leader,
                      remedy: look,
                  },
              ]
            : []),
        ...(hooks
            ? [
                  {
                      what: `The hooks of ${runner}`,
                      done: 'were inspected',
                      on: hooks,
                      after: ages.hooks,
                      remedy: sharpen,
                  },
              ]
            : []),
        ...(fitted
            ? [
                  {
                      what: `The line of ${line.outfit!.value.title}`,
                      done: 'was fitted',
                      on: fitted,
                      after: ages.line,
                      remedy: 'Spool up anew, or cut back to sound line and write down the day.',
                  },
              ]
            : []),
    ];
}
