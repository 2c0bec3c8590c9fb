import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { applyChanges, format, formatChanges } from '../../language/src/editor/format.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { damagedSheets, meaningOf, sheets } from './sheets.ts';

const services = createServices();
const parse = (text: string) => services.parser.LangiumParser.parse<Sheet>(text);
const lex = (text: string) => services.parser.Lexer.tokenize(text);
const words = (text: string) => lex(text).tokens.map((token) => token.image.trimEnd());
/** Comments without the white space around their lines, which is the formatter's. */
const comments = (text: string) =>
    lex(text).hidden.map((comment) => comment.image.split(/\r\n|\r|\n/).map((line) => line.trim()));
const characters = (text: string) => text.replace(/\s+/g, '');
const errors = (text: string) => {
    const { lexerErrors, parserErrors } = parse(text);
    return [lexerErrors.length, ...parserErrors.map((error) => error.message)];
};

/** Each kind of sheet with the number of runs that takes about as long. */
describe.each([
    ['a sheet', sheets, 600],
    ['a damaged sheet', damagedSheets, 1200],
] as const)('%s', (_, arbitrary, numRuns) => {
    test('formatted twice is as formatted once', () => {
        fc.assert(
            fc.property(arbitrary, (text) => {
                const once = format(text, services);
                expect(format(once, services)).toBe(once);
            }),
            { numRuns },
        );
    });

    test('keeps every word, comment and other character in its order', () => {
        fc.assert(
            fc.property(arbitrary, (text) => {
                const formatted = format(text, services);
                expect(words(formatted)).toEqual(words(text));
                expect(comments(formatted)).toEqual(comments(text));
                expect(characters(formatted)).toBe(characters(text));
            }),
            { numRuns },
        );
    });

    test('means the same and has the same errors', () => {
        fc.assert(
            fc.property(arbitrary, (text) => {
                const formatted = format(text, services);
                expect(meaningOf(parse(formatted).value)).toBe(meaningOf(parse(text).value));
                expect(errors(formatted)).toEqual(errors(text));
            }),
            { numRuns },
        );
    });

    test('means the same when only a range of it is formatted', () => {
        fc.assert(
            fc.property(arbitrary, fc.nat(), fc.nat(), (text, a, b) => {
                const [start, end] = [a % (text.length + 1), b % (text.length + 1)].sort((x, y) => x - y) as [
                    number,
                    number,
                ];
                const changes = formatChanges({ text, parsed: parse(text) }, services, { start, end });
                const formatted = applyChanges(text, changes);
                expect(meaningOf(parse(formatted).value)).toBe(meaningOf(parse(text).value));
                expect(comments(formatted)).toEqual(comments(text));
            }),
            { numRuns },
        );
    });
});

test('the generator reaches what it is for: sound sheets, broken ones, comments, blocks of both shapes', () => {
    const seen = { sound: 0, broken: 0, commented: 0, changed: 0, oneLine: 0, manyLines: 0 };
    for (const text of fc.sample(sheets, { numRuns: 200, seed: 7 })) {
        const { parserErrors, lexerErrors } = parse(text);
        if (parserErrors.length + lexerErrors.length > 0) seen.broken++;
        else seen.sound++;
        if (lex(text).hidden.length > 0) seen.commented++;
        const formatted = format(text, services);
        if (formatted !== text) seen.changed++;
        if (/\{ .* \}/.test(formatted)) seen.oneLine++;
        if (/\{\n {4}/.test(formatted)) seen.manyLines++;
    }
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
});
