import type { AnalysedPlan, Figure, LineFigures, PairFigures } from '../../plan/figures.ts';
import { print } from '../../units/print.ts';
import { massOf } from '../../units/quantity.ts';
import { units } from '../../units/unit.ts';
import { estimateMark, type Speech } from '../figures-speech.ts';

/** A figure that can be read to be another one than it was. */
export interface FigureChange {
    /** The position, the two of a pair, or the boat’s waves. */
    readonly of: string;
    readonly figure: string;
    /** As the tables print it; `not known` where the figure is silent. */
    readonly before: string;
    readonly after: string;
}

/** How one figure is read off a plan’s part. */
interface Reading<T> {
    readonly figure: string;
    readonly of: (part: T) => Figure<number> | undefined;
    /** Nearer than this two values are one to whoever reads them, in the unit of the value. */
    readonly apart: number;
    readonly print: (value: number, speech: Speech) => string;
}

/** All figures of the two plans that changed by more than they can be read at, by position, then pairs. */
export function figuresApart(before: AnalysedPlan, after: AnalysedPlan, speech: Speech): FigureChange[] {
    return [
        ...wavesApart(before, after, speech),
        ...inBoth(before.lines, after.lines, ({ line }) => line.position.name).flatMap(([of, was, is]) => [
            ...apart(of, was, is, lineReadings, speech),
            ...placesApart(of, was, is),
        ]),
        ...inBoth(before.pairs.filter(isNeighbour), after.pairs.filter(isNeighbour), pairName).flatMap(
            ([of, was, is]) => apart(of, was, is, pairReadings, speech),
        ),
    ];
}

const length = (value: number, speech: Speech) => print(value, speech.length);
const load = (value: number, speech: Speech) => print(massOf(value), speech.load);
const share = (value: number) => print(value, units['%'], { digits: 0 });
const angle = (value: number) => (Number.isFinite(value) ? print(value, units.deg, { digits: 0 }) : 'none');
const degree = Math.PI / 180;
/** N: a tenth of a kilogram. */
const tenth = 0.98;

const lineReadings: readonly Reading<LineFigures>[] = [
    { figure: 'astern', of: ({ astern }) => astern, apart: 0.1, print: length },
    {
        figure: 'off centre',
        of: ({ lateral }) => lateral,
        apart: 0.1,
        print: (value, speech) =>
            `${length(Math.abs(value), speech)}${value === 0 ? '' : value > 0 ? ' to port' : ' to starboard'}`,
    },
    { figure: 'pull', of: ({ pull }) => pull, apart: tenth, print: load },
    ...(['set', 'hooked', 'full'] as const).map(
        (stage): Reading<LineFigures> => ({
            figure: `${stage} drag of class`,
            of: ({ drags }) => computed(drags.find((drag) => drag.stage === stage)?.share),
            apart: 0.01,
            print: share,
        }),
    ),
    {
        figure: 'full drag of class after the run',
        of: ({ drags }) => {
            const run = drags.find(({ stage }) => stage === 'full')?.afterRun;
            return typeof run === 'object' ? computed(run.share) : undefined;
        },
        apart: 0.01,
        print: share,
    },
    {
        figure: 'into the water at',
        of: ({ rest }) => part(rest, (at) => at.entry?.angle),
        apart: degree,
        print: angle,
    },
    {
        figure: 'lifts the lure by its weight times',
        of: ({ rest }) => part(rest, ({ lift }) => lift),
        apart: 0.1,
        print: (value) => value.toFixed(1),
    },
    {
        figure: 'clip over pull',
        of: ({ clip }) => part(clip, ({ ratio }) => ratio),
        apart: 0.1,
        print: (value) => `${value.toFixed(1)} ×`,
    },
    {
        figure: 'falls slack by',
        of: ({ dropBack }) => part(dropBack, ({ slack }) => slack),
        apart: 0.2,
        print: length,
    },
    {
        figure: 'stalls for',
        of: ({ dropBack }) => part(dropBack, ({ stall }) => stall),
        apart: 0.1,
        print: (value) => print(value, units.s),
    },
    {
        figure: 'weakest link holds',
        of: ({ weakest }) => part(weakest, ({ holds }) => holds),
        apart: tenth,
        print: load,
    },
    {
        figure: 'line left after the run',
        of: ({ reel }) => part(reel, ({ left }) => left),
        apart: 5,
        print: (value, speech) => (value < 0 ? 'none' : length(value, speech)),
    },
];

