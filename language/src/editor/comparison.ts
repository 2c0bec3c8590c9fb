import { URI } from 'langium';
import type { AnalysedPlan } from '../plan/figures.ts';
import { load } from '../plan/load.ts';
import { createServicesBeside } from '../plan/services.ts';
import { checkAll } from '../rules/check.ts';
import { placesIn, type Seen } from './pictures.ts';
import type { Comparison, ComparisonWanted, Earlier, NotCompared } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';
import type { Views } from './shown.ts';

/** A plan over an earlier version. */
export async function comparisonOf(
    { analysed, findings, told }: Seen,
    { earlier, wishes }: ComparisonWanted,
    { pairPlans, drawChanges }: Views,
    services: EditorSharedServices,
): Promise<Comparison | NotCompared> {
    const { uri, version, plan } = told;
    const none = (reason: string) => ({ reason, uri, plan, ...(version !== undefined && { version }) });
    if ('reason' in earlier) return none(earlier.reason);
    const plans =
        earlier.text === undefined
            ? services.editor.Checks.of(earlier.uri)?.plans
            : await plansIn(earlier.uri, earlier.text, services);
    if (!plans) return none('The file to compare with is not there any more.');
    const before = earlierOf(analysed, plans, earlier, pairPlans);
    if (!before) {
        return none(
            earlier.plan === undefined
                ? `There was nothing like ${analysed.plan.title} yet.`
                : `There is no spread ${earlier.plan} any more.`,
        );
    }
    const { scene, svg, summary, told: changes } = drawChanges(before, analysed, findings, wishes);
    return {
        ...told,
        svg,
        summary,
        places: placesIn(scene, analysed.plan.lines),
        moves: [],
        before: before.plan.title,
        told: changes,
    };
}

function earlierOf(
    after: AnalysedPlan,
    plans: readonly AnalysedPlan[],
    { plan }: Earlier,
    pairPlans: Views['pairPlans'],
): AnalysedPlan | undefined {
    if (plan !== undefined) return plans.find((each) => each.plan.name === plan);
    const versions = plans.map((each) => ({ path: '', plan: each }));
    return pairPlans(versions, [{ path: '', plan: after }])[0]?.before?.plan;
}

/**
 * The plans of a text that is in no file any more, in a world of its own: nothing of it may be found by the name of
 * anything that is there. What it uses is read as it stands.
 */
async function plansIn(
    uri: string,
    text: string,
    { workspace, names }: EditorSharedServices,
): Promise<readonly AnalysedPlan[]> {
    const { LangiumDocuments } = workspace;
    const loaded = await load(
        createServicesBeside(),
        [URI.parse(uri)],
        (asked) => {
            if (asked.toString() === uri) return { kind: 'text', text };
            const document = LangiumDocuments.getDocument(asked);
            return document ? { kind: 'text', text: document.textDocument.getText() } : { kind: 'missing' };
        },
        names.Reach.roots,
    );
    return checkAll(loaded, { once: true })[0]?.plans ?? [];
}
