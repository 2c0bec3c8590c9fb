import type { AnalysedPlan, DragStage, Figure, LineFigures, PairFigures } from '../plan/figures.ts';
import { listed, within } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { massOf } from '../units/quantity.ts';
import { units } from '../units/unit.ts';
import { type PlansOfFile, whole } from './figures.ts';
import { strikeTables, tablesOfLines } from './figures-of-lines.ts';
import { sensitivityTable, tablesOfTurns } from './figures-of-turns.ts';
import { sentencesOf } from './figures-sentences.ts';
import {
    estimateMark,
    marginWords,
    measuredMark,
    nameOf,
    type Rows,
    type Speech,
    shown,
    speechOf,
} from './figures-speech.ts';
import { type Ink, noColours } from './ink.ts';
import { type Column, table } from './table.ts';
import { readable, type Width, widthFor } from './width.ts';

/** The figures of these plans as tables, in the units that their authors use. */
export async function figuresTable(files: readonly PlansOfFile[], ink: Ink = noColours): Promise<string> {
    const plans = files.flatMap((file) => file.plans);
    const width = await widthFor(
        plans.flatMap(({ plan, lines }) => [
            plan.title,
            ...lines.flatMap(({ line }) => [towOf(line), line.position.name]),
        ]),
    );
    const blocks = files.flatMap(({ path, plans }) =>
        plans.map((plan) => planTable(path, whole(plan), ink, width)),
    );
    return blocks.length === 0 ? '' : `${blocks.map((lines) => lines.join('\n')).join('\n\n\n')}\n`;
}

/** What the tightest turns of a plan hang on, alone; or why that is not known. */
export async function sensitivityText(analysis: AnalysedPlan): Promise<string> {
    const { plan, lines, sensitivity } = analysis;
    const width = await widthFor([plan.title, ...lines.map(({ line }) => line.position.name)]);
    const rows = sensitivity?.known ? [sensitivityTable(sensitivity.value, speechOf(analysis))] : [];
    const text = [
        readable(`${plan.title} (${plan.name})`),
        ...rows.flatMap((each) => titled(each, noColours, width)),
        ...notesOn(sensitivity ? [[sensitivity]] : []).map(readable),
    ];
    return `${text.join('\n')}\n`;
}

function planTable(path: string, analysis: AnalysedPlan, ink: Ink, width: Width): string[] {
    const { plan, lines, pairs } = analysis;
    const speech = speechOf(analysis);
    const heading = `${plan.title} (${plan.name}, ${path})`;
    const neighbours = pairs.filter((pair) => pair.neighbours);
    return [
        ink.strong(readable(heading)),
        waveLine(analysis, speech),
        '',
        ...table(
            lineColumns,
            lines.map((line) => lineRow(line, speech)),
            ink,
            width,
        ),
        ...(neighbours.length === 0 ? [] : ['', ...pairTable(neighbours, analysis, speech, ink, width)]),
        ...[...tablesOfLines(analysis, speech), ...strikeTables(analysis, speech)].flatMap((rows) =>
            titled(rows, ink, width),
        ),
        ...spoken(sentencesOf(analysis, speech.length)),
        ...tablesOfTurns(analysis, speech).flatMap((rows) => titled(rows, ink, width)),
        ...notes(analysis).map((note) => ink.faint(readable(note))),
    ];
}

function titled({ title, columns, rows }: Rows, ink: Ink, width: Width): string[] {
    return rows.length === 0 ? [] : ['', readable(title), ...table(columns, rows, ink, width)];
}

function spoken(sentences: readonly string[]): string[] {
    return sentences.length === 0 ? [] : ['', ...sentences.map(readable)];
}

function waveLine({ waves }: AnalysedPlan, speech: Speech): string {
    if (!waves.known) return `Waves: ${waves.reason}`;
    const { speed, wavelength, firstCrest, firstCrestMeasured, doubt } = waves.value;
    const first = `first crest ${print(firstCrest, speech.length)} astern`;
    const standing = firstCrestMeasured ? 'measured' : 'estimated';
    const text = `Waves at ${print(speed, speech.speed)}: ${print(wavelength, speech.length)} between crests, ${first} (${standing}).`;
    return doubt === undefined ? text : `${text} ${doubt}`;
}

const lineColumns: readonly Column[] = [
    { head: 'Position' },
    { head: 'Tows' },
    { head: 'Astern', align: 'right' },
    { head: 'Wave' },
    { head: 'Off centre', align: 'right' },
    { head: 'Pull', align: 'right' },
    { head: 'Set', align: 'right' },
    { head: 'Hooked', align: 'right' },
    { head: 'Full', align: 'right' },
];

function lineRow(figures: LineFigures, speech: Speech): string[] {
    const { line, astern, lateral, wave, pull } = figures;
    return [
        line.position.name,
        towOf(line),
        shown(astern, (value) => print(value, speech.length)),
        shown(wave, ({ wave, part }) => `${wave}, ${part}`),
        shown(lateral, (value) => offCentre(value, speech)),
        shown(pull, (value) =>
            within(print(massOf(value), speech.load), pull.known ? pull.range : undefined, (end) =>
                print(massOf(end), speech.load),
            ),
        ),
        ...(['set', 'hooked', 'full'] as const).map((stage) => dragCell(figures, stage, speech)),
    ];
}