const pairReadings: readonly Reading<PairFigures>[] = [
    { figure: 'side by side', of: ({ lateralGap }) => lateralGap, apart: 0.1, print: length },
    { figure: 'stagger', of: ({ stagger }) => stagger, apart: 0.1, print: length },
    { figure: 'clearance at the sway asked', of: ({ clearance }) => clearance, apart: 0.1, print: length },
    { figure: 'touch at a sway of', of: ({ swayMargin }) => swayMargin, apart: degree, print: angle },
];

function wavesApart(
    { waves: was }: AnalysedPlan,
    { waves: is }: AnalysedPlan,
    speech: Speech,
): FigureChange[] {
    return apart('waves', was, is, waveReadings, speech);
}

const waveReadings: readonly Reading<AnalysedPlan['waves']>[] = [
    {
        figure: 'between crests',
        of: (waves) => part(waves, (at) => at.wavelength),
        apart: 0.1,
        print: length,
    },
    {
        figure: 'first crest astern',
        of: (waves) => part(waves, (at) => at.firstCrest),
        apart: 0.1,
        print: length,
    },
];

/** In words, since nobody can read off how far one place is from another. */
function placesApart(of: string, { wave: was }: LineFigures, { wave: is }: LineFigures): FigureChange[] {
    const [before, after] = [was, is].map((wave) =>
        wave.known ? `wave ${wave.value.wave}, ${wave.value.part}` : notKnown,
    ) as [string, string];
    return before === after ? [] : [{ of, figure: 'runs on', before, after }];
}

function apart<T>(
    of: string,
    was: T,
    is: T,
    readings: readonly Reading<T>[],
    speech: Speech,
): FigureChange[] {
    return readings.flatMap((reading): FigureChange[] => {
        const figures = [reading.of(was), reading.of(is)] as const;
        const told = figures.map((figure) =>
            figure === undefined
                ? 'none'
                : figure.known
                  ? `${figure.standing === 'estimated' ? estimateMark : ''}${reading.print(figure.value, speech)}`
                  : notKnown,
        ) as [string, string];
        const [old, now] = figures.map((figure) => (figure?.known ? figure.value : undefined));
        const isNear = old !== undefined && now !== undefined && Math.abs(old - now) < reading.apart;
        // What prints alike cannot be told apart; two that print otherwise may still be the same to the reader.
        if (told[0] === told[1] || isNear || old === now) return [];
        return [{ of, figure: reading.figure, before: told[0], after: told[1] }];
    });
}

const notKnown = 'not known';

function part<T>(figure: Figure<T> | undefined, of: (value: T) => number | undefined): Figure | undefined {
    if (!figure?.known) return figure;
    const value = of(figure.value);
    return value === undefined ? undefined : { ...figure, value };
}

function computed(value: number | undefined): Figure | undefined {
    return value === undefined ? undefined : { known: true, value, standing: 'computed', leaning: [] };
}

function isNeighbour({ neighbours }: PairFigures): boolean {
    return neighbours;
}

function pairName({ a, b }: PairFigures): string {
    return `${a.line.position.name} and ${b.line.position.name}`;
}

/** What both have by one name, in the order of the later. */
function inBoth<T>(before: readonly T[], after: readonly T[], nameOf: (part: T) => string): [string, T, T][] {
    const was = new Map(before.map((part) => [nameOf(part), part]));
    return after.flatMap((part): [string, T, T][] => {
        const old = was.get(nameOf(part));
        return old ? [[nameOf(part), old, part]] : [];
    });
}
