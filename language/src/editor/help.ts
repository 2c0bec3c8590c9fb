import type { SignatureHelpProvider } from 'langium/lsp';
import type { ParameterInformation, SignatureHelp } from 'vscode-languageserver';
import { type Property, propertyOf, vocabulary } from '../plan/vocabulary.ts';
import { ruleNamed } from '../rules/registry.ts';
import { type Caret, caretAt, isQuoted } from './completion/caret.ts';
import { definitionOffers } from './completion/definitions.ts';
import type { EditorServices } from './services.ts';

/** While one types: what the property looks like, which part of it is due, or what the block takes. */
export function help(services: EditorServices): SignatureHelpProvider {
    return {
        signatureHelpOptions: { triggerCharacters: ['{', ' '], retriggerCharacters: ['\n'] },
        provideSignatureHelp(document, { position }) {
            const caret = caretAt(document, position, services);
            return caret && !isQuoted(caret) ? helpAt(caret) : undefined;
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
    return blockHelp(block.context, vocabulary[block.context]);
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

function blockHelp(context: string, properties: readonly Property[]): SignatureHelp {
    const label = `${context}: ${properties.map(({ word }) => word).join(', ')}`;
    return { signatures: [{ label, documentation: 'What this block may say.' }], activeSignature: 0 };
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
