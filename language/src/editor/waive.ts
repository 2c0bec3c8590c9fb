import type { LangiumDocument } from 'langium';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Position, Waiver } from '../plan/model.ts';
import { positionNamed } from '../plan/resolve/line.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { judge } from '../rules/judge.ts';
import { ruleNamed } from '../rules/registry.ts';
import type { Rule } from '../rules/rule.ts';
import { type BlockEnd, blockEnd } from './block-end.ts';
import { spreadNamed } from './named.ts';

/** A waiver that lacks nothing but its reason. */
export interface WaiverWanted {
    readonly rule: string;
    /** `on port long rigger`; empty for the whole plan. */
    readonly scope: string;
    readonly end: BlockEnd;
}

/** As it is written, up to the reason. */
export function waiverWords({ rule, scope }: WaiverWanted): string {
    return ['waive', rule, scope, 'because'].filter(Boolean).join(' ');
}

/** The narrowest waiver that would cover a finding, in the plan that it was found in; undefined for what cannot be. */
export function waiverFor(
    finding: Finding,
    sheet: CheckedSheet,
    document: LangiumDocument,
): WaiverWanted | undefined {
    const rule = ruleNamed(finding.rule);
    const analysed = sheet.plans.find(({ plan }) => plan.name === finding.plan);
    const spread = spreadNamed(document.parseResult.value, finding.plan);
    const end = spread && blockEnd(spread, document.textDocument);
    // Rules about a file, or about waivers themselves, are no plan's to waive.
    if (!rule?.check || !analysed || !end) return undefined;
    const scopes = scopesOf(finding.positions);
    const covering = scopes.find((positions) => covers(positions, finding, analysed, sheet, rule));
    return covering && { rule: rule.name, scope: scopeWords(covering), end };
}

/** What is said about three lines and more is about the plan, not about the first of them. */
function scopesOf(names: readonly string[]): (readonly string[])[] {
    if (names.length > 2) return [[]];
    return [...(names.length === 2 ? [names] : []), ...names.map((name) => [name]), []];
}

function scopeWords([first, second]: readonly string[]): string {
    if (first === undefined) return '';
    return second === undefined ? `on ${first}` : `between ${first} and ${second}`;
}

/** Whether the plan would pass with such a waiver; a late finding is not there to be asked about. */
function covers(
    positions: readonly string[],
    finding: Finding,
    analysed: AnalysedPlan,
    sheet: CheckedSheet,
    rule: Rule,
): boolean {
    const { plan } = analysed;
    const said = <T>(value: T) => ({ value, origin: plan.origin });
    const waiver: Waiver = {
        rule: said(rule.name),
        positions: positions.map((name) => said<Position>(positionNamed(name))),
        because: said('trial'),
        inherited: false,
        origin: plan.origin,
    };
    const tried = { ...analysed, plan: { ...plan, waivers: [...plan.waivers, waiver] } };
    const left = judge(sheet.resolved, [tried], [rule]).findings;
    const isOfIt = (names: readonly string[]) =>
        names.length > 0 && names.every((name) => finding.positions.includes(name));
    // Of several lines that are said of together those that are not waived are said by themselves.
    return !left.some(
        ({ what, at, positions: about }) =>
            at.start === finding.at.start && (what === finding.what || isOfIt(about)),
    );
}
