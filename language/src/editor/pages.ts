import type { Connection } from 'vscode-languageserver';
import { readFile, type StarterFile } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';

/** Rule name → its page, Markdown; `starter/…` → what `layback new` writes there. */
export type RulePages = Readonly<Record<string, string>>;

/** The pages of the rules, read when the first of them is opened: a server that starts need not carry them. */
export function rulePages(connection: Connection, services: EditorSharedServices): () => Promise<RulePages> {
    const { Home, Client } = services.editor;
    const read = Home.pages ?? (() => pagesOfClient(connection, Client.options.pages));
    let pages: Promise<RulePages> | undefined;
    return () => {
        if (!pages) {
            pages = read();
            // What failed once may be there the next time.
            pages.catch(() => {
                pages = undefined;
            });
        }
        return pages;
    };
}

/** What `layback new` writes, for an editor that has no command at hand. */
export function starterFiles(pages: RulePages): StarterFile[] {
    const folder = 'starter/';
    return Object.entries(pages)
        .filter(([name]) => name.startsWith(folder))
        .map(([name, text]) => ({ path: name.slice(folder.length), text }));
}

async function pagesOfClient(connection: Connection, uri: string | undefined): Promise<RulePages> {
    if (uri === undefined) return {};
    const content = await connection.sendRequest<string | null>(readFile.method, { uri });
    if (content === null) throw new Error(`There is no ${uri}.`);
    const bytes = Uint8Array.from(atob(content), (character) => character.charCodeAt(0));
    return JSON.parse(new TextDecoder().decode(bytes));
}
