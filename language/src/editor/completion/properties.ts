import type { AstNode } from 'langium';
import { CompletionItemKind } from 'vscode-languageserver';
import { isMany, keyOf } from '../../plan/resolve/table.ts';
import { type Property, vocabulary } from '../../plan/vocabulary.ts';
import type { Block } from './caret.ts';
import type { Offer } from './item.ts';
import { snippetOf } from './snippet.ts';

/** Words behind which the name of a definition stands. */
const referring: ReadonlySet<string> = new Set([
    ...['boat', 'target', 'species', 'method', 'event', 'written', 'using', 'spare', 'under'],
    ...['rod', 'reel', 'outfit', 'lure', 'teaser', 'bait'],
    ...['without', 'swap'],
]);

/** Words that act on what a preset says. */
const acting: ReadonlySet<string> = new Set(['without', 'swap']);

/** The properties that a block may say and has not said yet. */
export function propertyOffers({ node, context }: Block, start: number): Offer[] {
    if (!context) return [];
    const said = saidIn(node, start);
    const hasPreset = (node as { base?: unknown }).base !== undefined;
    return (vocabulary[context] as readonly Property[])
        .filter(({ word, many }) => (many || !said.has(word)) && (hasPreset || !acting.has(word)))
        .map((property, rank) => {
            const refers =
                referring.has(property.word) && !property.example.includes('{') && context !== 'rod limits';
            // An event is put together word by word, so it begins with its word alone.
            const isEvent = context === 'log' && property.word === 'at';
            return {
                label: property.word,
                kind: CompletionItemKind.Property,
                text: `${property.word} `,
                snippet: snippetOf(property, refers || isEvent),
                detail: property.says,
                documentation: documentationOf(property),
                rank,
                goesOn: refers || isEvent,
            };
        });
}

/** A property as hovers and completion tell it. */
export function documentationOf({ says, example, otherwise }: Property): string {
    return [
        says,
        `\`\`\`layback\n${example}\n\`\`\``,
        ...(otherwise ? [`Where it is left out: ${otherwise}.`] : []),
    ].join('\n\n');
}

/** The first words of the properties that stand in a block, but for the one that is being typed. */
function saidIn(node: AstNode, start: number): ReadonlySet<string> {
    const { entries = [] } = node as { entries?: readonly AstNode[] };
    const said = new Set<string>();
    for (const entry of entries) {
        const key = keyOf(entry);
        const { $cstNode } = entry;
        if (
            key === undefined ||
            isMany(key) ||
            ($cstNode && $cstNode.offset <= start && $cstNode.end >= start)
        )
            continue;
        const { word } = entry as { word?: string };
        said.add(key === 'crests' ? 'crests' : (word ?? key));
    }
    return said;
}
