import type { PaletteName } from '../drawing/palette.ts';
import { sceneFromAbove } from '../drawing/scene.ts';
import { sceneOfChanges } from '../drawing/scene-compare.ts';
import { sceneFromSide } from '../drawing/scene-side.ts';
import { sceneOfStrike } from '../drawing/scene-strike.ts';
import { sceneOfTurn, turnToLookAt } from '../drawing/scene-turn.ts';
import { svgOf, svgOfChanges } from '../drawing/svg.ts';
import { svgOfSide } from '../drawing/svg-side.ts';
import { svgOfStrike } from '../drawing/svg-strike.ts';
import { svgOfTurn } from '../drawing/svg-turn.ts';
import { turnInTime } from '../plan/analyse/turn-in-time.ts';
import { withTurns } from '../plan/analyse/turns.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Run } from '../reports/checked.ts';
import { nearest } from '../units/nearest.ts';
import { fromPaths } from './asking.ts';
import { check } from './checking.ts';
import type { ChosenPlan } from './chosen-plans.ts';
import { Refusal } from './refusal.ts';

export const views = ['above', 'side', 'turn', 'strike', 'compare'] as const;

export type View = (typeof views)[number];

/** What the views can be asked for, each its own. */
export interface ViewOptions {
    readonly theme: PaletteName;
    readonly fans?: true;
    readonly to?: 'port' | 'starboard';
    /** m */
    readonly radius?: number;
    readonly position?: string;
    readonly style?: 'direct' | 'drop-back';
    readonly before?: string;
    readonly beforePlan?: string;
}

const belongsTo = {
    fans: ['above', 'compare'],
    to: ['turn'],
    radius: ['turn'],
    position: ['strike'],
    style: ['strike'],
    before: ['compare'],
    beforePlan: ['compare'],
} as const satisfies Partial<Record<keyof ViewOptions, readonly View[]>>;

/** @throws Refusal where an option has no meaning in this view: a picture that leaves it out would mislead. */
export function mustFit(view: View, options: ViewOptions): void {
    for (const [option, fitting] of Object.entries(belongsTo) as [
        keyof typeof belongsTo,
        readonly View[],
    ][]) {
        if (options[option] === undefined || fitting.includes(view)) continue;
        const name = `--${option.replace(/[A-Z]/, (letter) => `-${letter.toLowerCase()}`)}`;
        throw new Refusal(`${name} belongs to --view ${fitting.join(' or ')}; this is --view ${view}.`);
    }
    if (view === 'compare' && options.before === undefined && options.beforePlan === undefined) {
        throw new Refusal(
            'To compare with what? --before names a file with the earlier version, --before-plan a spread of it.',
        );
    }
}

/** A plan's SVG. `earlier` are the plans to compare with, where that is asked for. */
export function drawView(
    view: View,
    { plan, findings }: Pick<ChosenPlan, 'plan' | 'findings'>,
    earlier: readonly AnalysedPlan[],
    options: ViewOptions,
): string {
    const { theme, fans } = options;
    const wishes = { palette: theme, ...(fans && { fans }) };
    switch (view) {
        case 'above':
            return svgOf(sceneFromAbove(plan, findings), wishes);
        case 'side':
            return svgOfSide(sceneFromSide(plan, findings), wishes);
        case 'turn': {
            const turning = plan.turns ? plan : withTurns(plan);
            const { to: side, radius } = options;
            const chosen = turnToLookAt(turning, { ...(side && { side }), ...(radius && { radius }) });
            const turn = turnInTime(turning, chosen.side, chosen.radius);
            return svgOfTurn(sceneOfTurn(turning, chosen, turn, findings), wishes);
        }
        case 'strike': {
            const { position, style } = options;
            const found = position === undefined ? undefined : fishedPosition(plan, position);
            const asked = { ...(found && { position: found }), ...(style && { style }) };
            return svgOfStrike(sceneOfStrike(plan, asked, findings), wishes);
        }
        case 'compare':
            return svgOfChanges(sceneOfChanges(earlierOf(plan, earlier, options), plan, findings), wishes);
    }
}

function fishedPosition({ plan, lines }: AnalysedPlan, asked: string): string {
    const names = lines.filter(({ line }) => line.role === 'fished').map(({ line }) => line.position.name);
    const found = names.find((name) => name === asked || name === `centre ${asked}`);
    if (found) return found;
    const meant = nearest(asked, names);
    const remedy = meant ? `Did you mean ${meant}?` : names.length > 0 ? `There is ${names.join(', ')}.` : '';
    throw new Refusal(`No line is fished from the ${asked} of ${plan.name}. ${remedy}`.trim());
}

/** Every plan of the file that is named as the earlier version, or of the file itself. */
export async function earlierPlans(
    run: Run,
    { before, beforePlan }: ViewOptions,
): Promise<readonly AnalysedPlan[]> {
    if (before === undefined) return beforePlan === undefined ? [] : run.files.flatMap(({ plans }) => plans);
    const asked = fromPaths([before], process.cwd());
    if (asked.files.length === 0) throw new Refusal(asked.refusals.join(' '));
    const plans = (await check(asked)).files.flatMap((file) => file.plans);
    if (plans.length === 0) throw new Refusal(`There is no spread in ${before}.`);
    return plans;
}

/** The one named, the one of the same name, or the only one. */
function earlierOf(
    { plan }: AnalysedPlan,
    earlier: readonly AnalysedPlan[],
    { beforePlan }: ViewOptions,
): AnalysedPlan {
    const name = beforePlan ?? plan.name;
    const found = earlier.find((each) => each.plan.name === name);
    if (found) return found;
    if (beforePlan === undefined && earlier.length === 1) return earlier[0]!;
    const names = earlier.map((each) => each.plan.name);
    throw new Refusal(`There is no earlier spread ${name}: --before-plan names one of ${names.join(', ')}.`);
}
