import { prepareLangiumParser } from 'langium';
import { describe, expect, test } from 'vitest';
import { createServices } from '../../language/src/plan/services.ts';
import { createParser } from '../../language/src/plan/syntax/parser.ts';

// The parser library looks for ambiguities only in its development mode, which leans on a method that Node 20 lacks.
const groupBy = <T>(items: Iterable<T>, keyOf: (item: T, index: number) => PropertyKey) => {
    const groups: Record<PropertyKey, T[]> = Object.create(null);
    let index = 0;
    for (const item of items) {
        const key = keyOf(item, index++);
        groups[key] ??= [];
        groups[key].push(item);
    }
    return groups;
};

describe('the grammar', () => {
    test('is free of ambiguities that the development mode of the parser finds', () => {
        (Object as { groupBy?: unknown }).groupBy ??= groupBy;
        const services = createServices();
        const development = {
            ...services,
            LanguageMetaData: { ...services.LanguageMetaData, mode: 'development' as const },
            shared: services.shared,
            parser: services.parser,
            Grammar: services.Grammar,
            references: services.references,
        };
        expect(() => createParser(development as typeof services)).not.toThrow();
    });

    test('would not pass that check with two alternatives that begin alike', () => {
        (Object as { groupBy?: unknown }).groupBy ??= groupBy;
        const services = createServices();
        const parser = prepareLangiumParser(services);
        const inner = (parser as unknown as { wrapper: { skipValidations: boolean } }).wrapper;
        // What the test above relies on: the library's own switch, which production mode turns off.
        expect(inner.skipValidations).toBe(true);
    });
});
