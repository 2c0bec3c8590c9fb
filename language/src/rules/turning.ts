import type { AnalysedPlan, SideTurnFigures } from '../plan/figures.ts';
import type { Measure } from '../plan/measure.ts';
import { inItsForm, replaceValue } from './fixes.ts';
import { listed, say } from './say.ts';

/** The turn that a plan allows, and what was computed of it. */
export interface JudgedTurn {
    readonly asked: Measure;
    readonly sides: readonly SidedTurn[];
}

export interface SidedTurn {
    readonly side: 'port' | 'starboard';
    readonly figures: SideTurnFigures;
}

/** `undefined` until the turns are computed, and where the plan does not say how tightly it turns. */
export function judgedTurn({ turns }: AnalysedPlan): JudgedTurn | undefined {
    if (!turns?.known || !turns.value.asked) return undefined;
    const { asked, port, starboard } = turns.value;
    const sides = [
        { side: 'port', figures: port },
        { side: 'starboard', figures: starboard },
    ] as const;
    return { asked, sides };
}

export type Clean = 'noFoul' | 'allWorking';

const words: Readonly<Record<Clean, string>> = {
    noFoul: 'nothing fouls or falls slack from',
    allWorking: 'every lure works from',
};

const never: Readonly<Record<Clean, string>> = {
    noFoul: 'No turn that was looked at is free of fouls and slack: take lines in before turning, or give them more stagger.',
    allWorking: 'No turn that was looked at keeps it working: tow faster, or choose a lure that runs slower.',
};

/** From which radius on turns are clean, to either side. */
export function cleanInWords(turn: JudgedTurn, ...kinds: readonly Clean[]): string {
    const told = kinds.map((kind) => radiiInWords(turn, kind));
    const missing = kinds.find((_, index) => told[index] === undefined);
    return missing ? never[missing] : `Turn wider: ${told.join('; ')}.`;
}

function radiiInWords({ asked, sides }: JudgedTurn, clean: Clean): string | undefined {
    const told = sides.flatMap(({ side, figures }) => {
        const { radius } = figures[clean];
        return radius === undefined ? [] : [`${clearing(Math.ceil(radius), asked)} to ${side}`];
    });
    return told.length < 2 ? undefined : `${words[clean]} ${listed(told)}`;
}

/** Never rounded down: the radius that is said is as good as the one that the quick fix writes. */
function clearing(radius: number, asked: Measure): string {
    return inItsForm(asked, radius, 'up') ?? say.length(radius, asked);
}

/** In which ways turns to both sides come clean at all: a turn without fouls should not hang the lures dead. */
export function cleanSomewhere({ sides }: JudgedTurn): readonly Clean[] {
    const comes = (kind: Clean) => sides.every(({ figures }) => figures[kind].radius !== undefined);
    return comes('allWorking') ? ['noFoul', 'allWorking'] : ['noFoul'];
}

/** Allows only the turns that are clean in all these ways, to both sides. */
export function widen({ asked, sides }: JudgedTurn, ...clean: readonly Clean[]) {
    const radii = sides.flatMap(({ figures }) => clean.map((kind) => figures[kind].radius));
    if (radii.some((radius) => radius === undefined)) return undefined;
    const radius = Math.ceil(Math.max(...(radii as number[])));
    return replaceValue((text) => `Turn no tighter than ${text}`, asked, radius, 'up');
}
