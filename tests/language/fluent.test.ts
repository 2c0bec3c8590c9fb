import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { type AstNode, type CstNode, isCompositeCstNode, isLeafCstNode, isReference } from 'langium';
import { describe, expect, test } from 'vitest';
import { library } from '../../language/src/library/library.ts';
import { createServices } from '../../language/src/plan/services.ts';
import type { FluentParser } from '../../language/src/plan/syntax/fluent/parser.ts';

const services = createServices();
const fluent = services.parser.LangiumParser as unknown as FluentParser;
/** What the fluent reader makes of a text by itself: nothing where something fits nowhere. */
const readBy = (text: string) => (fluent as unknown as { read: typeof fluent.parse }).read(text);

const texts = [
    ...library.values(),
    ...readdirSync('examples', { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.spread'))
        .map((name) => readFileSync(join('examples', name), 'utf8')),
];

describe('a text read fluently', () => {
    test.each(texts.map((text) => [text.slice(0, 40), text]))(
        'is what the parser makes of it: %s',
        (_, text) => {
            expect(differences(text)).toEqual([]);
        },
    );
});

test('the reader and the parser agree on thousands of texts cut up and put together again', () => {
    const blocks = texts.flatMap((text) => text.split(/^(?=[a-z/])/m));
    const wordsOf = (text: string) => text.match(/\s+|\/\*[\s\S]*?\*\/|\/\/.*|[\w.-]+|./g) ?? [];
    const words = blocks.flatMap(wordsOf);
    const of = fc.nat({ max: blocks.length - 1 });
    const cut = fc.record({ at: fc.nat(), out: fc.nat({ max: 2 }), put: fc.nat({ max: words.length - 1 }) });
    const told = { read: 0, left: 0 };
    fc.assert(
        fc.property(fc.array(of, { maxLength: 3 }), fc.array(cut, { maxLength: 3 }), (chosen, cuts) => {
            const some = wordsOf(chosen.map((each) => blocks[each]).join(''));
            for (const { at, out, put } of cuts) some.splice(at % (some.length + 1), out, words[put]!);
            const text = some.join('');
            told[readBy(text) ? 'read' : 'left']++;
            expect(differences(text)).toEqual([]);
        }),
        { numRuns: 4000 },
    );
    expect(told.read).toBeGreaterThan(1000);
    expect(told.left).toBeGreaterThan(500);
}, 120_000);

test('odd ends of lines, marks and comments leave the two agreed', () => {
    for (const text of texts.slice(0, 6)) {
        for (const odd of [
            text.replaceAll('\n', '\r\n'),
            text.replaceAll('\n', '\r'),
            `\ufeff${text}`,
            text.replaceAll('\n', ' // said\n/* and\r\nsaid again */\n'),
            text.replaceAll(' {', ' /* before */ {'),
            text.trimEnd(),
            `${text}// the end`,
        ])
            expect(differences(odd)).toEqual([]);
    }
    for (const text of ['', ' ', '// only said', '/* never closed', '\u0000', 'use "x"\u00a0'])
        expect(differences(text)).toEqual([]);
});

/** Where the two disagree; nothing where the text has faults, and both say so. */
function differences(text: string): string[] {
    const ours = readBy(text);
    const theirs = fluent.thorough.parse(text);
    const faults = theirs.parserErrors.length + theirs.lexerErrors.length;
    if (!ours) return faults > 0 ? [] : ['given up on a text without faults'];
    if (faults > 0)
        return [`faults not seen: ${theirs.parserErrors[0]?.message ?? theirs.lexerErrors[0]?.message}`];
    const found: string[] = [];
    expect(nodes(ours.value)).toEqual(nodes(theirs.value));
    expect(pieces(ours.value.$cstNode!)).toEqual(pieces(theirs.value.$cstNode!));
    return found;
}

/** A tree of nodes as plain data: what each says, where it hangs, what it was made from. */
function nodes(node: AstNode): unknown {
    const { $type, $container, $containerProperty, $containerIndex, $cstNode } = node;
    const said = Object.fromEntries(
        Object.entries(node)
            .filter(([name, value]) => !name.startsWith('$') && value !== undefined)
            .map(([name, value]) => [name, Array.isArray(value) ? value.map(plain) : plain(value)]),
    );
    const within = $container && [$container.$type, $containerProperty, $containerIndex];
    return { $type, within, from: $cstNode && [$cstNode.offset, $cstNode.end, $cstNode.range], said };
}

function plain(value: unknown): unknown {
    if (isReference(value)) return ['→', value.$refText, value.$refNode?.offset];
    return typeof value === 'object' && value !== null ? nodes(value as AstNode) : value;
}

function pieces(piece: CstNode): unknown {
    const { offset, end, length, range, text, hidden, grammarSource } = piece;
    const own = {
        offset,
        end,
        length,
        range,
        text,
        hidden,
        of: piece.astNode.$cstNode!.offset,
        type: piece.astNode.$type,
    };
    return {
        ...own,
        source: grammarSource && services.workspace.AstNodeLocator.getAstNodePath(grammarSource),
        token: isLeafCstNode(piece) ? piece.tokenType.name : undefined,
        content: isCompositeCstNode(piece) ? piece.content.map(pieces) : undefined,
    };
}
