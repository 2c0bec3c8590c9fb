import type { Measure } from '../plan/measure.ts';
import type { Rules, Spread } from '../plan/model.ts';
import { print } from '../units/print.ts';
import { type Unit, units } from '../units/unit.ts';

/** One cell of a title block. */
export interface Cell {
    readonly caption: string;
    readonly value: string;
}

/** What a sheet says about itself. */
export interface Title {
    readonly title: string;
    readonly doc?: string;
    readonly cells: readonly Cell[];
    readonly caution: string;
}

const CAUTION =
    'Figures are planning aids: a scale, a measured crest and the skipper’s judgement come first; local law and ' +
    'the event’s rules come before this sheet. Keep a lookout.';

const unsaid = 'not stated';

export function titleOfPlan(plan: Spread): Title {
    const { boat, target, speed, date, edition, author, event, crew, depth } = plan;
    return {
        title: plan.title,
        ...(plan.doc && { doc: plan.doc }),
        cells: [
            { caption: 'Boat', value: boat?.value.title ?? unsaid },
            { caption: 'Target', value: target?.value.title ?? unsaid },
            { caption: 'Speed in the water', value: said(speed, units.kn) },
            { caption: 'Sea', value: seaWords(plan) },
            ...(plan.wind ? [{ caption: 'Wind', value: windWords(plan.wind) }] : []),
            { caption: 'Crew', value: crew ? `${print(crew.si, units.count)} and the helm` : unsaid },
            { caption: 'Date', value: date?.value ?? unsaid },
            ...(edition ? [{ caption: 'Edition', value: edition.value }] : []),
            ...(author ? [{ caption: 'Drawn up by', value: author.value }] : []),
            ...(event ? [{ caption: rulesCaption(event.value), value: event.value.title }] : []),
            ...(depth ? [{ caption: 'Depth', value: inBoth(depth, units.m) }] : []),
        ],
        caution: CAUTION,
    };
}

/** An event has its hours or its radio; a team's own rules on any day have neither. */
function rulesCaption({ linesIn, linesOut, callIn }: Rules): string {
    return linesIn || linesOut || callIn ? 'Event' : 'Rules';
}

function seaWords({ sea, heading }: Spread): string {
    const height = inBoth(sea, units.m);
    if (!heading) return height;
    const angle = Math.round(Math.abs(heading.si) * (180 / Math.PI));
    if (angle === 0) return `${height}, from ahead`;
    if (angle === 180) return `${height}, from astern`;
    return `${height}, ${angle}° off the bow to ${heading.si > 0 ? 'starboard' : 'port'}`;
}

function windWords({ speed, from }: NonNullable<Spread['wind']>): string {
    return from ? `${said(speed, units.kn)} from ${said(from, units.deg)}` : said(speed, units.kn);
}

/** A length in both systems, since one crew reads metres and another one feet; the other no finer than a sea is. */
function inBoth(measure: Measure | undefined, unit: Unit): string {
    const { beside } = measure?.quantity?.unit ?? unit;
    const other = measure && beside ? ` (${print(measure.si, units[beside], { digits: 1 })})` : '';
    return `${said(measure, unit)}${other}`;
}

function said(measure: Measure | undefined, unit: (typeof units)[keyof typeof units]): string {
    return measure ? print(measure.si, measure.quantity ?? unit) : unsaid;
}
