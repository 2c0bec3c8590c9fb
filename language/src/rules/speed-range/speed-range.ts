import type { AnalysedPlan } from '../../plan/figures.ts';
import type { HeadKind, SpreadLine } from '../../plan/model.ts';
import type { Said } from '../../plan/origin.ts';
import { fishedLines } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { type Sayable, say, siOf } from '../say.ts';
import { speed } from '../settings.ts';
import { practice } from '../standing.ts';

/** The plan's speed is outside what a lure, a bait or the method is good for. */
export const speedRange = rule({
    name: 'speed-range',
    group: 'waves and speed',
    standing: practice(
        'A head spins, tumbles or flies outside its range; ranges by head are what crews report.',
    ),
    severity: 'warning',
    summary: "The plan's speed is outside the range of a lure, a bait or the method.",
    settings: { slack: speed('0.1 kn', 'This far outside a range counts as inside.') },

    check(analysis, { slack }, report) {
        const towed = analysis.plan.speed;
        if (!towed) return;
        for (const { said, verb, from, to, why, lines } of runners(analysis)) {
            const limit = towed.si > siOf(to) + slack ? to : towed.si < siOf(from) - slack ? from : undefined;
            if (limit === undefined) continue;
            report({
                at: said,
                what: `${said.value.title} ${verb} ${say.speed(from, towed)} to ${say.speed(to, towed)}, and this plan tows at ${say.speed(towed)}.`,
                why,
                remedy: `Tow at ${say.speed(limit, towed)}, or choose another one.`,
                related: [
                    { at: typeof limit === 'object' ? limit : undefined, what: 'Its limit is said here.' },
                ],
                positions: lines,
            });
        }
    },
});

interface Runner {
    readonly said: Said<{ readonly title: string }>;
    readonly verb: string;
    readonly from: Sayable;
    readonly to: Sayable;
    readonly why: string;
    readonly lines: readonly SpreadLine[];
}

function* runners(analysis: AnalysedPlan): Generator<Runner> {
    const methods = new Set([analysis.plan.method]);
    for (const { line } of fishedLines(analysis)) {
        methods.add(line.method);
        const said = line.lure ?? line.bait;
        if (!said) continue;
        const why = 'Outside its speeds it hangs dead, spins or flies.';
        const head = line.lure?.value.kind?.value;
        if (said.value.runs) {
            yield { said, verb: 'runs at', ...said.value.runs, why, lines: [line] };
        } else if (head && usual[head]) {
            const [from, to] = usual[head];
            const verb = `has a ${head} head, which usually runs at`;
            yield { said, verb, from: from * KNOT, to: to * KNOT, why, lines: [line] };
        }
    }
    for (const said of methods) {
        if (!said?.value.speed) continue;
        const why = 'The slack and the wait of a strike method belong to its speed.';
        yield { said, verb: 'is meant for', ...said.value.speed, why, lines: [] };
    }
}

/** Where each head works, kn: common practice, no source. For lures whose owner did not say. */
const usual: Readonly<Partial<Record<HeadKind, readonly [number, number]>>> = {
    slant: [6, 9],
    plunger: [6, 10],
    pusher: [4, 12],
    chugger: [5, 9],
    bullet: [7, 16],
    jet: [7, 16],
    diver: [4, 9],
};

const KNOT = 1852 / 3600;
