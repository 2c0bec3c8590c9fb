import type { CompletionProvider } from 'langium/lsp';
import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import { propertyOf } from '../../plan/vocabulary.ts';
import type { EditorServices } from '../services.ts';
import { type Caret, caretAt, isQuoted } from './caret.ts';
import { definitionOffers } from './definitions.ts';
import { fileOffers } from './files.ts';
import { beginnings, type Following, following } from './following.ts';
import { itemOf, type Offer } from './item.ts';
import { timeOffers } from './log.ts';
import { nameOffers } from './names.ts';
import { allPositions, freePositions, goingOn, namedPositions, positionsFished } from './positions.ts';
import { documentationOf, propertyOffers } from './properties.ts';
import { halyards } from './reachable.ts';
import { starterOffers, today } from './starters.ts';
import { unitOffers } from './units.ts';
import { plain, settingOffers, wordOffers } from './words.ts';

/**
 * Offers what fits at the caret and nothing else: properties that are not said yet, gear that is still free, units
 * of what is measured. It goes by the words on the line and the blocks around it, so it works in a file that is
 * half typed.
 */
export function completion(services: EditorServices): CompletionProvider {
    return {
        completionOptions: { triggerCharacters: ['"', '/'] },
        getCompletion(document, { position }) {
            const caret = caretAt(document, position, services);
            if (!caret) return undefined;
            const items = isQuoted(caret)
                ? caret.behind === 'use'
                    ? fileOffers(caret, document, services)
                    : []
                : offersAt(caret, services).map((offer) => itemOf(offer, caret, services));
            return { isIncomplete: false, items: distinct(items) };
        },
    };
}

function offersAt(caret: Caret, services: EditorServices): Offer[] {
    if (caret.entry === '') return offersToBegin(caret, services);
    const next = following(caret.blocks, caret.entry, services);
    if (!caret.opensLine && next.some(({ terminal }) => terminal === 'UNIT')) {
        const units = unitOffers(caret);
        // A number that measures something wants its unit before anything else.
        if (units.length > 0) return units;
    }
    const first = beginnings(caret.blocks, services);
    // A position may begin a block of its own, or be what a word such as `without` speaks of.
    const begins = next.some((each) => first.has(each.element) && !isPosition(each));
    const [fresh, ongoing] = split(next, (each) => first.has(each.element) && (begins || !isPosition(each)));
    // A word that opens its line is never a name, but it may go on with what stands above.
    const goes = caret.opensLine ? ongoing.filter(({ keyword }) => keyword !== undefined) : ongoing;
    // Who has begun a word behind what is said means one; nobody else is asked to put two things on one line.
    const goesBeside = isOneLine(caret) || caret.start < caret.end;
    const canBegin = caret.opensLine || (fresh.length > 0 && goesBeside && !lacksReason(caret, next));
    return [...offersToGoOn(goes, caret, services), ...(canBegin ? offersToBegin(caret, services) : [])];
}

/** Whether the innermost block was opened on the caret's line: `{ outfit one  lure ‸ }` goes on beside what is said. */
function isOneLine({ document: { textDocument }, blocks, offset }: Caret): boolean {
    const brace = blocks.at(-1)?.brace;
    return (
        brace !== undefined && textDocument.positionAt(brace).line === textDocument.positionAt(offset).line
    );
}

/** A waiver without a reason waives nothing: it is not said to its end yet. */
function lacksReason({ entry }: Caret, next: readonly Following[]): boolean {
    return /^waive\b/.test(entry) && next.some(({ keyword }) => keyword === 'because');
}

/** What begins a property of the innermost block, or a definition. */
function offersToBegin(caret: Caret, services: EditorServices): Offer[] {
    const block = caret.blocks.at(-1);
    if (!block) return [...definitionOffers(), ...(caret.opensLine ? starterOffers() : [])];
    if (block.node.$type === 'RuleSetting') return settingOffers(caret);
    const offers = propertyOffers(block, caret.start).map((offer) => ({ ...offer, rank: offer.rank + 200 }));
    switch (block.context) {
        case 'spread':
            return [...offers, ...freePositions(caret, services)];
        case 'roles':
            return [...offers, ...withPlace(namedPositions(caret))];
        default:
            return offers;
    }
}

function offersToGoOn(next: readonly Following[], caret: Caret, services: EditorServices): Offer[] {
    return next.flatMap((each) => {
        if (isPosition(each)) return positionOffers(caret, services);
        if (each.isReference) return nameOffers(each, caret, services);
        if (each.rule === 'From' && each.keyword !== undefined) return towPointOffers(each, caret, services);
        if (each.keyword !== undefined) return keywordOffers(each, caret);
        switch (each.terminal) {
            case 'STRING':
                return quoteOffers(each, caret);
            case 'NUMBER':
                return exampleOffers(caret);
            case 'TIME':
                return timeOffers(caret);
            case 'DATE':
                return dayOffers(caret);
            default:
                return wordOffers(each, caret, services);
        }
    });
}

