import { fromWords, gearWords, partWords, sideways, titleOf } from '../../drawing/words.ts';
import { strikesOn } from '../../plan/analyse/strikes.ts';
import type { AnalysedPlan, DragFigure, Figure, Known, LineFigures } from '../../plan/figures.ts';
import type { Measure } from '../../plan/measure.ts';
import type { Spread } from '../../plan/model.ts';
import type { Origin } from '../../plan/origin.ts';
import { within } from '../../plan/wording.ts';
import { type Part, rows, text, title } from './page.ts';
import { type Speech, sourceOf } from './speech.ts';

/** Everything that is known of one line of a spread: what was decided and by whom, and what follows from it. */
export function aboutLine(figures: LineFigures, { plan }: AnalysedPlan, speech: Speech): Part[] {
    const { line, drags, pull, clip, dropBack, weakest, reel, rest } = figures;
    const gear = line.lure ?? line.teaser ?? line.bait;
    return [
        title(titleOf(line.position), plan.title),
        ...rows([
            ['Outfit', line.outfit?.value.title, from(line.outfit?.origin)],
            ['Tows', gearWords(line), from(gear?.origin)],
            ['Back', backWords(figures, speech), from(line.back?.origin)],
            ['Wave', waveWords(figures), bandWords(figures, speech)],
            ['From', towWords(figures, speech), from(line.from?.origin)],
            ['Sideways', known(figures.lateral, sideways)],
            ['Line out', marked(rest, ({ lineOut }) => speech.length(lineOut))],
            [
                'Runs deep',
                known(rest, ({ depth, range }) =>
                    depth === undefined
                        ? undefined
                        : within(speech.length(depth), range?.depth, speech.length),
                ),
            ],
            [
                'Lifts the lure',
                marked(
                    rest,
                    ({ lift, range }) => `${within(tenth(lift), range?.lift, tenth)} times its weight`,
                ),
            ],
            [
                'Pull',
                marked(pull, (newtons) =>
                    within(speech.load(newtons), (pull as Known<number>).range, speech.load),
                ),
                standingOf(pull),
            ],
            ...drags.map((drag) => [stageWords(drag), dragWords(drag, speech), from(drag.force.origin)]),
            ['Clip', line.clip && speech.load(line.clip.si, line.clip), from(line.clip?.origin)],
            [
                '',
                clip &&
                    marked(
                        clip,
                        ({ ratio, ratioRange }) =>
                            `${within(tenth(ratio), ratioRange, tenth)} times the pull with surge`,
                    ),
            ],
            ['Loop', measure(line.loop, speech.length), from(line.loop?.origin)],
            ['Wait', measure(line.wait, speech.time), from(line.wait?.origin)],
            [
                'Falls slack',
                dropBack &&
                    known(
                        dropBack,
                        ({ slack, stall }) => `${speech.length(slack)}, ${speech.time(stall)} to take up`,
                    ),
            ],
            ['At a bite', biteWords(figures, plan, speech)],
            ['Weakest', weakest && known(weakest, ({ name, holds }) => `${name}, ${speech.load(holds)}`)],
            [
                'On the spool',
                reel && marked(reel, ({ left }) => `${speech.length(Math.max(0, left))} left after the run`),
            ],
        ]),
        ...aboutSpool(drags, speech),
        ...aboutStanding(figures),
    ];
}

/** `clip opens after 0.2 s, line tight after 2.9 s`: what happens within ten seconds, the way the plan strikes. */
function biteWords(figures: LineFigures, plan: Spread, speech: Speech): string | undefined {
    const strikes = strikesOn(figures, plan, false);
    const strike = strikes && (strikes.planned === 'direct' ? strikes.direct : strikes.dropBack);
    if (!strike?.known) return undefined;
    const { moments, peak, peakRange } = strike.value;
    const told = moments
        .filter(({ name }) => name !== 'bite')
        .map(({ name, time, range }) => `${name} after ${within(tenth(time), range, tenth)} s`);
    return [
        ...told,
        `at most ${within(speech.load(peak), peakRange, speech.load)} at the hook (estimates)`,
    ].join(', ');
}