function towOf(line: LineFigures['line']): string {
    const tow = line.lure ?? line.teaser ?? line.bait;
    return tow?.value.title ?? '';
}

function offCentre(lateral: number, speech: Speech): string {
    const distance = print(Math.abs(lateral), speech.length);
    if (/^0(\D|$)/.test(distance) && !/[1-9]/.test(distance)) return distance;
    return `${distance} ${lateral > 0 ? 'port' : 'starboard'}`;
}

function dragCell({ drags }: LineFigures, stage: DragStage, speech: Speech): string {
    const drag = drags.find((drag) => drag.stage === stage);
    if (!drag) return '';
    const { si, quantity } = drag.force;
    // A share of class is told as a load here: the share stands behind it anyhow.
    const like = quantity && quantity.unit.dimension === 'load' ? quantity : speech.load;
    const force = print(massOf(si), like);
    return drag.share === undefined ? force : `${force} (${print(drag.share, units['%'], { digits: 0 })})`;
}

const pairColumns = (asked: string): readonly Column[] => [
    { head: 'Neighbours' },
    { head: 'Side by side', align: 'right' },
    { head: 'Stagger', align: 'right' },
    { head: `Clearance at ${asked}`, align: 'right' },
    { head: 'Touch at a sway of', align: 'right' },
];

function pairTable(
    pairs: readonly PairFigures[],
    { swayAsked }: AnalysedPlan,
    speech: Speech,
    ink: Ink,
    width: Width,
): string[] {
    const rows = pairs.map((pair) => [
        `${pair.a.line.position.name} and ${pair.b.line.position.name}`,
        shown(pair.lateralGap, (value) => print(value, speech.length)),
        shown(pair.stagger, (value) => print(value, speech.length)),
        shown(pair.clearance, (value) => print(value, speech.length)),
        marginCell(pair, speech),
    ]);
    return table(pairColumns(print(swayAsked.value, units.deg)), rows, ink, width);
}

function marginCell({ a, b, swayMargin, swayAtLure }: PairFigures, speech: Speech): string {
    if (!swayAtLure.known || !swayMargin.known) return '';
    const pair = { a, b, swayMargin: swayMargin.value, swayAtLure: swayAtLure.value };
    return marginWords(pair, speech, swayMargin.standing === 'estimated');
}

/** A figure, and where in the plan it stands; nowhere in particular for one of the whole. */
type Noted = readonly [figure: Figure<unknown>, where?: string];

/** What the tables lean on, and what they are silent about. */
function notes({ waves, lines, pairs, order, clearings, turns, sensitivity }: AnalysedPlan): string[] {
    const present = (figures: readonly (Figure<unknown> | undefined)[]) =>
        figures.flatMap((each) => each ?? []);
    const ofLines = lines.flatMap((figures): Noted[] => {
        const { astern, wave, lateral, pull, rest, clip, dropBack, weakest, reel, strikes, line } = figures;
        // Of what stands by nothing is missing: it is not out.
        const out = line.role === 'standby' ? [] : [astern, wave, lateral, pull, rest, clip, dropBack];
        return present([...out, weakest, reel, strikes?.direct, strikes?.dropBack]).map((figure) => [
            figure,
            nameOf(figures),
        ]);
    });
    const ofPairs = pairs.flatMap(({ a, b, lateralGap, stagger, clearance, swayMargin }) =>
        [lateralGap, stagger, clearance, swayMargin].map(
            (figure): Noted => [figure, `${nameOf(a)} and ${nameOf(b)}`],
        ),
    );
    const ofAll = present([order, clearings, turns, sensitivity]).map((figure): Noted => [figure]);
    return notesOn([[waves], ...ofLines, ...ofPairs, ...ofAll]);
}

function notesOn(noted: readonly Noted[]): string[] {
    const leaning = new Set(noted.flatMap(([figure]) => (figure.known ? figure.leaning : [])));
    const silent = new Map<string, Set<string>>();
    for (const [figure, where] of noted) {
        if (figure.known) continue;
        const places = silent.get(figure.reason) ?? new Set();
        silent.set(figure.reason, places);
        if (where && !figure.reason.includes(where)) places.add(where);
    }
    return [
        ...(leaning.size > 0
            ? [
                  '',
                  `${measuredMark} measured; no mark: computed, or as the plan says; ${estimateMark} leans on estimates:`,
                  ...[...leaning].map((each) => `  ${each}`),
              ]
            : []),
        ...(silent.size > 0
            ? [
                  '',
                  'Not known:',
                  ...[...silent].map(([reason, places]) =>
                      places.size > 0 ? `  ${listed([...places])}: ${reason}` : `  ${reason}`,
                  ),
              ]
            : []),
    ];
}
