import type { WordTypes } from './settle.ts';
import { twinOf } from './tokens.ts';

/** Picks out of all token types those that words may have. */
export function wordTypes<Type extends { readonly name: string }>(
    types: Readonly<Record<string, Type>>,
): WordTypes<Type> {
    const keywords = new Map<string, { keyword: Type; twin: Type }>();
    for (const keyword of Object.values(types)) {
        const twin = types[twinOf(keyword.name)];
        if (twin) keywords.set(keyword.name, { keyword, twin });
    }
    const { ID, INNER, UNIT, NUMBER, INCHES } = types;
    return { id: ID!, inner: INNER!, unit: UNIT!, number: NUMBER!, inches: INCHES!, keywords };
}