/** What a drag that is set on a full spool becomes as line goes out. */
export function aboutSpool(drags: readonly DragFigure[], speech: Speech): Part[] {
    const along = drags.filter(({ spool }) => spool.length > 0);
    const fractions = along[0]?.spool.map(({ left }) => left) ?? [];
    if (fractions.length === 0) return [];
    const cell = (drag: DragFigure, left: number) => {
        const at = drag.spool.find((each) => each.left === left);
        return (
            at &&
            `${speech.load(at.force, drag.force)}${at.share === undefined ? '' : `, ${speech.share(at.share)}`}`
        );
    };
    return rows(
        fractions.map((left) => [speech.share(left), ...along.map((drag) => cell(drag, left))]),
        ['Line left', ...along.map(stageWords)],
    );
}

function stageWords({ stage }: DragFigure): string {
    return { set: 'Set', hooked: 'Hooked', full: 'Full' }[stage];
}

export function dragWords({ force, share }: DragFigure, speech: Speech): string {
    const told = speech.load(force.si, force);
    return share === undefined ? told : `${told}, ${speech.share(share)} of class`;
}

function backWords({ line: { back }, astern }: LineFigures, speech: Speech): string | undefined {
    if (!back) return undefined;
    if (back.kind === 'distance') return speech.length(back.distance.si, back.distance);
    const sign = astern.known && astern.standing === 'estimated' ? '≈' : '=';
    const metres = known(astern, (si) => ` ${sign} ${speech.length(si)}`) ?? '';
    return `wave ${back.wave.si}${metres}`;
}

function waveWords({ wave }: LineFigures): string | undefined {
    return known(wave, (at) => `${at.wave}, ${partWords(at.part)}`);
}

function bandWords({ wave }: LineFigures, speech: Speech): string | undefined {
    return known(
        wave,
        ({ band }) => band && `holds from ${speech.speed(band.from)} to ${speech.speed(band.to)}`,
    );
}

function towWords({ line, towPoint }: LineFigures, speech: Speech): string | undefined {
    const height = known(towPoint, ([, , up]) => `, ${speech.length(up)} up`) ?? '';
    const words = fromWords(line.from);
    return words && `${words}${height}`;
}

/** The estimates that the figures lean on, and what is not known, each once. */
function aboutStanding(figures: LineFigures): Part[] {
    const all: readonly Figure<unknown>[] = [
        figures.astern,
        figures.wave,
        figures.lateral,
        figures.pull,
        figures.rest,
    ];
    const leaning = new Set(all.flatMap((each) => (each.known ? each.leaning : [])));
    const silent = new Set(all.flatMap((each) => (each.known ? [] : [each.reason])));
    return [
        ...(leaning.size > 0 ? [text(`Leans on estimates: ${[...leaning].join(' ')}`)] : []),
        ...(silent.size > 0 ? [text(`Not known: ${[...silent].join(' ')}`)] : []),
    ];
}

function standingOf(figure: Figure): string | undefined {
    if (!figure.known) return undefined;
    return {
        measured: 'measured',
        written: 'written',
        computed: 'from a measured one',
        estimated: 'estimate',
    }[figure.standing];
}

const tenth = (value: number) => value.toFixed(1);

/** A mark before what leans on an estimate. */
function marked<T>(figure: Figure<T>, say: (value: T) => string): string | undefined {
    return known(
        figure,
        (value) => `${figure.known && figure.standing === 'estimated' ? '~' : ''}${say(value)}`,
    );
}

function measure(
    value: Measure | undefined,
    say: (si: number, like?: Measure) => string,
): string | undefined {
    return value && say(value.si, value);
}

function from(origin: Origin | undefined): string | undefined {
    return origin && sourceOf(origin);
}

export function known<A, B>(figure: Figure<A>, say: (value: A) => B): B | undefined {
    return figure.known ? say(figure.value) : undefined;
}
