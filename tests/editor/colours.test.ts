import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { AstUtils, type CstNode, CstUtils, GrammarAST, GrammarUtils, type LeafCstNode, URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { createServices } from '../../language/src/plan/services.ts';
import { isUnitWord, unitWords } from '../../language/src/units/unit-words.ts';
import { scopesOf } from './scopes.ts';

const services = createServices();

/** `word` → its scope, where the word stands once. */
async function scopes(text: string): Promise<Record<string, string>> {
    return Object.fromEntries((await scopesOf(text)).map(({ text, scope }) => [text.trim(), scope]));
}

describe('colours agree with the language', () => {
    const files = ['examples', 'language/src/library'].flatMap((folder) =>
        readdirSync(folder, { recursive: true, encoding: 'utf8' })
            .filter((name) => name.endsWith('.spread'))
            .map((name) => path.join(folder, name)),
    );

    test.each(files)('%s', async (file) => {
        const text = readFileSync(file, 'utf8');
        const pieces = await scopesOf(text);
        const scopeAt = (offset: number) =>
            pieces.find(({ start, end }) => start <= offset && offset < end)?.scope;
        const sheet = services.shared.workspace.LangiumDocumentFactory.fromString(text, URI.file(`/${file}`));
        const { lexerErrors, parserErrors, value } = sheet.parseResult;
        expect([lexerErrors, parserErrors]).toEqual([[], []]);

        const odd: string[] = [];
        let judged = 0;
        const leaves = CstUtils.flattenCst(value.$cstNode as CstNode).toArray();
        for (const leaf of leaves) {
            const wanted = expected(leaf);
            if (!wanted) continue;
            judged++;
            for (const offset of [leaf.offset, leaf.end - 1]) {
                const scope = scopeAt(offset) ?? '';
                if (wanted.test(scope)) continue;
                const line = leaf.range.start.line + 1;
                odd.push(`${file}:${line} "${leaf.text}" is coloured "${scope}", not ${wanted}`);
            }
        }
        expect(odd).toEqual([]);
        expect(judged).toBeGreaterThan(20);
        const commas = leaves.filter(
            ({ tokenType, text }) => tokenType.name === 'NUMBER' && text.includes(','),
        );
        const marked = pieces.filter(({ scope }) => scope === 'invalid.illegal.decimal-comma');
        expect(marked.map(({ text }) => text)).toEqual(commas.map(() => ','));
    });

    test('a fish by its name alone, behind what became of it', async () => {
        const found = await scopes(
            'log 2026-03-02 {\n    at 07:10 bite port long rigger hooked released white-marlin 28 kg\n}\n',
        );
        expect(found['white-marlin']).toBe('variable.other.reference');
        expect(found.released).toBe('keyword.other.property');
        expect(found['port long rigger']).toBe('entity.name.function.position');
    });

    /** What a token of the parsed text should look like; nothing for a word that only the language can tell. */
    function expected({ hidden, tokenType, grammarSource, astNode, text }: LeafCstNode): RegExp | undefined {
        if (hidden) return tokenType.name.endsWith('COMMENT') ? /^comment/ : undefined;
        const tokens: Record<string, RegExp> = {
            NUMBER: /^constant\.numeric$/,
            INCHES: /^constant\.numeric$/,
            UNIT: /^keyword\.other\.unit$/,
            STRING: /^string/,
            DATE: /^constant\.numeric\.date$/,
            TIME: /^constant\.numeric\.time$/,
        };
        const token = tokens[tokenType.name];
        if (tokenType.name === 'UNIT' && !isUnitWord(text)) return undefined;
        if (token) return token;
        if (text === '{' || text === '}') return /^punctuation\.section\.block/;
        if (text === ',') return /^punctuation\.separator/;
        if (astNode.$type === 'Unknown') return undefined;
        if (astNode.$type === 'Position') return /^entity\.name\.function\.position$/;
        if (!grammarSource) throw new Error(`The parser does not say where "${text}" comes from.`);
        const rule = AstUtils.getContainerOfType(grammarSource, GrammarAST.isParserRule)?.name;
        // The boat's centre rigger reads as the position that it carries.
        if (rule === 'CentreRigger') return /^entity\.name\.function\.position$/;
        if (rule === 'HeadWord') return /^support\.type\.head$/;
        const assignment = AstUtils.getContainerOfType(grammarSource, GrammarAST.isAssignment);
        if (GrammarAST.isAssignment(assignment) && GrammarAST.isCrossReference(assignment.terminal)) {
            if (assignment.feature === 'base') return /^entity\.other\.inherited-class$/;
            // A fish alone in a log: only the language knows that it is none of its own words.
            return rule === 'EventSpecies' && !/species/.test(astNode.$cstNode?.text ?? '')
                ? undefined
                : /^variable/;
        }
        switch (assignment?.feature) {
            case 'kind':
                return /^storage\.type$/;
            case 'name':
                return /^entity\.name\.type$/;
            case 'rule':
                return /^support\.function\.rule$/;
            case 'choice':
                return /^variable\.other\.enummember$/;
            case 'point':
                return /^variable\.other\.reference$/;
            default:
                return /^(keyword|variable\.other\.enummember)/;
        }
    }
});

describe('the words of the colours', () => {
    const keywords = [...GrammarUtils.getAllReachableRules(services.Grammar, false)]
        .flatMap((rule) => AstUtils.streamAllContents(rule).filter(GrammarAST.isKeyword).toArray())
        .map(({ value }) => value)
        .filter((value) => /^[a-z]/.test(value));

    test('hold every word that the grammar has', async () => {
        expect(keywords.length).toBeGreaterThan(150);
        const plain: string[] = [];
        for (const word of new Set(keywords)) {
            const places = [`spread a {\n    ${word}\n}`, `${word} x`, `${word} 1`, `lure a ${word}`];
            const pieces = (await Promise.all(places.map(scopesOf))).flat();
            const found = pieces.some(({ text, scope }) => text === word && scope !== '');
            if (!found) plain.push(word);
        }
        expect(plain).toEqual([]);
    });

    test('are none but those of the grammar and of the units', () => {
        const source = readFileSync('extension/syntaxes/layback.tmLanguage.json', 'utf8');
        const patterns = [...source.matchAll(/"(?:match|begin|end)": "((?:[^"\\]|\\.)*)"/g)].map(
            ([, pattern]) => pattern!,
        );
        expect(patterns.length).toBeGreaterThan(30);
        const used = patterns
            .map((pattern) => pattern.replace(/\\\\[pP]\{\w+\}|\\\\.|\\./g, ' ').replace(/\(\?[a-z]+:/g, ' '))
            .flatMap((pattern) => pattern.match(/[a-z]{2,}/g) ?? []);
        const known = new Set([...keywords, ...unitWords.flatMap((word) => word.split('/'))]);
        expect([...new Set(used)].filter((word) => !known.has(word))).toEqual([]);
    });

    test('hold every unit, behind a number only', async () => {
        for (const unit of unitWords) {
            for (const written of [`3 ${unit}`, `3${unit}`, `-0.5 ${unit.toUpperCase()}`]) {
                if (/ (M|KN)$/.test(written)) continue;
                const pieces = await scopesOf(`spread a {\n    back ${written}\n}`);
                const found = pieces.find(({ scope }) => scope === 'keyword.other.unit');
                expect([written, found?.text.toLowerCase()]).toEqual([written, unit]);
            }
        }
        expect(await scopes('spread a {\n  back 3 M\n  speed 8 kN\n  in\n}')).toMatchObject({
            M: '',
            kN: '',
        });
    });
});

