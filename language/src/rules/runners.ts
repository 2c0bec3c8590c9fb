import type { AnalysedPlan } from '../plan/figures.ts';
import type { HeadKind, SpreadLine } from '../plan/model.ts';
import { runnerOf } from './gear.ts';
import type { Where } from './rule.ts';
import type { Sayable } from './say.ts';

/** One that is good for some speeds only, and how a sentence speaks of it. */
export interface Runner {
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

/** Whatever of a plan is good for some speeds only: what is towed, the methods, the boat. */
export function* runners(analysis: AnalysedPlan): Generator<Runner> {
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
