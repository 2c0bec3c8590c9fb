import { DocumentState, URI } from 'langium';
import type { CancellationToken } from 'vscode-languageserver';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { judge } from '../rules/judge.ts';
import { rules } from '../rules/registry.ts';
import { base64 } from './base64.ts';
import { entryOf, planWanted } from './pictures.ts';
import type { Card, CardWanted } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';
import { turned } from './turns.ts';

/** The deck card of a plan as its text stands, saved or not; the very card that `layback card` makes. */
export async function cardAsked(
    wanted: CardWanted,
    { workspace, editor }: EditorSharedServices,
    token: CancellationToken,
): Promise<Card | null> {
    const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = workspace;
    const uri = URI.parse(wanted.uri);
    await WorkspaceManager.ready;
    if (!LangiumDocuments.hasDocument(uri) && !TextDocuments.get(uri)) return null;
    await DocumentBuilder.waitUntil(DocumentState.Validated, uri, token);
    const document = LangiumDocuments.getDocument(uri);
    const sheet = editor.Checks.of(uri);
    const analysed = document && sheet && planWanted(sheet, wanted, document);
    if (!analysed) return null;

    const version = TextDocuments.get(uri)?.version;
    const whole: AnalysedPlan = { ...analysed, turns: await turned(analysed, inBetween) };
    const findings = findingsIn(whole, sheet);
    const { form, paper, dpi } = wanted;
    const { Press } = editor;
    const [{ sceneFromAbove }, printer, faces] = await Promise.all([
        Press.views(),
        Press.printer(),
        Press.faces(),
    ]);
    const scene = sceneFromAbove(analysed.plan.turn ? whole : analysed, findings);
    const { days } = sheet.resolved;
    const wishes = { form: form === 'png' ? 'svg' : form, paper, faces, days } as const;
    const { content: printed, curtailed } = await printer.printCard(whole, findings, scene, wishes);
    const content =
        form === 'png' ? await Press.pixels(printed as string, dpi === undefined ? {} : { dpi }) : printed;
    return {
        uri: uri.toString(),
        ...(version !== undefined && { version }),
        plan: entryOf(analysed, sheet),
        content: base64(content),
        curtailed,
        errors: sheet.findings.filter(({ severity }) => severity === 'error').length,
    };
}

/** All that was found about a plan, also what takes long: a card is asked for once, and by somebody who waits for it. */
function findingsIn(analysed: AnalysedPlan, sheet: CheckedSheet) {
    const { name, turn } = analysed.plan;
    if (!turn) return sheet.judgement.plans.get(name) ?? [];
    const plans = sheet.plans.map((each) => (each.plan.name === name ? analysed : each));
    return judge(sheet.resolved, plans, rules, sheet.memory).plans.get(name) ?? [];
}

function inBetween(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve));
}