describe('a word is coloured by its place', () => {
    test('as a name behind what takes one, whatever word it is', async () => {
        const found = await scopes(
            'lure jet "Jet" pusher like in {\n}\nspread full {\n  lure back  outfit drag-set\n}',
        );
        expect(found).toMatchObject({
            jet: 'entity.name.type',
            pusher: 'support.type.head',
            in: 'entity.other.inherited-class',
            full: 'entity.name.type',
            back: 'variable.other.reference',
            'drag-set': 'variable.other.reference',
            outfit: 'keyword.other.property',
        });
    });

    test('as nothing where it only contains a word of the language', async () => {
        expect(await scopes('spread a {\n  drag-queen\n  backs\n  outfitter\n  übersea\n}')).toMatchObject({
            'drag-queen': '',
            backs: '',
            outfitter: '',
            übersea: '',
        });
    });

    test('as a position, in words of the trade or of the boat', async () => {
        const text =
            'spread a {\n port short corner { }\n centre kite { }\n starboard flat line { }\n squid chain { }\n}';
        const positions = (await scopesOf(text)).filter(
            ({ scope }) => scope === 'entity.name.function.position',
        );
        expect(positions.map(({ text }) => text)).toEqual([
            'port short corner',
            'centre kite',
            'starboard flat line',
            'squid chain',
        ]);
    });

    test('as what it does: where a line comes from, or whence the wind', async () => {
        expect(await scopes('spread a {\n wind 12 kn from 200 deg\n}')).toMatchObject({
            from: 'keyword.other.property',
        });
        expect(await scopes('spread a {\n port short corner { from flat clip }\n}')).toMatchObject({
            'flat clip': 'variable.other.enummember',
        });
        expect(await scopes('spread a {\n port short corner { from crow-nest }\n}')).toMatchObject({
            'crow-nest': 'variable.other.reference',
        });
    });
});

