import { CompletionItemKind } from 'vscode-languageserver';
import { propertyOf } from '../../plan/vocabulary.ts';
import { ruleNamed } from '../../rules/registry.ts';
import { printBoth } from '../../units/print.ts';
import { toSI } from '../../units/quantity.ts';
import { type Dimension, unitsOf } from '../../units/unit.ts';
import type { Caret } from './caret.ts';
import type { Offer } from './item.ts';

/** Numbers that measure something else than their property does, by the word before them. */
const behind: Readonly<Record<string, Dimension>> = {
    at: 'speed',
    tests: 'load',
    customary: 'load',
    halyard: 'count',
    wave: 'count',
    most: 'count',
};

/** The units that fit behind the number at the caret, each with what it comes to in the other system. */
export function unitOffers(caret: Caret): Offer[] {
    const number = Number(/([+-]?\d+(?:\.\d+)?)\s*$/.exec(caret.entry)?.[1]);
    const isRightBehind = /\d$/.test(caret.entry);
    return dimensionsAt(caret)
        .flatMap((dimension) => unitsOf(dimension))
        .filter(({ symbol }) => symbol !== '')
        .map((unit, rank) => ({
            label: unit.symbol,
            kind: CompletionItemKind.Unit,
            text: isRightBehind ? ` ${unit.symbol}` : unit.symbol,
            ...(Number.isFinite(number) && unit.beside && { detail: printBoth(toSI(number, unit), unit) }),
            rank,
        }));
}

/** What the number before the caret measures; what comes first is likelier. */
export function dimensionsAt({ entry, blocks }: Caret): readonly Dimension[] {
    const block = blocks.at(-1);
    const words = entry.match(/[^\s"\d][^\s"]*|\d\S*|"[^"]*"?/g) ?? [];
    const [word = ''] = words;
    const before = words.at(-2) ?? '';
    if (block?.node.$type === 'RuleSetting') {
        const setting = ruleNamed((block.node as { rule?: string }).rule ?? '')?.settings[word];
        return setting ? [setting.dimension] : [];
    }
    if (word === 'wind' && before === 'from') return ['angle'];
    if (word === 'capacity' && before === 'of') return ['length'];
    if (word === 'when') return [words[1] === 'wind' ? 'speed' : 'length'];
    const other = before === word ? undefined : behind[before];
    if (other) return [other];
    const property = block?.context && propertyOf(block.context, word);
    if (block?.context === 'log') return eventDimension(before);
    if (!property?.dimension) return [];
    return property.orShare ? [property.dimension, 'share'] : [property.dimension];
}

/** In a log a number follows its own word, or is the weight of the fish. */
function eventDimension(before: string): readonly Dimension[] {
    const property = propertyOf('event', before);
    return [property?.dimension ?? 'load'];
}
