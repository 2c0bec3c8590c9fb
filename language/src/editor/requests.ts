import { DocumentState, type LangiumDocument, UriUtils } from 'langium';
import { createRequestHandler } from 'langium/lsp';
import { type CancellationToken, type Connection, LSPErrorCodes } from 'vscode-languageserver';
import { library } from '../library/library.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { comparisonOf } from './comparison.ts';
import { orCancelled, overtaken } from './in-turns.ts';
import { moveEdit, moveOf } from './moves.ts';
import type { RulePages } from './pages.ts';
import { entryOf, planWanted } from './pictures.ts';
import * as protocol from './protocol.ts';
import { tallyOfAll } from './publish.ts';
import type { EditorSharedServices } from './services.ts';
import { sidesSwapped } from './swap-sides.ts';
import { trialOf } from './trial.ts';
import { strikeOf, turnOf } from './views.ts';

/** Answers what the extension and the preview ask beyond the standard protocol. */
export function answerRequests(connection: Connection, services: EditorSharedServices): void {
    const { Checks, Pages, Pictures, Press, Seasons } = services.editor;
    const { TextDocuments, DocumentBuilder, WorkspaceManager } = services.workspace;

    /** Answers from a file that is checked as it stands. */
    function answer<P extends { readonly uri: string }, R>(
        { method }: protocol.Request<P, R | null>,
        from: (
            sheet: CheckedSheet,
            params: P,
            document: LangiumDocument,
            token: CancellationToken,
        ) => R | undefined | Promise<R | undefined>,
    ): void {
        const handle = createRequestHandler<P & { textDocument: { uri: string } }, NonNullable<unknown>>(
            async (_, document, params, token) => {
                const sheet = Checks.of(document.uri);
                return (sheet && (await from(sheet, params, document, token))) ?? null;
            },
            services,
            DocumentState.Validated,
        );
        connection.onRequest(method, (params: P, token) =>
            handle({ ...params, textDocument: { uri: params.uri } }, token),
        );
    }
    const versionOf = (document: LangiumDocument) => {
        const version = TextDocuments.get(document.uri)?.version;
        return version === undefined ? {} : { version };
    };

    answer(protocol.plansOfFile, (sheet, _, document) => ({
        ...versionOf(document),
        plans: sheet.plans.map((plan) => entryOf(plan, sheet)),
    }));
    answer(protocol.picture, async (_, params, document) => {
        const views = await Press.views();
        return Pictures.draw(document, params, views);
    });
    answer(protocol.turnView, async (sheet, params, document, token) => {
        const seen = Pictures.see(document, params);
        return (
            seen &&
            (await turnOf(seen, params, await Press.views(), () => {
                if (token.isCancellationRequested) throw overtaken(LSPErrorCodes.RequestCancelled);
                if (Checks.of(document.uri) !== sheet) throw overtaken(LSPErrorCodes.ContentModified);
            }))
        );
    });
    answer(protocol.strikeView, async (_, params, document) => {
        const seen = Pictures.see(document, params);
        return seen && strikeOf(seen, params, document, await Press.views());
    });
    answer(protocol.comparison, async (_, params, document) => {
        const seen = Pictures.see(document, params);
        return seen && (await comparisonOf(seen, params, await Press.views(), services));
    });
    answer(protocol.tryMove, async (sheet, params, _, token) =>
        trialOf(sheet, params, await Press.views(), token),
    );
    answer(protocol.writeMove, (sheet, params, document) => {
        const analysed = sheet.plans.find(({ plan }) => plan.name === params.plan);
        const move = analysed && moveOf(analysed, params);
        const edit = move && moveEdit(analysed, params, move, document);
        return edit && { text: move.text, edit, ...versionOf(document) };
    });
    answer(protocol.swapSides, (sheet, { plan, position }, document) => {
        const analysed = sheet.plans.find((each) => each.plan.name === plan);
        const edit = analysed && sidesSwapped(analysed, position, document);
        return edit && { text: `swap ${position}`, edit, ...versionOf(document) };
    });
    answer(protocol.figures, async (sheet, params, document) => {
        const plan = planWanted(sheet, params, document);
        if (!plan) return undefined;
        const { figuresJson, figuresTable } = await Press.views();
        const files = [{ path: UriUtils.basename(document.uri), plans: [plan] }];
        const report = JSON.parse(figuresJson(files, ''));
        const { name, title } = plan.plan;
        const text = await figuresTable(files);
        return {
            uri: document.uri.toString(),
            ...versionOf(document),
            name,
            title,
            text,
            plan: report.plans[0],
        };
    });
    const allChecked = async (token: CancellationToken) => {
        await WorkspaceManager.ready;
        await DocumentBuilder.waitUntil(DocumentState.Validated, token);
    };
    connection.onRequest(protocol.tallyOfAll.method, (_, token) =>
        orCancelled(allChecked(token).then(() => tallyOfAll(services))),
    );
    connection.onRequest(protocol.season.method, (_, token) =>
        orCancelled(allChecked(token).then(() => Seasons.text())),
    );
    connection.onRequest(protocol.builtInText.method, ({ uri }: { uri: string }) => builtInText(uri, Pages));
}

/** `layback:/species.spread`, `layback:/rules/stagger.md` and `layback:/docs/guide.md`. */
async function builtInText(
    uri: string,
    pages: () => Promise<RulePages>,
): Promise<protocol.BuiltInText | null> {
    const path = decodeURIComponent(uri.replace(/^layback:\/*/, ''));
    const [, page] = /^(?:rules\/|(?=docs\/))((?:docs\/)?[\w-]+)\.md$/.exec(path) ?? [];
    const text = page === undefined ? library.get(path.replace(/\.spread$/, '')) : (await pages())[page];
    return text === undefined ? null : { text, languageId: page === undefined ? 'layback' : 'markdown' };
}
