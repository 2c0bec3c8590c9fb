import type { SignatureHelpProvider } from 'langium/lsp';
import type { ParameterInformation, SignatureHelp } from 'vscode-languageserver';
import { type Property, propertyOf } from '../plan/vocabulary.ts';
import { ruleNamed } from '../rules/registry.ts';
import { type Block, type Caret, caretAt, isQuoted } from './completion/caret.ts';
import { definitionOffers } from './completion/definitions.ts';
import { propertyOffers } from './completion/properties.ts';
import type { EditorServices } from './services.ts';

/** While one types: what the property looks like, which part of it is due, or what the block takes. */
export function help(services: EditorServices): SignatureHelpProvider {
    return {
        signatureHelpOptions: { triggerCharacters: ['{', ' '], retriggerCharacters: ['\n'] },
        provideSignatureHelp(document, { position, context }) {
            const caret = caretAt(document, position, services);
            if (!caret || isQuoted(caret)) return undefined;
            // Behind each blank all that a block may say would be too much: only what is begun is told there.
            const isBlank = context?.triggerCharacter === ' ' && !context.isRetrigger;
            return isBlank && caret.blocks.length > 0 && caret.entry === '' ? undefined : helpAt(caret);
        },
    };
}

function helpAt(caret: Caret): SignatureHelp | undefined {
    const block = caret.blocks.at(-1);
    const [word = ''] = /^\S+/.exec(caret.entry) ?? [];
    if (!block) return word ? definitionHelp(word) : undefined;
    if (block.node.$type === 'RuleSetting') return settingsHelp((block.node as { rule?: string }).rule);
    if (!block.context) return undefined;
    const property = word && !caret.opensLine ? propertyOf(block.context, word) : undefined;
    if (property) return propertyHelp(property, caret.entry);
    return blockHelp(block, block.context, caret.start);
}

/** The example of a property, its numbers and texts one after the other. */
function propertyHelp(property: Property, entry: string): SignatureHelp {
    const { example, says, otherwise } = property;
    const places = [
        ...example.matchAll(/"[^"]*"|\d[\d.:-]*(?: (?!to\b|at\b|of\b|from\b|by\b)[A-Za-z%/]+)?/g),
    ];
    const parameters = places.map(
        ({ 0: found, index }): ParameterInformation => ({ label: [index, index + found.length] }),
    );
    const said = [...entry.matchAll(/"[^"]*"|\d[\d.:-]*/g)].length;
    // The unit still belongs to its number.
    const isUnitDue = /\d$/.test(entry.trimEnd());
    const due = Math.max(0, isUnitDue ? said - 1 : said);
    return {
        signatures: [
            {
                label: example,
                documentation: otherwise ? `${says} Where it is left out: ${otherwise}.` : says,
                parameters,
            },
        ],
        activeSignature: 0,
        ...(due < parameters.length && { activeParameter: due }),
    };
}

/** What a block may say and has not said yet. */
function blockHelp(block: Block, context: string, start: number): SignatureHelp | undefined {
    const words = propertyOffers(block, start).map(({ label }) => label);
    if (words.length === 0) return undefined;
    const label = `${context}: ${words.join(', ')}`;
    return { signatures: [{ label, documentation: 'What this block may still say.' }], activeSignature: 0 };
}

function settingsHelp(rule: string | undefined): SignatureHelp | undefined {
    const found = ruleNamed(rule ?? '');
    if (!found) return undefined;
    const label = `rule ${found.name}: ${['severity', ...Object.keys(found.settings)].join(', ')}`;
    return { signatures: [{ label, documentation: found.summary }], activeSignature: 0 };
}

function definitionHelp(word: string): SignatureHelp | undefined {
    const offer = definitionOffers().find(({ label }) => label === word);
    if (!offer) return undefined;
    const label = word === 'use' ? 'use "tackle.spread"' : `${word} name "Title" { … }`;
    return { signatures: [{ label, documentation: offer.detail ?? '' }], activeSignature: 0 };
}
