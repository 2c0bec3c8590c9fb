import { remedy } from '../../physics/remedy.ts';
import {
    clearance,
    directlyAstern,
    type SwayingLine,
    swayAtLure,
    swayMargin,
    USUAL_SWAY,
} from '../../physics/sway.ts';
import type { Figure, LineFigures, PairFigures, Point } from '../figures.ts';
import { known, leaningOf, silent } from './figure.ts';
import { remembering } from './memory.ts';

/** A line whose place is known: only these can be paired. */
interface Placed {
    readonly figures: LineFigures;
    readonly towPoint: Point;
    readonly astern: number;
    readonly leaning: readonly string[];
}

export const CAP = `The way of a lure to either side at most ${USUAL_SWAY.cap} m (estimate).`;

/**
 * Every pair of lines that run at a known place, running straight: how near their fans come at the sway of each, and
 * at what sway they would touch.
 *
 * @param contact    m
 */
export function pairsOf(lines: readonly LineFigures[], contact: number): PairFigures[] {
    const placed = lines.flatMap(place);
    const outward = [...placed].sort((a, b) => a.towPoint[1] - b.towPoint[1]);
    const found: PairFigures[] = [];
    for (let first = 0; first < placed.length; first++) {
        for (let second = first + 1; second < placed.length; second++) {
            const [a, b] = [placed[first]!, placed[second]!];
            const neighbours = Math.abs(outward.indexOf(a) - outward.indexOf(b)) === 1;
            found.push(pairOf(a, b, neighbours, contact));
        }
    }
    return found;
}

function place(figures: LineFigures): Placed[] {
    const { towPoint, astern, line } = figures;
    if (line.role === 'standby' || !towPoint.known || !astern.known) return [];
    // A lure that would run beside or ahead of its own tow point has no line to speak of.
    if (!(astern.value > -towPoint.value[0])) return [];
    const leaning = leaningOf(towPoint, astern, figures.sway);
    return [{ figures, towPoint: towPoint.value, astern: astern.value, leaning }];
}

function pairOf(a: Placed, b: Placed, neighbours: boolean, contact: number): PairFigures {
    const [first, second] = [swaying(a), swaying(b)];
    const { margin, least, cure } = judge({ first, second, contact });
    const leaning = [...new Set([...a.leaning, ...b.leaning, CAP])];
    const touch = margin?.outcome === 'touch' ? margin.sway : Number.POSITIVE_INFINITY;
    const gone = silent('The lines are not all there.');
    const figure = (value: number | undefined): Figure =>
        value === undefined ? gone : known(value, 'computed', leaning);
    return {
        a: a.figures,
        b: b.figures,
        neighbours,
        lateralGap: known(Math.abs(a.towPoint[1] - b.towPoint[1]), 'computed'),
        stagger: known(Math.abs(a.astern - b.astern), 'computed'),
        clearance: figure(least),
        swayMargin: margin ? figure(touch) : gone,
        swayAtLure: margin ? figure(metresAtLure(a.figures, b.figures, touch)) : gone,
        ...(cure && { cure }),
    };
}

/** What a sway amounts to at the lure that runs further back of two whose places are known, m. */
export function metresAtLure(a: LineFigures, b: LineFigures, sway: number): number {
    const [longer] = [...place(a), ...place(b)].sort((one, other) => other.astern - one.astern);
    return longer && Number.isFinite(sway) ? swayAtLure({ ...swaying(longer), sway }) : sway;
}

interface PairQuestion {
    readonly first: SwayingLine;
    readonly second: SwayingLine;
    readonly contact: number;
}

const judge = remembering(({ first, second, contact }: PairQuestion) => {
    const least = clearance(first, second)?.distance;
    const cure = least !== undefined && least < contact ? remedy(first, second, contact) : undefined;
    return { margin: swayMargin(first, second, contact), least, cure };
}, 2048);

/** The line in air from its tow point to its lure. */
function swaying({ figures, towPoint, astern }: Placed): SwayingLine {
    const sway = figures.sway.known ? figures.sway.value : USUAL_SWAY.sway;
    return { line: directlyAstern(towPoint, astern), sway, cap: USUAL_SWAY.cap };
}
