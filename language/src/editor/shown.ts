import { sceneFromAbove } from '../drawing/scene.ts';
import { sceneOfChanges } from '../drawing/scene-compare.ts';
import { sceneFromSide } from '../drawing/scene-side.ts';
import { type Summary, summaryOf } from '../drawing/summary.ts';
import { type SvgWishes, svgOf, svgOfChanges } from '../drawing/svg.ts';
import { svgOfSide } from '../drawing/svg-side.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';

/*
 * What shows a plan: a program of its own, which the server reads when something is to be shown for the first time and
 * does not carry before.
 */

export { sceneFromAbove } from '../drawing/scene.ts';
export { sceneOfStrike } from '../drawing/scene-strike.ts';
export { sceneOfTurn, turnToLookAt } from '../drawing/scene-turn.ts';
export { svgOfStrike } from '../drawing/svg-strike.ts';
export { svgOfTurn } from '../drawing/svg-turn.ts';
export { turnInTimeInSteps } from '../plan/analyse/turn-in-time.ts';
export { pairPlans } from '../plan/compare/pairs.ts';
export { seasonOf } from '../plan/season/bites.ts';
export { figuresJson } from '../reports/figures.ts';
export { figuresTable, sensitivityText } from '../reports/figures-table.ts';
export { positionRecord } from '../reports/season/record.ts';
export { seasonTable } from '../reports/season/table.ts';

/** A plan from above or from the side, drawn and in words. */
export function drawPlan(
    analysed: AnalysedPlan,
    findings: readonly Finding[],
    { view, wishes }: { readonly view?: 'above' | 'side'; readonly wishes?: SvgWishes },
) {
    const above = sceneFromAbove(analysed, findings);
    const summary: Summary = summaryOf(above);
    if (view !== 'side') return { scene: above, svg: svgOf(above, wishes), summary };
    const side = sceneFromSide(analysed, findings);
    return { scene: side, svg: svgOfSide(side, wishes), summary };
}

/** Two versions of a plan, drawn and told. */
export function drawChanges(
    before: AnalysedPlan,
    after: AnalysedPlan,
    findings: readonly Finding[],
    wishes: SvgWishes = {},
) {
    const scene = sceneOfChanges(before, after, findings);
    const summary: Summary = summaryOf({ ...scene, view: 'above' });
    const told = scene.told.map(({ words }) => words);
    return { scene, svg: svgOfChanges(scene, wishes), summary, told };
}

export type Views = typeof import('./shown.ts');
