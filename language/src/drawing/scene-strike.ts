import type { StrikeMoment } from '../physics/strike.ts';
import { spoolOf } from '../plan/analyse/drags.ts';
import { type SpoolCurve, spoolCurvesOf } from '../plan/analyse/spool-curve.ts';
import { strikesOn } from '../plan/analyse/strikes.ts';
import type { AnalysedPlan, DragStage, Figure, LineFigures, Range, StrikeFigures } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Place } from '../plan/origin.ts';
import { within } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { massOf, type Quantity } from '../units/quantity.ts';
import { units } from '../units/unit.ts';
import { type Mark, markFindings } from './marks.ts';
import { type Title, titleOfPlan } from './title.ts';

/**
 * The first ten seconds of a bite on one line, and its drag as the spool empties; N, m and s. Flat arrays of plain
 * numbers, so that it goes over a wire as it is: some 20 kB.
 */
export interface StrikeScene {
    readonly view: 'strike';
    readonly plan: string;
    /** The position that it shows, as the plan says it. */
    readonly at: Place;
    readonly title: Title;
    readonly position: string;
    readonly heading: string;
    /** Every position that a bite can come to, in the plan's order. */
    readonly positions: readonly string[];
    /** Loads are shown in this unit: the author's own, or kilograms. */
    readonly load: Quantity | undefined;
    /** In the style that is shown, and in the other one. */
    readonly strike?: StrikePlot;
    readonly other?: StrikePlot;
    readonly spool?: SpoolPlot;
    /** Of the drag, the clip and the weakest link: what both plots are read against. */
    readonly levels: readonly Level[];
    readonly marks: readonly Mark[];
    readonly remarks: readonly string[];
    readonly unknown: readonly string[];
}

export interface StrikePlot {
    readonly style: 'direct' | 'drop-back';
    /** s from the bite, every 0.05 s; the others hold one number for each of them. */
    readonly time: readonly number[];
    /** Tension at the hook, N. */
    readonly hook: readonly number[];
    /** What the reel is set to, N. */
    readonly drag: readonly number[];
    /** Line run off since the bite, m. */
    readonly lineOff: readonly number[];
    /** m */
    readonly slack: readonly number[];
    readonly moments: readonly WordedMoment[];
    /** The highest tension at the hook, N. */
    readonly peak: number;
    /** Between what it lies for a fish that nobody has met, N. */
    readonly peakRange?: Range;
}

export interface WordedMoment extends StrikeMoment {
    /** `The clip opens`. */
    readonly words: string;
}

/** Drag against line off the spool. */
export interface SpoolPlot {
    readonly curves: readonly SpoolCurve[];
    /** What the spool holds, m. */
    readonly holds: number;
    /** Off the spool while trolling, and after the run that is expected, m; where those are known. */
    readonly out?: number;
    readonly afterRun?: number;
}

/** A load to read the curves against. */
export interface Level {
    readonly kind: DragStage | 'clip' | 'weakest';
    /** N */
    readonly force: number;
    /** `hooked drag 8 kg, 33 % of class`. */
    readonly words: string;
}

export interface StrikeWishes {
    /** By its name; by default the first of which a bite can be followed, else the first that is fished. */
    readonly position?: string;
    /** As the plan's method strikes by default. */
    readonly style?: StrikePlot['style'];
}

export function sceneOfStrike(
    analysed: AnalysedPlan,
    { position, style }: StrikeWishes = {},
    findings: readonly Finding[] = [],
): StrikeScene {
    const { plan, lines } = analysed;
    const fished = lines.filter(({ line }) => line.role === 'fished');
    const figures =
        position === undefined
            ? (fished.find((each) => plannedStrike(each, plan).known) ?? fished[0])
            : fished.find(({ line }) => line.position.name === position);
    const common = {
        view: 'strike' as const,
        plan: plan.name,
        title: titleOfPlan(plan),
        positions: fished.map(({ line }) => line.position.name),
    };
    const marks = markFindings(findings, plan.name);
    if (!figures) {
        return {
            ...common,
            at: plan.origin.place,
            position: position ?? '',
            heading: 'No bite can be shown.',
            load: undefined,
            levels: [],
            marks: [],
            remarks: [],
            unknown: [
                position === undefined ? 'The plan fishes no line.' : `The plan fishes no ${position}.`,
            ],
        };
    }
    const { line } = figures;
    const { planned, direct, dropBack } = strikesOn(figures, plan)!;
    const shown = style ?? planned;
    const [strike, other] = shown === 'direct' ? [direct, dropBack] : [dropBack, direct];
    const spool = spoolCurvesOf(line);
    const load = [line.drag.hooked, line.drag.set, line.drag.full, line.clip]
        .map((measure) => measure?.quantity)
        .find((quantity) => quantity?.unit.dimension === 'load');
    const drawn = plotOf(strike, shown);
    const beside = plotOf(other, shown === 'direct' ? 'drop-back' : 'direct');
    return {
        ...common,
        at: line.origin.place,
        position: line.position.name,
        heading: `A bite on the ${line.position.name}, ${styleWords[shown]}${shown === planned ? '' : ' (the plan strikes the other way)'}.`,
        load,
        ...(drawn && { strike: drawn }),
        ...(beside && { other: beside }),
        ...(spool.known && { spool: spoolPlot(figures, spool.value) }),
        levels: levelsOf(figures, load),
        marks: marks.filter(({ positions }) => positions.includes(line.position.name)),
        remarks:
            strike.known && strike.leaning.length > 0
                ? [`Estimates that the curves lean on: ${strike.leaning.join(' ')}`]
                : [],
        unknown: [strike, spool].flatMap((figure) => (figure.known ? [] : [figure.reason])),
    };
}

