import type { Measure } from '../../plan/measure.ts';
import type { Rules, Spread, WrittenRules } from '../../plan/model.ts';
import { capital, listed } from '../../plan/wording.ts';
import { print } from '../../units/print.ts';
import { units } from '../../units/unit.ts';
import type { Cell } from '../title.ts';
import { inWords, toldClass, toldLength } from './told.ts';

/** The limits that the event or the team's own rules set for what this plan fishes. */
export function eventLimits(plan: Spread): string[] {
    const rules = plan.event?.value;
    if (!rules) return [];
    const books = [rules.own, ...rules.written];
    const first = <T>(of: (book: WrittenRules) => T | undefined): T | undefined => {
        for (const book of books) {
            const found = of(book);
            if (found !== undefined) return found;
        }
        return undefined;
    };
    const limits = [
        ...ownLimits(rules),
        ...classesOf(plan).flatMap((lineClass) => lengthsFor(lineClass, first)),
        ...hookLimits(plan, first),
        ...tackleLimits(first),
    ];
    return limits.length === 0 ? [] : [`${rules.title}:`, ...limits, ...editionsOf(rules)];
}

function ownLimits(rules: Rules): string[] {
    const { mostLines, mostLinesPerAngler, classes, baitHook, teasersHookless, stretchMargin } = rules;
    const most = [
        mostLines && `at most ${print(mostLines.si, units.count)} lines`,
        mostLinesPerAngler && `at most ${print(mostLinesPerAngler.si, units.count)} for each angler`,
    ].filter(Boolean);
    return [
        ...(most.length > 0 ? [`${most.join(', ')}.`] : []),
        ...(classes
            ? [
                  `line classes ${listed(
                      classes.among.map((each) => inWords(toldClass(each))),
                      'or',
                  )}.`,
              ]
            : []),
        ...(baitHook && baitHook.value !== 'any' ? [`${baitHook.value} hooks with natural bait.`] : []),
        ...(teasersHookless?.value ? ['teasers carry no hooks.'] : []),
        ...(stretchMargin ? [`${length(stretchMargin)} kept under every length limit, for stretch.`] : []),
    ].map(capital);
}

function lengthsFor(lineClass: Measure, first: First): string[] {
    const row = (which: 'double' | 'leader' | 'combined') =>
        first(({ limits }) => {
            const covering = limits.filter(({ upTo }) => upTo === undefined || lineClass.si <= upTo.si);
            return covering.sort((a, b) => (a.upTo?.si ?? Infinity) - (b.upTo?.si ?? Infinity))[0]?.[which];
        });
    const limits = (['double', 'leader', 'combined'] as const).flatMap((which) => {
        const most = row(which);
        return most ? [`${which === 'combined' ? 'both together' : which} ${length(most)}`] : [];
    });
    return limits.length > 0 ? [`On ${inWords(toldClass(lineClass))} at most: ${limits.join(', ')}.`] : [];
}

function hookLimits({ lines }: Spread, first: First): string[] {
    const fished = lines.filter(({ role }) => role === 'fished');
    const most = (what: string, count: Measure | undefined, spacing: Measure | undefined) =>
        count
            ? [
                  `${what}: at most ${print(count.si, units.count)} hooks${spacing ? `, eyes at most ${length(spacing)} apart` : ''}.`,
              ]
            : [];
    return [
        ...(fished.some(({ lure }) => lure)
            ? most(
                  'Skirted lure',
                  first((book) => book.lureHooks),
                  first((book) => book.lureHookSpacing),
              )
            : []),
        ...(fished.some(({ bait }) => bait)
            ? most(
                  'Natural bait',
                  first((book) => book.baitHooks),
                  first((book) => book.baitHookSpacing),
              )
            : []),
    ];
}

function tackleLimits(first: First): string[] {
    const tip = first((book) => book.rodTip);
    const butt = first((book) => book.rodButt);
    const gaff = first((book) => book.gaff);
    const rope = first((book) => book.gaffRope);
    const wire = first((book) => book.wireLine);
    const rod = [tip && `tip at least ${length(tip)}`, butt && `butt at most ${length(butt)}`].filter(
        Boolean,
    );
    const gaffs = [gaff && `at most ${length(gaff)}`, rope && `rope at most ${length(rope)}`].filter(Boolean);
    return [
        ...(rod.length > 0 ? [`Rod: ${rod.join(', ')}.`] : []),
        ...(gaffs.length > 0 ? [`Gaff: ${gaffs.join(', ')}.`] : []),
        ...(wire?.value === false ? ['No wire main line.'] : []),
    ];
}

/** Limits are only as current as the edition that they were copied from. */
function editionsOf({ own, written }: Rules): string[] {
    const editions = [own, ...written].flatMap(({ edition }) => (edition ? [edition.value] : []));
    return editions.length > 0 ? [`As written in ${listed(editions)}: check the current edition.`] : [];
}

/** When lines may go in and must be out, how a fish is called in, and the skipper's own limit. */
export function timesOf({ event, weatherLimit }: Spread): Cell[] {
    const { linesIn, linesOut, callIn } = event?.value ?? {};
    return [
        ...(linesIn ? [{ caption: 'Lines in', value: linesIn.value }] : []),
        ...(linesOut ? [{ caption: 'Lines out', value: linesOut.value }] : []),
        ...(callIn ? [{ caption: 'Call in', value: callIn.value }] : []),
        ...(weatherLimit ? [{ caption: 'Weather limit', value: weatherLimit.value }] : []),
    ];
}

type First = <T>(of: (book: WrittenRules) => T | undefined) => T | undefined;

function classesOf({ lines }: Spread): Measure[] {
    const classes = new Map<number, Measure>();
    for (const { outfit } of lines) {
        const lineClass = outfit?.value.line?.lineClass;
        if (lineClass && !classes.has(lineClass.si)) classes.set(lineClass.si, lineClass);
    }
    return [...classes.values()].sort((a, b) => b.si - a.si);
}

function length({ si, quantity }: Measure): string {
    return inWords(toldLength(si, quantity));
}