describe('half-typed and odd text', () => {
    test('an open string ends with its line', async () => {
        expect(await scopes('spread a "Open {\n  speed 8 kn\n')).toMatchObject({ speed: '' });
        expect(await scopes('spread a {\n  note "no end\n  speed 8 kn\n}')).toMatchObject({
            '"no end': 'string.quoted.double',
            speed: 'keyword.other.property',
        });
    });

    test('a decimal comma is marked, a list is not', async () => {
        expect(
            (await scopesOf('boat a { beam 3,6 m }')).filter(({ scope }) => scope.startsWith('invalid')),
        ).toMatchObject([{ text: ',' }]);
        const list = await scopesOf('boat a { outriggers { halyards 3.4 m, 6.0 m } }');
        expect(list.filter(({ scope }) => scope.startsWith('invalid'))).toEqual([]);
        expect(list.filter(({ scope }) => scope === 'constant.numeric').map(({ text }) => text)).toEqual([
            '3.4',
            '6.0',
        ]);
    });

    test('feet and inches are two numbers with a unit each', async () => {
        const found = (await scopesOf('rod a { length 6 ft 4 in  tip 5 ft }')).filter(({ scope }) =>
            /numeric|unit/.test(scope),
        );
        expect(found.map(({ text }) => text)).toEqual(['6', 'ft', '4', 'in', '5', 'ft']);
    });

    test('comments hold whatever they like, and those for the reader have a scope of their own', async () => {
        const text = '/** "A" { */\n/* spread b {\n speed 8 kn */\n/**/ spread a { // speed "8\n  sea 1 m\n}';
        const found = await scopes(text);
        expect(found['"A" {']).toBe('comment.block.documentation');
        expect(found['speed 8 kn']).toBe('comment.block');
        expect(found['// speed "8']).toBe('comment.line.double-slash');
        expect(found).toMatchObject({ sea: 'keyword.other.property', a: 'entity.name.type' });
    });

    test('dates, times and signs', async () => {
        expect(await scopes('log 2026-02-14 {\n  at 07:42 hooked\n  zone "+11:00"\n}')).toMatchObject({
            '2026-02-14': 'constant.numeric.date',
            '07:42': 'constant.numeric.time',
            '"+11:00"': 'string.quoted.double',
        });
    });

    test('a rule takes settings that the grammar does not know', async () => {
        expect(
            await scopes(
                'rules a {\n  rule stagger { severity error  sway-more 5 deg }\n  written saltwater\n}',
            ),
        ).toMatchObject({
            stagger: 'support.function.rule',
            severity: 'keyword.other.property',
            error: 'variable.other.enummember',
            'sway-more': 'keyword.other.property',
            saltwater: 'variable.other.reference',
        });
    });
});
