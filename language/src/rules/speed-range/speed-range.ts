import type { Measure } from '../../plan/measure.ts';
import type { Spread } from '../../plan/model.ts';
import { replaceSpan, replaceValue } from '../fixes.ts';
import { rule } from '../rule.ts';
import { runners } from '../runners.ts';
import { say, siOf } from '../say.ts';
import { speed } from '../settings.ts';
import { practice } from '../standing.ts';

/** The speed, or one that the helm may run, is outside what a lure, a bait, the method or the boat is good for. */
export const speedRange = rule({
    name: 'speed-range',
    group: 'waves and speed',
    standing: practice(
        'A head spins, tumbles or flies outside its range; ranges by head are what crews report.',
    ),
    severity: 'warning',
    summary: "The plan's speed is outside the range of a lure, a bait, the method or the boat.",
    settings: { slack: speed('0.1 kn', ['0 kn', '3 kn'], 'This far outside a range counts as inside.') },

    check(analysis, { slack }, report) {
        const { plan } = analysis;
        const towed = plan.speed;
        if (!towed) return;
        const all = [...runners(analysis)].flatMap((runner) => {
            const astray = strays(plan, towed, siOf(runner.from) - slack, siOf(runner.to) + slack);
            return astray ? [{ ...runner, ...astray }] : [];
        });
        // One speed that suits all that it is wrong for.
        const from = Math.max(...all.map(({ from }) => siOf(from)));
        const to = Math.min(...all.map(({ to }) => siOf(to)));
        for (const { at, name, title, why, other, lines, said, fast, inWords, mend, ...range } of all) {
            const limit = fast ? range.to : range.from;
            const what = `${name} ${say.speed(range.from, towed)} to ${say.speed(range.to, towed)}`;
            report({
                at: said === towed ? [at, towed] : [said, at],
                what: `${what}, and ${inWords}.`,
                why,
                remedy: `Keep to ${say.speed(limit, towed)}${other}.`,
                related: [
                    { at: typeof limit === 'object' ? limit : undefined, what: 'Its limit is said here.' },
                    { at: said, what: 'The speed is said here.' },
                ],
                fixes: [mend(siOf(range.from), siOf(range.to))],
                positions: lines,
                together: {
                    kind: `${fast}`,
                    name: title,
                    what: (names) => `${names} are not meant for this speed: ${inWords}.`,
                    remedy:
                        from < to
                            ? `Keep to ${say.speed(fast ? to : from, towed)}${other}.`
                            : 'Choose others, or another speed.',
                    fixes: [from < to ? mend(from, to) : undefined],
                    each: { at, what: `${what}.` },
                },
            });
        }
    },
});

/** How a plan leaves a range of speeds: by its speed, or else by what its helm may run. */
function strays({ speeds }: Spread, towed: Measure, from: number, to: number) {
    if (towed.si > to || towed.si < from) {
        const fast = towed.si > to;
        return {
            fast,
            said: towed,
            inWords: `this plan tows at ${say.speed(towed)}`,
            mend: (least: number, most: number) =>
                fast
                    ? replaceValue((text) => `Tow at ${text}`, towed, most, 'down')
                    : replaceValue((text) => `Tow at ${text}`, towed, least, 'up'),
        };
    }
    if (!speeds || (speeds.to.si <= to && speeds.from.si >= from)) return undefined;
    const fast = speeds.to.si > to;
    return {
        fast,
        said: fast ? speeds.to : speeds.from,
        inWords: fast
            ? `the helm may run up to ${say.speed(speeds.to)}`
            : `the helm may slow to ${say.speed(speeds.from)}`,
        mend: (least: number, most: number) =>
            replaceSpan((low, high) => `Keep her at ${low} to ${high}`, speeds, {
                from: Math.max(speeds.from.si, least),
                to: Math.min(speeds.to.si, most),
            }),
    };
}