function isPosition({ rule }: Following): boolean {
    return rule === 'Position' || rule === 'PlaceWord' || rule === 'LonePlace';
}

/** Positions are offered whole; where one has begun, the rest of it. */
function positionOffers(caret: Caret, services: EditorServices): Offer[] {
    const isNew = /^(port|starboard|centre|center)\b/.test(caret.entry);
    const { context } = caret.blocks.at(-1) ?? {};
    const all =
        context === 'spread' && isNew
            ? freePositions(caret, services)
            : context === 'spread' || context === 'roles' || context === 'fallback'
              ? namedPositions(caret)
              : context === 'log'
                ? positionsFished(caret)
                : allPositions();
    const rest = goingOn(all, caret.entry);
    return rest.length > 0 || isNew ? rest : all;
}

function withPlace(offers: readonly Offer[]): Offer[] {
    return offers.map((offer) => ({ ...offer, text: `${offer.label} ""`, snippet: `${offer.label} "$1"` }));
}

function keywordOffers({ keyword = '', role }: Following, caret: Caret): Offer[] {
    if (!/^[a-z]/.test(keyword)) return [];
    const { context } = caret.blocks.at(-1) ?? {};
    const property = context && propertyOf(context === 'log' ? 'event' : context, keyword);
    const isProperty = role === 'word' && property !== undefined;
    return [
        {
            label: keyword,
            kind: isProperty ? CompletionItemKind.Property : CompletionItemKind.Keyword,
            rank: 20,
            ...(isProperty && { detail: property.says, documentation: documentationOf(property) }),
        },
    ];
}

/** Quotes for a text, the caret between them; with what they are for where the language says so. */
function quoteOffers({ role, rule }: Following, caret: Caret): Offer[] {
    // No rule has a setting that is a text.
    if (caret.start !== caret.offset || rule === 'Setting') return [];
    const what = role === 'path' ? 'A file' : role === 'because' ? 'The reason' : 'A text in quotes';
    return [
        {
            label: '"…"',
            kind: CompletionItemKind.Text,
            text: '""',
            snippet: '"$1"',
            detail: what,
            rank: 30,
            goesOn: role === 'path',
        },
    ];
}

/** The ends of the outriggers, the clip and the tip as they are said, not by their first words. */
function towPointOffers({ keyword = '' }: Following, caret: Caret, services: EditorServices): Offer[] {
    const wholes: Readonly<Record<string, readonly string[]>> = {
        flat: ['flat clip'],
        halyard: halyards(caret.document, services).map((number) => `halyard ${number}`),
        rod: ['rod tip'],
    };
    return plain(wholes[keyword] ?? [keyword], CompletionItemKind.Keyword);
}

/** A number as the language's own example has it, to see what is meant. */
function exampleOffers({ entry, blocks, start, offset }: Caret): Offer[] {
    const [word = ''] = /^\S+/.exec(entry) ?? [];
    const context = blocks.at(-1)?.context;
    const property = context && propertyOf(context, word);
    const said = entry.trim().replace(/\s+/g, ' ');
    // `turn within ‸` goes on as `turn within 90 m` does; behind the word alone, its first number.
    const goesOn = said === word ? /\d/.exec(property?.example ?? '')?.index : `${said} `.length;
    const isAsThere = said === word || property?.example.startsWith(`${said} `);
    const number = isAsThere && /^\d[\d.]*( [A-Za-z%/]+)?/.exec(property?.example.slice(goesOn) ?? '')?.[0];
    if (!property || !number || start !== offset) return [];
    const label = number.replace(/ (to|at|of|from|and)$/, '');
    return [{ label, kind: CompletionItemKind.Value, detail: `For instance: ${property.example}`, rank: 50 }];
}

/** The day that it is where one types. */
function dayOffers({ start, offset }: Caret): Offer[] {
    if (start !== offset) return [];
    return [{ label: today(), kind: CompletionItemKind.Value, detail: 'Today', rank: 40 }];
}

function split<T>(all: readonly T[], is: (one: T) => boolean): [T[], T[]] {
    return [all.filter(is), all.filter((one) => !is(one))];
}

function distinct(items: readonly CompletionItem[]): CompletionItem[] {
    return [...new Map(items.map((item) => [item.label, item] as const).reverse()).values()].reverse();
}
