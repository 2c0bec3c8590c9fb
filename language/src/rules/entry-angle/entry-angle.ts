import type { HeadKind } from '../../plan/model.ts';
import { whereTowed } from '../gear.ts';
import { fishedLines, known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { say, sayApart } from '../say.ts';
import { angle } from '../settings.ts';
import { practice } from '../standing.ts';

/** A line that meets the water too steeply, or too flat, for the head on it. */
export const entryAngle = rule({
    name: 'entry-angle',
    group: 'layout',
    standing: practice(
        'A higher tow point makes a head livelier, a lower one steadier; the degrees are estimates.',
    ),
    severity: 'hint',
    summary: 'A line meets the water too steeply or too flat for the head of its lure.',
    settings: {
        flattest: angle(
            { otherwise: 'by the head' },
            ['0 deg', '45 deg'],
            'Least angle between line and water, at the water.',
        ),
        steepest: angle(
            { otherwise: 'by the head' },
            ['1 deg', '90 deg'],
            'Greatest angle between line and water, at the water.',
        ),
    },

    check(analysis, { flattest, steepest }, report) {
        for (const { line, rest } of fishedLines(analysis)) {
            const settled = known(rest);
            const head = line.lure?.value.kind?.value;
            if (!settled || !head || head === 'diver') continue;
            const meets = settled.entry?.angle ?? settled.angle.lure;
            const [least, most] = [flattest ?? usual[head][0] * DEGREE, steepest ?? usual[head][1] * DEGREE];
            if (meets >= least && meets <= most) continue;
            const steep = meets > most;
            const [angled, limit] = sayApart.angle(meets, steep ? most : least);
            const works = steep ? `${say.angle(least)} to ${limit}` : `${limit} to ${say.angle(most)}`;
            report({
                at: whereTowed(line),
                what: `The line of ${line.position.name} meets the water at ${angled}, and a ${head} head works at ${works}.`,
                why: steep
                    ? 'Pulled up too steeply a head leaves the water, spins and fouls its own leader.'
                    : 'Pulled too flat a head does not come up to breathe, and works little.',
                remedy: steep ? 'Lower its clip, or let it back.' : 'Raise its clip, or bring it in.',
                positions: [line],
            });
        }
    },
});

const DEGREE = Math.PI / 180;

/** Degrees at which each head works. Estimates: straight runners like a flat pull, lively ones bear a steep one. */
const usual: Readonly<Record<Exclude<HeadKind, 'diver'>, readonly [flattest: number, steepest: number]>> = {
    slant: [2, 18],
    plunger: [2, 18],
    pusher: [2, 20],
    chugger: [2, 22],
    bullet: [1, 15],
    jet: [1, 15],
};
