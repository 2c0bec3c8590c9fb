import fc from 'fast-check';
import type { AstNode } from 'langium';
import { type Context, type Property, vocabulary } from '../../language/src/plan/vocabulary.ts';

/** What a text says, without where it says it: two texts with the same meaning print the same. */
export function meaningOf(node: AstNode): string {
    return JSON.stringify(node, (key, value) => {
        if (key.startsWith('$') && key !== '$type') return undefined;
        if (value && typeof value === 'object' && '$refText' in value) return `→ ${value.$refText}`;
        // JSON knows no NaN, and a decimal comma is one.
        return Number.isNaN(value) ? 'NaN' : value;
    });
}

/** Definitions, and what to write before the brace. */
const HEADS: readonly (readonly [context: Context, head: string])[] = [
    ['boat', 'boat sandpiper "Sandpiper"'],
    ['rod', 'rod jet'],
    ['reel', 'reel lever-50 like other'],
    ['line', 'line in'],
    ['leader', 'leader heavy'],
    ['hooks', 'hooks single-9'],
    ['outfit', 'outfit fifty-1'],
    ['lure', 'lure ink-pusher "Ink" pusher'],
    ['teaser', 'teaser pink-chain'],
    ['bait', 'bait because'],
    ['method', 'method soft-strike'],
    ['species', 'species until'],
    ['spread', 'spread four-in-the-blue "Four" like three'],
    ['day', 'day until like other'],
    ['rules', 'rules winter-series'],
    ['log', 'log 2026-02-14'],
];

/** Statements that no block's table shows in all their shapes. */
const MORE: Partial<Record<Context, readonly string[]>> = {
    spread: [
        'port short corner { outfit fifty-1 lure ink-pusher back wave 2 from flat clip clip 3.4 kg }',
        'centre standby { outfit thirty-1 bait live "scad" }',
        'shotgun { lure jet back 70 m }',
        'waive because between port short rigger and port long rigger because "seen" until 2026-02-15',
        'waive until on shotgun because "seen"',
        'order clear port long rigger, port short rigger, starboard long rigger, starboard short rigger',
        'rule stagger { most 3 slack 4 mm in 5 say "x" severity error }',
        'no clip',
        'sped 8 kn',
        'sped eight knots { deep 3 }',
        'speed 7,5 kn',
    ],
    log: [
        'at 09:10 bite port long rigger hooked lost "hook pulled" fought 22 min speed 7.5 kn by "Noor" water 24 °C',
    ],
    outfit: ['rod jet { tip 1.3 m }', 'line { class 24 kg diameter 0.7 mm breaks 22.6 kg length 800 m }'],
    boat: ['length 35 ft 4 in', 'flat clip { ahead 1 m }'],
};

const TOKEN = /"[^"\n\r]*"?|\/\*[\s\S]*?\*\/|\/\/[^\n\r]*|[{},]|[^\s{},"]+/g;

/** Properties one after the other; how they are spaced is decided later. */
const entries = (context: Context) => {
    const examples = (vocabulary[context] as readonly Property[]).map((property) => property.example);
    return fc.array(fc.constantFrom(...examples, ...(MORE[context] ?? [])), { maxLength: 6 });
};

const definition = fc
    .constantFrom(...HEADS)
    .chain(([context, head]) => entries(context).map((list) => `${head} { ${list.join(' ¶ ')} }`));

const line = fc.oneof(
    { weight: 6, arbitrary: definition },
    {
        weight: 1,
        arbitrary: fc.constantFrom('use "tackle.spread"', 'layback 1', 'stray 3 kg', '}', '"', '#'),
    },
);

/** Between words: mostly a space, sometimes what nobody expects there. */
const within = fc.oneof(
    { weight: 30, arbitrary: fc.constant(' ') },
    { weight: 1, arbitrary: fc.constantFrom('\n', '\t ', '  ', '\r\n', '\r', '\n\n\n', '', '\u00a0') },
    {
        weight: 1,
        arbitrary: fc.constantFrom(
            ' /* a */ ',
            ' // b \n',
            '\n/* c\n   d */\n',
            '\n/** e\n* f */ ',
            '/* g\n */',
        ),
    },
);

/** Between properties: a line break or spaces, comments of every kind, blank lines. */
const apart = fc.oneof(
    { weight: 6, arbitrary: fc.constant('\n') },
    { weight: 3, arbitrary: fc.constantFrom('  ', '\n\n', '\n\n\n\n', '\r\n', '\n    ', '  \n') },
    {
        weight: 2,
        arbitrary: fc.constantFrom(
            ' // a \n',
            '\n// b\n',
            ' /* c */ ',
            '\n/** d\n* e */\n',
            '\n\n/* f\n  g */ // h\n\n',
            ' /** i */ ',
            '{ /* j */',
        ),
    },
);

/** Sheets as people type them: sound ones, and ones with breaks and comments where none belong. */
export const sheets: fc.Arbitrary<string> = fc
    .tuple(
        fc.array(line, { maxLength: 5 }),
        fc.infiniteStream(within),
        fc.infiniteStream(apart),
        fc.constantFrom('', '\uFEFF'),
    )
    .map(([lines, inside, outside, mark]) => {
        const words = lines.join(' ¶ ').match(TOKEN) ?? [];
        const spaced = words.map((word) =>
            word === '¶' ? outside.next().value : `${word}${inside.next().value}`,
        );
        return `${mark}${spaced.join('')}`;
    });

const damage = fc.oneof(
    fc.record({ at: fc.nat(), cut: fc.nat({ max: 12 }), put: fc.constant('') }),
    fc.record({
        at: fc.nat(),
        cut: fc.nat({ max: 2 }),
        put: fc.constantFrom(
            '{',
            '}',
            '"',
            '/*',
            '*/',
            '//',
            ',',
            '\n',
            '3',
            ' kg',
            '#',
            ' port ',
            ' lure ',
            '\u0000',
        ),
    }),
);

/** The same with characters cut out and put in anywhere. */
export const damagedSheets: fc.Arbitrary<string> = fc
    .tuple(sheets, fc.array(damage, { minLength: 1, maxLength: 4 }))
    .map(([text, hits]) =>
        hits.reduce((whole, { at, cut, put }) => {
            const where = whole.length === 0 ? 0 : at % whole.length;
            return whole.slice(0, where) + put + whole.slice(where + cut);
        }, text),
    );
