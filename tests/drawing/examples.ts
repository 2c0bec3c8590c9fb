import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { URI } from 'langium';
import { sceneOfTurn, turnToLookAt } from '../../language/src/drawing/scene-turn.ts';
import { turnInTime } from '../../language/src/plan/analyse/turn-in-time.ts';
import { withTurns } from '../../language/src/plan/analyse/turns.ts';
import type { AnalysedPlan } from '../../language/src/plan/figures.ts';
import type { Finding } from '../../language/src/plan/finding.ts';
import { load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';

const plans = resolve(import.meta.dirname, '../../examples/plans');

export interface ExamplePlan {
    readonly name: string;
    /** With its turns. */
    readonly plan: AnalysedPlan;
    readonly findings: readonly Finding[];
}

/** Every plan of the example team, checked. */
export async function examplePlans(): Promise<readonly ExamplePlan[]> {
    const files = [
        'blue-marlin',
        'fast-fish',
        'sailfish-on-bait',
        'what-findings-look-like',
        'what-slips-look-like',
    ];
    const loaded = await load(
        createServices(),
        files.map((file) => URI.file(`${plans}/${file}.spread`)),
        (uri) =>
            existsSync(uri.fsPath)
                ? { kind: 'text', text: readFileSync(uri.fsPath, 'utf8') }
                : { kind: 'missing' },
    );
    return checkAll(loaded).flatMap(({ plans: found, judgement }) =>
        found.map((plan) => ({
            name: plan.plan.name,
            plan: plan.turns ? plan : withTurns(plan),
            findings: judgement.plans.get(plan.plan.name) ?? [],
        })),
    );
}

/** A plan in the turn that a diagram shows first. */
export function turnSceneOf({ plan, findings }: ExamplePlan) {
    const chosen = turnToLookAt(plan);
    return sceneOfTurn(plan, chosen, turnInTime(plan, chosen.side, chosen.radius), findings);
}
