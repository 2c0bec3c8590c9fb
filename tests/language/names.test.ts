import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, test } from 'vitest';
import type { Definition } from '../../language/grammar/generated/ast.ts';
import { loadText } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import type { PlaceAwareLexer } from '../../language/src/plan/syntax/lexer.ts';

const services = createServices();

/** Every word that the language uses, and units, heads, and words that are nothing of the sort. */
const words = [
    ...new Set([
        ...AstUtils.streamAst(services.Grammar)
            .filter(GrammarAST.isKeyword)
            .map(({ value }) => value)
            .filter((value) => /^[a-z]/i.test(value)),
        ...['m', 'kn', 'kg', 'ft', 'deg', 'min', 'fathom', 'J', 'live', 'nylon', 'single', 'direct'],
        ...['layback', 'rose-bud', 'Ärger', '_1', 'x2', 'ゆき'],
    ]),
];

type Name = Exclude<Definition['kind'], 'log'>;

/** For each kind of definition, one place for a reference to it. */
const REFERENCE: Readonly<Record<Name, (name: string) => string>> = {
    boat: (name) => `spread r { boat ${name} }`,
    rod: (name) => `outfit r { rod ${name} }`,
    reel: (name) => `outfit r { reel ${name} }`,
    line: (name) => `outfit r { line ${name} }`,
    leader: (name) => `lure r { leader ${name} }`,
    hooks: (name) => `lure r { hooks ${name} { gap 40 mm } }`,
    outfit: (name) => `spread r { shotgun { outfit ${name} } }`,
    lure: (name) => `spread r { shotgun { lure ${name}  back 40 m } }`,
    teaser: (name) => `spread r { port dredge { teaser ${name} } }`,
    bait: (name) => `spread r { shotgun { bait ${name} "of the day" } }`,
    method: (name) => `spread r { method ${name} }`,
    species: (name) => `log 2026-02-14 { at 08:00 bite species ${name} 28 kg }`,
    spread: (name) => `log 2026-02-14 { using ${name} from 07:00 }`,
    rules: (name) => `spread r { event ${name} }`,
    day: (name) => `day r like ${name} { }`,
};

test('the list of words is that of the lexer', () => {
    const lexer = services.parser.Lexer as PlaceAwareLexer;
    expect(words.filter((word) => lexer.isKeyword(word)).length).toBeGreaterThan(150);
});

describe.each(Object.keys(REFERENCE) as Name[])('any word may name a %s', (kind) => {
    test.each([
        ['and be referred to', REFERENCE[kind]],
        ['and be like another', (name: string) => `${kind} r like ${name} {}`],
        ['with a title', (name: string) => `${kind} r-2 "R" like ${name} {}`],
    ] as const)('%s', async (_, reference) => {
        // One sheet for each word would be slow, and one sheet for all of them is harder on the parser.
        const text = words.map(
            (word) => `${kind} ${word} {}\n${reference(word).replace(' r ', ` r-${word} `)}\n`,
        );
        const { documents } = await loadText(createServices(), text.join('\n'));
        const { parseResult, references } = documents[0]!;
        expect(
            [...parseResult.lexerErrors, ...parseResult.parserErrors].map(({ message }) => message),
        ).toEqual([]);
        expect(parseResult.value.strays).toEqual([]);
        const led = references.map((each) => ({
            said: each.$refText,
            to: ('ref' in each && each.ref) as Definition | undefined,
        }));
        expect(led.map(({ said, to }) => [said, to && 'name' in to && to.name, to?.kind])).toEqual(
            words.map((word) => [word, word, kind]),
        );
    });
});

test('a word that opens a line is never a name', () => {
    const parsed = services.parser.LangiumParser.parse('outfit a {\n    rod\n    reel wide\n}');
    expect(parsed.parserErrors.map(({ message }) => message)).toEqual([expect.stringMatching(/rod/)]);
    const fine = services.parser.LangiumParser.parse('outfit a {\n    rod\n    stick\n    reel wide\n}');
    expect(fine.parserErrors).toEqual([]);
});

test('definitions of different kinds may share a name', async () => {
    const text =
        'lure jet {}\nleader jet {}\nhooks jet {}\nspread a { shotgun { lure jet  leader jet  hooks jet } }';
    const { documents } = await loadText(createServices(), text);
    const kinds = documents[0]!.references
        .map((each) => ('ref' in each ? (each.ref as Definition) : undefined))
        .map((to) => to?.kind);
    expect(kinds).toEqual(['lure', 'leader', 'hooks']);
});
