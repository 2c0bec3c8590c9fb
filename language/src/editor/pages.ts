import { type Beside, once } from './beside.ts';
import type { StarterFile } from './protocol.ts';

/** Rule name → its page, Markdown; `docs/…` → a document; `starter/…` → what `layback new` writes there. */
export type RulePages = Readonly<Record<string, string>>;

/** The pages of the rules, read when the first of them is opened: a server that starts need not carry them. */
export function rulePages(beside: Beside): () => Promise<RulePages> {
    const read = new Map<string, Promise<RulePages>>();
    return () =>
        once(read, 'rule-pages.json', async () =>
            JSON.parse(new TextDecoder().decode(await beside('rule-pages.json'))),
        );
}

/** What `layback new` writes, for an editor that has no command at hand. */
export function starterFiles(pages: RulePages): StarterFile[] {
    const folder = 'starter/';
    return Object.entries(pages)
        .filter(([name]) => name.startsWith(folder))
        .map(([name, text]) => ({ path: name.slice(folder.length), text }));
}