/** A load, N, in the unit of the scene. */
export function loadWords(newtons: number, like: Quantity | undefined): string {
    return print(Math.abs(newtons) < SLIGHT ? 0 : massOf(newtons), like ?? units.kg);
}

/** Less than a scale on deck shows, N. */
const SLIGHT = 0.5;

const momentWords: Readonly<Record<StrikeMoment['name'], string>> = {
    bite: 'the bite',
    'clip opens': 'the clip opens',
    'line tight': 'the slack is out, the line is tight',
    'reel slips': 'the reel gives line',
    push: 'the lever is pushed',
    'hooked drag': 'at hooked drag',
};

/** The strike as sentences. */
export function strikeWords(scene: StrikeScene): string[] {
    const { strike, spool, levels, load } = scene;
    return [
        `${scene.title.title}, a strike.`,
        scene.heading,
        ...(strike?.moments ?? []).map(
            ({ time, words, hook, lineOff }) =>
                `${print(time, units.s)}: ${words}; ${loadWords(hook, load)} at the hook, ${print(lineOff, units.m)} run off.`,
        ),
        ...(strike
            ? [
                  `At most ${within(loadWords(strike.peak, load), strike.peakRange, (end) => loadWords(end, load))} at the hook in ten seconds.`,
              ]
            : []),
        ...levels.map(({ words }) => `${words}.`),
        ...(spool?.curves ?? []).map(
            ({ stage, force }) =>
                `${stage} drag at the reel: ${loadWords(force[0]!, load)} on a full spool, ${loadWords(force.at(-1)!, load)} on an empty one.`,
        ),
        ...scene.marks.map(({ number, severity, message }) => `Finding ${number}, ${severity}: ${message}`),
        ...scene.remarks,
        ...scene.unknown,
    ];
}

function plannedStrike(figures: LineFigures, plan: AnalysedPlan['plan']): Figure<StrikeFigures> {
    const { planned, direct, dropBack } = strikesOn(figures, plan)!;
    return planned === 'direct' ? direct : dropBack;
}

const styleWords: Readonly<Record<StrikePlot['style'], string>> = {
    direct: 'hooked directly',
    'drop-back': 'with a drop-back',
};

function plotOf(strike: Figure<StrikeFigures>, style: StrikePlot['style']): StrikePlot | undefined {
    if (!strike.known) return undefined;
    const { moments, series = [], peak, peakRange } = strike.value;
    return {
        style,
        time: series.map(({ time }) => rounded(time)),
        hook: series.map(({ hook }) => rounded(hook)),
        drag: series.map(({ drag }) => rounded(drag)),
        lineOff: series.map(({ lineOff }) => rounded(lineOff)),
        slack: series.map(({ slack }) => rounded(slack)),
        moments: moments.map((moment) => ({ ...moment, words: momentWords[moment.name] })),
        peak,
        ...(peakRange && { peakRange }),
    };
}

function spoolPlot({ line, reel }: LineFigures, curves: readonly SpoolCurve[]): SpoolPlot {
    const { reel: spooled, line: main } = line.outfit!.value;
    const holds = spoolOf(spooled!, main)!.capacity;
    return {
        curves,
        holds,
        ...(reel?.known && { out: reel.value.out, afterRun: reel.value.out + reel.value.run }),
    };
}

function levelsOf({ line, drags, weakest, clip }: LineFigures, load: Quantity | undefined): Level[] {
    const share = (of: number | undefined) =>
        of === undefined ? '' : `, ${Math.round(of * 100)} % of class`;
    const { clip: setting } = line;
    return [
        ...drags.map(
            ({ stage, force, share: of }): Level => ({
                kind: stage,
                force: force.si,
                words: `${stage} drag ${loadWords(force.si, load)}${share(of)}`,
            }),
        ),
        ...(setting && clip
            ? [
                  {
                      kind: 'clip',
                      force: setting.si,
                      words: `clip opens at ${loadWords(setting.si, load)}`,
                  } as const,
              ]
            : []),
        ...(weakest?.known
            ? [
                  {
                      kind: 'weakest',
                      force: weakest.value.holds,
                      words: `weakest link, ${weakest.value.name}: ${loadWords(weakest.value.holds, load)}`,
                  } as const,
              ]
            : []),
    ];
}

function rounded(number: number): number {
    return Math.round(number * 1000) / 1000 || 0;
}
