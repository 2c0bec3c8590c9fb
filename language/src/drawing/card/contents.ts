import { clearingsOf } from '../../plan/analyse/clearing.ts';
import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Day, Spread } from '../../plan/model.ts';
import { type Mark, markFindings } from '../marks.ts';
import { sceneFromAbove } from '../scene.ts';
import { type Cell, titleOfPlan } from '../title.ts';
import { plainText } from '../words.ts';
import { builtOn } from './built-on.ts';
import { cautionsFor } from './cautions.ts';
import { daySections } from './day.ts';
import { type Drill, drillsOf } from './drills.ts';
import { eventLimits, timesOf } from './event.ts';
import { fingerprintOf } from './fingerprint.ts';
import { type ClearingOnCard, clearingOnCard, type SettingOnCard, settingOnCard } from './handling.ts';
import { ofLinesOut } from './out.ts';
import { type CardRow, rowsOf } from './rows.ts';
import type { Section } from './sections.ts';
import { speedLimits } from './speeds.ts';
import { type LineSteps, stepsOf } from './steps.ts';
import { type FallbackOnCard, fallbacksOf, type NamedRole, rolesOf, sparesOf } from './team.ts';
import { type TurnOnCard, turnsOnCard } from './turns.ts';
import { type WaiverOnCard, waiversOnCard } from './waivers.ts';

/** Everything that a deck card says, in words and in the order of use; where it stands on paper is not said here. */
export interface CardContents {
    readonly plan: string;
    readonly title: string;
    readonly doc?: string;
    /** Boat, target, speed, sea, date, edition, author, event and so on. */
    readonly facts: readonly Cell[];
    /** Tells this plan's inputs from any other's. */
    readonly fingerprint: string;
    /** In the order of setting; teasers and gear standing by come after it. */
    readonly rows: readonly CardRow[];
    readonly setting: SettingOnCard;
    readonly clearing: ClearingOnCard;
    readonly turns: TurnOnCard;
    readonly speeds: readonly string[];
    readonly event: readonly string[];
    /** Lines in and out, how a fish is called in, the skipper's limit. */
    readonly times: readonly Cell[];
    /** Steps for every line, then each line's, in the order of setting. */
    readonly steps: { readonly all: readonly string[]; readonly lines: readonly LineSteps[] };
    readonly roles: readonly NamedRole[];
    readonly fallbacks: readonly FallbackOnCard[];
    readonly spares: readonly string[];
    readonly drills: readonly Drill[];
    /** Open ones, with the numbers that they have in the picture. */
    readonly findings: readonly Pick<Mark, 'number' | 'severity' | 'rule' | 'message'>[];
    readonly waivers: readonly WaiverOnCard[];
    readonly notes: readonly string[];
    /** What a reader must know of the figures, and what is not known: sentences. */
    readonly remarks: readonly string[];
    readonly cautions: readonly string[];
    /** The days that fish this plan: when, and the change-overs from it. */
    readonly days: readonly Section[];
}

/**
 * @param analysed  with its turns, or the card says that they were not looked at
 * @param findings  what concerns this plan; waived ones are not among them
 * @param days  those of the plan's file, or that the card is made for
 */
export function cardContents(
    analysed: AnalysedPlan,
    findings: readonly Finding[] = [],
    days: readonly Day[] = [],
): CardContents {
    const { plan } = analysed;
    const out = { ...analysed, plan: ofLinesOut(plan) };
    const title = titleOfPlan(plan);
    const scene = sceneFromAbove(analysed, findings);
    const setting = settingOnCard(out);
    const clearing = clearingsOf(analysed);
    const contents: CardContents = {
        plan: plan.name,
        title: title.title,
        ...(title.doc && { doc: title.doc }),
        facts: [...title.cells.filter(({ value }) => value !== 'not stated'), ...builtOn(plan)],
        fingerprint: fingerprintOf(plan),
        rows: rowsOf(analysed, setting),
        setting,
        clearing: clearingOnCard(out, clearing),
        turns: turnsOnCard(analysed),
        speeds: speedLimits(analysed),
        event: eventLimits(plan),
        times: timesOf(plan),
        steps: { all: plan.steps.map(({ value }) => value), lines: stepsOf(analysed, setting) },
        roles: rolesOf(out.plan),
        fallbacks: fallbacksOf(out.plan),
        spares: sparesOf(plan),
        drills: drillsOf(out.plan),
        findings: markFindings(findings, plan.name).map(({ number, severity, rule, message }) => ({
            number,
            severity,
            rule,
            message,
        })),
        waivers: waiversOnCard(out.plan),
        notes: notesOf(analysed),
        remarks: [...scene.remarks, ...scene.unknown],
        cautions: cautionsFor(plan),
        days: days.filter((day) => fishes(day, plan)).flatMap((day) => daySections(day, plan)),
    };
    return cleaned(contents);
}

function fishes({ hours, conditions }: Day, { name }: Spread): boolean {
    return [...hours, ...conditions].some(({ plan }) => plan.value.name === name);
}

function notesOf({ plan }: AnalysedPlan): string[] {
    return [
        ...plan.notes.map(({ value }) => value),
        ...plan.lines.flatMap(({ position, notes }) =>
            notes.map(({ value }) => `${position.name}: ${value}`),
        ),
        ...(plan.event?.value.notes ?? []).map(({ value }) => `${plan.event!.value.title}: ${value}`),
    ];
}

/**
 * Every text of a plan may come from anyone: none keeps what could steer a terminal or turn the writing. What is quoted
 * from a plan stands between marks that a crew reads, too.
 */
function cleaned<T>(value: T): T {
    if (typeof value === 'string') return plainText(value).replace(/`([^`]+)`/g, '“$1”') as T;
    if (Array.isArray(value)) return value.map(cleaned) as T;
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, cleaned(each)])) as T;
}
