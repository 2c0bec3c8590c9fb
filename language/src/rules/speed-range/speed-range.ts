import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import type { HeadKind, Spread, SpreadLine } from '../../plan/model.ts';
import { replaceSpan, replaceValue } from '../fixes.ts';
import { runnerOf } from '../gear.ts';
import { rule, type Where } from '../rule.ts';
import { type Sayable, say, siOf } from '../say.ts';
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

interface Runner {
    readonly at: Where;
    /** As a sentence begins: `Broad runs at`. */
    readonly name: string;
    readonly title: string;
    readonly from: Sayable;
    readonly to: Sayable;
    readonly why: string;
    /** The other way out, as a sentence ends. */
    readonly other: string;
    readonly lines: readonly SpreadLine[];
}

function* runners(analysis: AnalysedPlan): Generator<Runner> {
    const { boat, speed: towed, method } = analysis.plan;
    // Said for the plan and again for a line, a method is one method.
    const methods = new Map([[method?.value.name, method]]);
    for (const { line } of analysis.lines.filter(({ line }) => line.role !== 'standby')) {
        if (!methods.has(line.method?.value.name)) methods.set(line.method?.value.name, line.method);
        const said = runnerOf(line);
        if (!said) continue;
        const [at, { title, runs }] = [said, said.value];
        const why = 'Outside its speeds it hangs dead, spins or flies.';
        const other = ', or choose another one';
        const head = line.lure?.value.kind?.value;
        if (runs) {
            yield { at, title, name: `${title} runs at`, ...runs, why, other, lines: [line] };
        } else if (head) {
            const [from, to] = usual[head];
            const name = `${title} has a ${head} head, which usually runs at`;
            yield { at, title, name, from: from * KNOT, to: to * KNOT, why, other, lines: [line] };
        }
    }
    for (const said of methods.values()) {
        if (!said?.value.speed) continue;
        const { title, speed } = said.value;
        const name = `${title} is meant for`;
        const why = 'The slack and the wait of a strike method belong to its speed.';
        yield { at: said, title, name, ...speed, why, other: ', or choose another method', lines: [] };
    }
    if (boat?.value.speed && towed) {
        const why = 'Outside her trolling speeds her waves and her wash are not the ones that you know.';
        yield {
            at: towed,
            title: boat.value.title,
            name: `${boat.value.title} trolls at`,
            ...boat.value.speed,
            why,
            other: '',
            lines: [],
        };
    }
}

/** Where each head works, kn: common practice, no source. For lures whose owner did not say. */
const usual: Readonly<Record<HeadKind, readonly [number, number]>> = {
    slant: [6, 9],
    plunger: [6, 10],
    pusher: [4, 12],
    chugger: [5, 9],
    bullet: [7, 16],
    jet: [7, 16],
    diver: [4, 9],
};

const KNOT = 1852 / 3600;
