import { DocumentState, URI } from 'langium';
import type { Connection, HandlerResult, Range } from 'vscode-languageserver';
import { messageOf } from '../plan/finding.ts';
import { rules } from '../rules/registry.ts';
import { describe } from '../rules/standing.ts';
import { textCodes } from '../rules/text-codes.ts';
import { base64 } from './base64.ts';
import { cardAsked } from './deck-card.ts';
import { fenceAsked } from './fence.ts';
import { orCancelled } from './in-turns.ts';
import { starterFiles } from './pages.ts';
import * as protocol from './protocol.ts';
import type { EditorSharedServices } from './services.ts';
import { severityEdit, teamRulesOn } from './team-rules.ts';
import { waiverFor, waiverWords } from './waive.ts';

/** Answers what only the commands of the extension ask: lists to choose from, and edits that need a choice. */
export function answerCommands(connection: Connection, services: EditorSharedServices): void {
    const { DocumentBuilder, WorkspaceManager } = services.workspace;
    const answer = <P, R>({ method }: protocol.Request<P, R>, give: (params: P) => R | Promise<R>) =>
        connection.onRequest(method, (params: P) => give(params) as HandlerResult<R, void>);
    const upToDate = async () => {
        await WorkspaceManager.ready;
        await DocumentBuilder.waitUntil(DocumentState.Validated);
    };

    answer(protocol.ruleList, () => [
        ...rules.map(({ name, group, summary, standing, severity }) => ({
            name,
            group,
            summary,
            standing: describe(standing),
            severity,
        })),
        ...textCodes,
    ]);
    const { Pages, Press } = services.editor;
    answer(protocol.starter, async () => starterFiles(await Pages()));
    answer(protocol.teamRules, async ({ rule }) => {
        await upToDate();
        return teamRulesOn(rule, services);
    });
    answer(protocol.ruleSeverity, async (wanted) => {
        await upToDate();
        return severityEdit(wanted, services) ?? null;
    });
    answer(protocol.waivers, async ({ uri, range }) => {
        await upToDate();
        return waiverOffers(uri, range, services);
    });

    answer(protocol.png, async ({ svg, dpi }) =>
        base64(await Press.pixels(svg, dpi === undefined ? {} : { dpi })),
    );
    answer(protocol.fence, (wanted) => fenceAsked(wanted, services));
    connection.onRequest(protocol.card.method, (wanted: protocol.CardWanted, token) =>
        orCancelled(cardAsked(wanted, services, token)),
    );
}

function waiverOffers(
    uri: string,
    range: Range,
    { editor, workspace }: EditorSharedServices,
): protocol.WaiverOffer[] {
    const document = workspace.LangiumDocuments.getDocument(URI.parse(uri));
    const sheet = editor.Checks.of(uri);
    if (!document || !sheet) return [];
    const here = editor.Findings.currentOf(uri).filter(
        ({ at }) => at.uri === uri && touches(at.range, range),
    );
    return here.flatMap((finding): protocol.WaiverOffer[] => {
        const waiver = waiverFor(finding, sheet, document);
        if (!waiver) return [];
        const { end, rule, scope } = waiver;
        return [
            {
                rule,
                title: scope ? `${rule} ${scope}` : rule,
                message: messageOf(finding),
                uri,
                at: end.at,
                before: `${end.before}${waiverWords(waiver)} "`,
                after: `"${end.after}`,
            },
        ];
    });
}

/** By lines: a caret is meant for what stands in its line. */
function touches(a: Range, b: Range): boolean {
    return a.start.line <= b.end.line && b.start.line <= a.end.line;
}
