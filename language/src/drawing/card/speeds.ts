import type { AnalysedPlan, LineFigures } from '../../plan/figures.ts';
import type { Measure, Span } from '../../plan/measure.ts';
import { listed } from '../../plan/wording.ts';
import { print } from '../../units/print.ts';
import { type Unit, units } from '../../units/unit.ts';
import { estimateMark } from './told.ts';

/** Speeds through the water: what is asked, what the waves allow, what lures and method are made for. */
export function speedLimits({ plan, lines, waves }: AnalysedPlan): string[] {
    const unit = plan.speed?.quantity?.unit ?? units.kn;
    const kept = plan.speeds && ` The helm keeps her between ${spanWords(plan.speeds, unit)}.`;
    const asked = plan.speed && `Speed through the water ${say(plan.speed, unit)}.`;
    const doubtful = waves.known && waves.value.doubt !== undefined;
    const method = plan.method?.value;
    return [
        [asked, kept].filter(Boolean).join('').trim(),
        ...(doubtful ? [] : faceWords(lines, unit)),
        ...madeFor(lines, unit),
        ...(method?.speed ? [`${method.title} is for ${spanWords(method.speed, unit, 'to')}.`] : []),
    ].filter(Boolean);
}

/** Between which speeds every lure that runs on a front face stays on it. */
function faceWords(lines: readonly LineFigures[], unit: Unit): string[] {
    const bands = lines.flatMap(({ line, wave }) =>
        wave.known && wave.value.band
            ? [{ ...wave.value.band, name: line.position.name, about: wave.standing === 'estimated' }]
            : [],
    );
    if (bands.length === 0) return [];
    const low = bands.reduce((a, b) => (b.from > a.from ? b : a));
    const high = bands.reduce((a, b) => (b.to < a.to ? b : a));
    const end = (speed: number, { about }: { about: boolean }) =>
        `${about ? estimateMark : ''}${print(speed, unit)}`;
    const [from, to] = [end(low.from, low), end(high.to, high)];
    const off = lines.flatMap(({ line, wave }) =>
        wave.known && !wave.value.onFace ? [line.position.name] : [],
    );
    const who =
        off.length > 0
            ? 'The lures that run on a front face stay on it'
            : 'All lures stay on their front faces';
    const between =
        low.from <= high.to
            ? `${who} from ${from} (${low.name}) to ${to} (${high.name}).`
            : `No speed keeps all lures on their front faces: ${low.name} needs ${from}, ${high.name} leaves its face at ${to}.`;
    return [between, ...(off.length > 0 ? [`Not on a front face: ${listed(off)}.`] : [])];
}

/** Between which speeds every lure runs as it is made to. */
function madeFor(lines: readonly LineFigures[], unit: Unit): string[] {
    const runs = lines.flatMap(({ line }) => {
        const span = line.role === 'fished' ? (line.lure ?? line.bait)?.value.runs : undefined;
        return span ? [{ span, name: line.position.name }] : [];
    });
    if (runs.length === 0) return [];
    const low = runs.reduce((a, b) => (b.span.from.si > a.span.from.si ? b : a));
    const high = runs.reduce((a, b) => (b.span.to.si < a.span.to.si ? b : a));
    const [from, to] = [say(low.span.from, unit), say(high.span.to, unit)];
    return low.span.from.si <= high.span.to.si
        ? [`What is towed runs well from ${from} (${low.name}) to ${to} (${high.name}).`]
        : [`No speed suits all that is towed: ${low.name} runs from ${from}, ${high.name} up to ${to}.`];
}

function spanWords({ from, to }: Span, unit: Unit, joint = 'and'): string {
    return `${say(from, unit)} ${joint} ${say(to, unit)}`;
}

function say({ si, quantity }: Measure, unit: Unit): string {
    return print(si, quantity?.unit.dimension === 'speed' ? quantity : unit);
}
