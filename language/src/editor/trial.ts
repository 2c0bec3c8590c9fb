import type { CancellationToken } from 'vscode-languageserver';
import type { AnalysedPlan } from '../plan/figures.ts';
import { type Finding, messageOf } from '../plan/finding.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { judge } from '../rules/judge.ts';
import { firstRules, rules } from '../rules/registry.ts';
import { lureMoves, moveOf } from './moves.ts';
import type { Trial, TryMove } from './protocol.ts';
import type { Views } from './shown.ts';
import { remarkOn, turned } from './turns.ts';

/**
 * What would follow if a lure ran elsewhere, from the plan as it is with that one distance changed: no text is
 * read for it, so that it keeps up with a hand.
 *
 * @returns undefined where there is no such lure or place, or where the answer is no longer wanted
 */
export async function trialOf(
    sheet: CheckedSheet,
    wanted: TryMove,
    { drawPlan }: Views,
    token: CancellationToken,
): Promise<Trial | undefined> {
    const before = sheet.plans.find(({ plan }) => plan.name === wanted.plan);
    const move = before && moveOf(before, wanted);
    if (!before || !move) return undefined;
    const isTurned = wanted.turns === true && before.plan.turn !== undefined;
    const after = isTurned ? await turnedUnless(token, move.analysed) : move.analysed;
    if (!after) return undefined;
    const judged = (analysed: AnalysedPlan) =>
        judge(sheet.resolved, [analysed], after.turns ? rules : firstRules).plans.get(wanted.plan) ?? [];
    const findings = judged(after);
    const about = messagesAbout(findings, wanted.position);
    const said = messagesAbout(sheet.judgement.plans.get(wanted.plan) ?? [], wanted.position);
    const { svg, summary } = drawPlan(after, findings, wanted);
    const turns = remarkOn(after)[0]?.title;
    return {
        text: move.text,
        astern: move.astern,
        ...(move.wave !== undefined && { wave: move.wave }),
        svg,
        summary,
        moves: lureMoves(after),
        findings: { here: about, gone: said.filter((message) => !about.includes(message)) },
        ...(turns !== undefined && { turns }),
    };
}

async function turnedUnless(
    token: CancellationToken,
    analysed: AnalysedPlan,
): Promise<AnalysedPlan | undefined> {
    const pause = async () => {
        await new Promise((resolve) => setTimeout(resolve));
        if (token.isCancellationRequested) throw new Unwanted();
    };
    try {
        return { ...analysed, turns: await turned(analysed, pause) };
    } catch (fault) {
        if (fault instanceof Unwanted) return undefined;
        throw fault;
    }
}

class Unwanted extends Error {}

function messagesAbout(findings: readonly Finding[], position: string): string[] {
    return findings.filter(({ positions }) => positions.includes(position)).map(messageOf);
}
