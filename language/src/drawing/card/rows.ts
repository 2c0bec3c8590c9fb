import { lineOff } from '../../plan/analyse/reel.ts';
import type { AnalysedPlan, DragStage, LineFigures } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { type SpokenUnits, spokenUnits } from '../../plan/spoken-units.ts';
import { print } from '../../units/print.ts';
import { units } from '../../units/unit.ts';
import { fromWords, partWords, sideWord } from '../words.ts';
import type { SettingOnCard } from './handling.ts';
import {
    estimateMark,
    inWords,
    type Told,
    told,
    toldClass,
    toldFigure,
    toldLength,
    toldLoad,
} from './told.ts';

/** A line of the table that a crew works from. */
export interface CardRow {
    /** Its place in the order of setting. */
    readonly number?: number;
    /** In full, as it is called out: `port short corner`. */
    readonly name: string;
    readonly role: SpreadLine['role'];
    readonly side: string;
    /** The name without its side. */
    readonly position: string;
    readonly angler?: string;
    readonly outfit?: string;
    readonly lineClass?: Told;
    /** What it tows, or keeps ready: the title, what it is, its length. */
    readonly gear?: string;
    readonly kind?: string;
    readonly length?: Told;
    /** Astern of the transom. */
    readonly back?: Told;
    readonly wave?: string;
    /** Where on the wave, where that is not its front face. */
    readonly part?: string;
    /** How the distance is read on the line: `counter at 25 m (82 ft)`. */
    readonly reading?: string;
    readonly from?: string;
    readonly clip?: Told;
    readonly wraps?: string;
    readonly loop?: Told;
    readonly wait?: string;
    readonly drags: { readonly [stage in DragStage]?: Told };
    /** The day of the scale test, and who read the scale. */
    readonly tested?: { readonly date: string; readonly by?: string };
}

/** In the order of setting, then what is in no order, as the plan has it. */
export function rowsOf(analysed: AnalysedPlan, { order }: SettingOnCard): CardRow[] {
    const spoken = spokenUnits(analysed);
    const places = new Map(order.map(({ position }, index) => [position, index]));
    const placeOf = ({ line }: LineFigures) => places.get(line.position.name) ?? order.length;
    return [...analysed.lines]
        .sort((a, b) => placeOf(a) - placeOf(b))
        .map((figures) => rowOf(figures, places, spoken));
}

function rowOf(figures: LineFigures, places: ReadonlyMap<string, number>, spoken: SpokenUnits): CardRow {
    const { line, astern, wave } = figures;
    const { position, outfit, angler, clip, loop, wraps, wait } = line;
    const number = places.get(position.name);
    const lineClass = outfit?.value.line?.lineClass;
    const written = line.back?.kind === 'distance' ? line.back.distance.quantity : undefined;
    const back = toldFigure(astern, (metres) => toldLength(metres, written, spoken.length));
    const from = line.role === 'standby' ? undefined : fromWords(line.from);
    const tested = outfit?.value.tested;
    const reading = readingOf(figures);
    return {
        ...(number !== undefined && { number: number + 1 }),
        name: position.name,
        role: line.role,
        side: sideWord(position.side),
        position: position.name.replace(new RegExp(`^${position.side} `), ''),
        ...(angler && { angler: angler.value }),
        ...(outfit && { outfit: outfit.value.title }),
        ...(lineClass && { lineClass: toldClass(lineClass) }),
        ...gearOf(line),
        ...(back && { back }),
        ...(wave.known && { wave: `wave ${wave.value.wave}` }),
        ...(wave.known && !wave.value.onFace && { part: partWords(wave.value.part) }),
        ...(reading && { reading }),
        ...(from && { from }),
        ...(clip && { clip: toldLoad(clip.si, clip.quantity, lineClass) }),
        ...(wraps && { wraps: `${print(wraps.si, units.count)} wraps` }),
        ...(loop && { loop: toldLength(loop.si, loop.quantity) }),
        ...(wait && { wait: print(wait.si, wait.quantity ?? units.s) }),
        drags: Object.fromEntries(
            figures.drags.map(({ stage, force }) => [
                stage,
                toldLoad(force.si, force.quantity, lineClass, spoken.load),
            ]),
        ),
        ...(tested && {
            tested: { date: tested.date.value, ...(tested.by && { by: tested.by.value }) },
        }),
    };
}

function gearOf({ lure, teaser, bait }: SpreadLine): Pick<CardRow, 'gear' | 'kind' | 'length'> {
    const gear = (lure ?? teaser ?? bait)?.value;
    if (!gear) return {};
    const kind = bait ? ['bait', gear.kind?.value].filter(Boolean).join(', ') : gear.kind?.value;
    const length = gear.length && toldLength(gear.length.si, gear.length.quantity, units.mm);
    return { gear: gear.title, ...(kind && { kind }), ...(length && { length }) };
}

/** The line that is off the reel, from the leader's end at the rod's tip on, by what shows it. */
function readingOf(figures: LineFigures): string | undefined {
    const { line } = figures;
    const marks = line.outfit?.value.marks;
    if (!marks || line.role !== 'fished') return undefined;
    const out = lineOff(line, figures);
    if (!out.known) return undefined;
    const about = out.standing === 'estimated' ? estimateMark : '';
    const unit = marks.every?.quantity?.unit ?? units.m;
    const every = marks.every?.si ?? 0;
    if (!(every > 0)) return `counter at ${about}${inWords(told(out.value, unit))}`;
    const passed = Math.floor(out.value / every + 1e-9);
    const rest = told(out.value - passed * every, unit);
    if (passed === 0) return `${about}${inWords(rest)}, before the first mark`;
    const count = passed === 1 ? '1 mark' : `${passed} marks`;
    return `${about}${count}${/[1-9]/.test(rest.own) ? ` and ${inWords(rest)}` : ''}`;
}
