import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import { sceneOfChanges } from './scene-compare.ts';
import { type Summary, summaryOf } from './summary.ts';
import { type SvgWishes, svgOfChanges } from './svg.ts';

/*
 * Views that are asked for now and then: a program of their own, which an editor's server reads when the first of them
 * is wanted and does not carry before.
 */

export { turnInTimeInSteps } from '../plan/analyse/turn-in-time.ts';
export { pairPlans } from '../plan/compare/pairs.ts';
export { sceneOfStrike } from './scene-strike.ts';
export { sceneOfTurn, turnToLookAt } from './scene-turn.ts';

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

export type SeldomViews = typeof import('./seldom.ts');
