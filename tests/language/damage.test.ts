import { describe, expect, test } from 'vitest';
import { type Finding, messageOf } from '../../language/src/plan/finding.ts';
import { checkText } from './marked.ts';

const sound = `boat tern "Tern" {
    beam 3 m
    speed 6 kn to 10 kn
    outriggers {
        length 6 m
        foot { ahead 3 m  out 1.5 m  up 2 m }
        rise 45 deg
        sweep 70 deg
        halyards 3 m, 5.5 m
    }
}

lure ink "Ink" pusher {
    length 300 mm
    runs 6 kn to 9 kn
    spares 1
}

spread calm "Calm day" {
    boat tern
    speed 8 kn
    crew 3
    port long rigger {
        lure ink
        back 44 m
    }
    starboard long rigger { lure ink  back 45 m }
}

spread rough like calm {
    speed 7 kn
}
`;

/** Codes of the language itself; what the rules make of a plan is theirs to test. */
const LANGUAGE = new Set([
    'syntax',
    'unknown-word',
    'unknown-name',
    'quantity',
    'value',
    'duplicate',
    'conflict',
    'use',
    'like',
]);

interface Damage {
    readonly what: string;
    readonly from: string;
    readonly to: string;
    /** Line and code of each finding, and a part of its message. */
    readonly says: readonly (readonly [line: number, code: string, part: string])[];
    /** Definitions that must still be there, by name; all four where nothing is said. */
    readonly keeps?: readonly string[];
}

const damages: readonly Damage[] = [
    {
        what: 'a number is missing at the end of a line',
        from: 'speed 8 kn\n    crew 3',
        to: 'speed\n    crew 3',
        says: [[21, 'syntax', 'A number is missing after `speed`. Write for instance `speed 8 kn`.']],
    },
    {
        what: 'a unit is missing',
        from: 'speed 8 kn',
        to: 'speed 8',
        says: [[21, 'quantity', 'Speed: 8 has no unit. Write 8 kn']],
    },
    {
        what: 'a unit is misspelt',
        from: 'speed 8 kn',
        to: 'speed 8 knts',
        says: [[21, 'quantity', '“knts” is not a unit. Write 8 kn.']],
    },
    {
        what: 'a unit measures something else',
        from: 'beam 3 m',
        to: 'beam 3 kg',
        says: [[2, 'quantity', '“kg” is a unit of load, not of length.']],
    },
    {
        what: 'a decimal comma',
        from: 'beam 3 m',
        to: 'beam 3,2 m',
        says: [[2, 'quantity', 'Decimals take a point, thousands nothing. Write 3.2 m.']],
    },
    {
        what: 'a number no boat can have',
        from: 'beam 3 m',
        to: 'beam 300 m',
        says: [[2, 'quantity', 'Beam 300 m is outside what makes sense']],
    },
    {
        what: 'a property is misspelt',
        from: 'crew 3',
        to: 'crw 3',
        says: [
            [
                22,
                'unknown-word',
                '`crw` means nothing in a spread block. It counts as not written. Did you mean `crew`?',
            ],
        ],
    },
    {
        what: 'a definition is misspelt',
        from: 'spread calm "Calm day" {',
        to: 'sprad calm "Calm day" {',
        says: [
            [19, 'unknown-word', 'Did you mean `spread`?'],
            [30, 'unknown-name', 'No spread is called `calm`'],
        ],
        keeps: ['tern', 'ink', 'rough'],
    },
    {
        what: 'a place is misspelt',
        from: 'port long rigger {',
        to: 'port long riger {',
        says: [[23, 'value', 'Did you mean `rigger`?']],
    },
    {
        what: 'a side is misspelt',
        from: 'port long rigger {',
        to: 'prt long rigger {',
        says: [[23, 'unknown-word', 'Did you mean `port`?']],
    },
    {
        what: 'a position does not say which of two',
        from: 'port long rigger {',
        to: 'port rigger {',
        says: [[23, 'value', 'the short or the long one?']],
    },
    {
        what: 'a position is not closed',
        from: 'back 44 m\n    }',
        to: 'back 44 m',
        says: [[25, 'syntax', 'A `}` is missing before `starboard`']],
    },
    {
        what: 'a spread is not closed',
        from: 'back 45 m }\n}',
        to: 'back 45 m }\n',
        says: [[27, 'syntax', 'A `}` is missing before `spread`']],
    },
    {
        what: 'a position is not opened',
        from: 'port long rigger {',
        to: 'port long rigger',
        says: [[23, 'syntax', '`{` is missing after `rigger`']],
    },
    {
        what: 'a spread is not opened',
        from: 'spread calm "Calm day" {',
        to: 'spread calm "Calm day"',
        says: [[19, 'syntax', '`{` is missing after `"Calm day"`']],
    },
    {
        what: 'a brace too many',
        from: 'crew 3\n',
        to: 'crew 3\n    }\n',
        says: [[24, 'syntax', 'look for a `}` too many above it']],
    },
    {
        what: 'the last brace twice',
        from: 'speed 7 kn\n}',
        to: 'speed 7 kn\n}\n}',
        says: [[33, 'syntax', 'There is a `}` too many']],
    },
    {
        what: 'a name is missing at the end of a line',
        from: 'lure ink\n        back',
        to: 'lure\n        back',
        says: [[24, 'syntax', 'A name is missing after `lure`']],
    },
    {
        what: 'a definition has no name',
        from: 'lure ink "Ink" pusher {',
        to: 'lure {',
        says: [
            [13, 'syntax', 'A name is missing after `lure`'],
            [24, 'unknown-name', 'No lure is called `ink`'],
            [27, 'unknown-name', 'No lure is called `ink`'],
        ],
        keeps: ['tern', 'calm', 'rough'],
    },
    {
        what: 'a range lacks its `to`',
        from: 'speed 6 kn to 10 kn',
        to: 'speed 6 kn 10 kn',
        says: [[3, 'syntax', '`to` is missing after `kn`']],
    },
    {
        what: 'a range lacks its end',
        from: 'runs 6 kn to 9 kn',
        to: 'runs 6 kn to',
        says: [[15, 'syntax', 'A number is missing after `to`']],
    },
    {
        what: 'a text is not closed',
        from: '"Calm day" {',
        to: '"Calm day {',
        says: [[19, 'syntax', 'The quote that opens here is not closed']],
    },
    {
        what: 'quotes from a word processor',
        from: '"Calm day"',
        to: '“Calm day”',
        says: [[19, 'syntax', 'Use straight ones: `"Calm day"`']],
    },
    {
        what: 'a comment is not closed',
        from: 'crew 3',
        to: '/* crew 3',
        says: [[22, 'syntax', 'The comment that opens here is not closed']],
    },
    {
        what: 'a comment of several lines is not closed',
        from: 'crew 3',
        to: '/* crew of three\n    once the season opens, with whoever comes\n    speed 8 kn',
        says: [
            [22, 'syntax', 'The comment that opens here is not closed'],
            [24, 'duplicate', '`speed` is said twice'],
        ],
    },
    {
        what: 'the side of a position is forgotten',
        from: 'port long rigger {',
        to: 'long rigger {',
        says: [[23, 'value', 'Which side does `long rigger` stand on: port or starboard?']],
    },
    {
        what: 'the word before a value is forgotten',
        from: 'lure ink  back 45 m',
        to: 'lure ink  wave 4',
        says: [[27, 'syntax', '`wave` does not begin a property: it stands inside one, as in `back wave 3`']],
    },
    {
        what: 'feet and inches as a carpenter marks them',
        from: 'back 44 m',
        to: `back 144' 6"`,
        says: [[25, 'syntax', 'Feet and inches are written in letters: `144 ft 6 in`']],
    },
    {
        what: 'feet alone with their mark',
        from: 'back 44 m',
        to: "back 144'",
        says: [[25, 'syntax', 'Feet and inches are written in letters: `144 ft`']],
    },
    {
        what: 'a date with the day first',
        from: 'crew 3',
        to: 'crew 3\n    date 14/2/2026',
        says: [[23, 'value', 'Write 2026-02-14']],
    },
    {
        what: 'a role without quotes',
        from: 'crew 3',
        to: 'crew 3\n    roles { helm Ana }',
        says: [[23, 'syntax', 'A text in quotes is missing after `helm`']],
    },
    {
        what: 'a comma left out of an order',
        from: 'crew 3',
        to: 'crew 3\n    order set port long rigger starboard long rigger',
        says: [[23, 'syntax', 'In an `order` a comma stands between positions']],
    },
    {
        what: 'a word taken away that the block never has',
        from: 'speed 7 kn',
        to: 'speed 7 kn\n    no clip',
        says: [[32, 'unknown-word', 'A spread block has no `clip` to take away']],
    },
    {
        what: 'like a name that only the definition itself is near to',
        from: 'spread rough like calm',
        to: 'spread rough like rouhg',
        says: [[30, 'unknown-name', 'Define it, or `use` the file that does']],
    },
    {
        what: 'a word too many behind a number',
        from: 'crew 3',
        to: 'crew 3 people',
        says: [[22, 'quantity', '“people” is not a unit']],
    },
    {
        what: 'a stray character',
        from: 'crew 3',
        to: 'crew 3;',
        says: [[22, 'syntax', '`;` has no meaning here']],
    },
    {
        what: 'a colon behind a property',
        from: 'crew 3',
        to: 'crew: 3',
        says: [[22, 'syntax', '`:` has no meaning here']],
    },
    {
        what: 'an equals sign',
        from: 'speed 8 kn',
        to: 'speed = 8 kn',
        says: [[21, 'syntax', '`=` has no meaning here']],
    },
    {
        what: 'a property in the wrong block',
        from: 'crew 3',
        to: 'crew 3\n    beam 3 m',
        says: [[23, 'syntax', '`beam` does not belong in a spread block. It belongs in a boat block']],
    },
    {
        what: 'a property outside every block',
        from: 'spread rough like calm {',
        to: 'speed 7 kn\nspread rough like calm {',
        says: [[30, 'syntax', '`speed` does not belong outside a block']],
    },
    {
        what: 'a title without quotes',
        from: '"Calm day"',
        to: 'Calm weather',
        says: [[19, 'syntax', 'A title is in quotes: `"Calm weather"`']],
    },
    {
        what: 'a name in quotes',
        from: 'starboard long rigger { lure ink  back 45 m }',
        to: 'starboard long rigger { lure "ink"  back 45 m }',
        says: [[27, 'syntax', 'a name stands without: `ink`']],
    },
    {
        what: 'a number in words',
        from: 'crew 3',
        to: 'crew three',
        says: [[22, 'syntax', 'A number is missing after `crew`; `three` stands there.']],
    },
    {
        what: 'a fish that the library has',
        from: 'crew 3',
        to: 'crew 3\n    target wahoo',
        says: [[23, 'unknown-name', 'The library has it: `use "layback:species"`']],
    },
    {
        what: 'an unknown name',
        from: 'boat tern\n',
        to: 'boat trn\n',
        says: [[20, 'unknown-name', 'Did you mean `tern`?']],
    },
    {
        what: 'a wave without its number',
        from: 'back 44 m',
        to: 'back wave',
        says: [[25, 'syntax', 'A number is missing after `wave`']],
    },
    {
        what: 'nothing behind `from`',
        from: 'back 44 m',
        to: 'from',
        says: [[25, 'syntax', '`flat clip`, `halyard` and its number']],
    },
    {
        what: 'a text where a number belongs',
        from: 'crew 3',
        to: 'crew "three"',
        says: [[22, 'syntax', 'A number is missing after `crew`; `"three"` stands there.']],
    },
    {
        what: 'a property twice',
        from: 'crew 3',
        to: 'crew 3\n    crew 4',
        says: [[23, 'duplicate', '`crew` is said twice']],
    },
    {
        what: 'the marks of a merge that nobody finished',
        from: 'crew 3',
        to: 'sea 1 m\n<<<<<<< HEAD\n    crew 3\n=======\n    depth 40 m\n>>>>>>> wind',
        says: [[23, 'conflict', 'Two branches changed this, each otherwise, and nobody has chosen yet.']],
    },
    {
        what: 'a title in single quotes',
        from: 'calm "Calm day"',
        to: "calm 'Calm day'",
        says: [[19, 'syntax', 'is not a quote that the language knows']],
    },
    {
        what: 'a title in typographic quotes',
        from: 'calm "Calm day"',
        to: 'calm “Calm day”',
        says: [[19, 'syntax', 'Use straight ones: `"Calm day"`.']],
    },
    {
        what: 'a round bracket for a brace',
        from: 'starboard long rigger {',
        to: 'starboard long rigger (',
        says: [[27, 'syntax', '`(` opens no block. Use `{`.']],
    },
    {
        what: 'a comment as in a shell',
        from: 'crew 3',
        to: 'crew 3  # and me',
        says: [[22, 'syntax', '`#` begins no comment. Use `//`.']],
    },
    {
        what: 'a range the wrong way round',
        from: 'speed 6 kn to 10 kn',
        to: 'speed 10 kn to 6 kn',
        says: [[3, 'value', 'Write the lesser first: `speed 6 kn to 10 kn`.']],
    },
    {
        what: 'a range with a dash',
        from: 'speed 6 kn to 10 kn',
        to: 'speed 6–10 kn',
        says: [[3, 'quantity', 'A range is written with `to`: `6 kn to 10 kn`.']],
    },
    {
        what: 'a fraction',
        from: 'beam 3 m',
        to: 'beam 9 1/2 ft',
        says: [[2, 'quantity', 'Fractions are written as decimals: `9.5 ft`.']],
    },
    {
        what: 'a fraction in one character',
        from: 'beam 3 m',
        to: 'beam 9½ ft',
        says: [[2, 'quantity', 'Fractions are written as decimals: `9.5 ft`.']],
    },
    {
        what: 'a point in the middle',
        from: 'speed 8 kn',
        to: 'speed 7·5 kn',
        says: [[21, 'quantity', 'Decimals take a point: `7.5 kn`.']],
    },
    {
        what: 'metres with centimetres behind them',
        from: 'beam 3 m',
        to: 'beam 3m20',
        says: [[2, 'quantity', 'Metres and centimetres are one number: `3.20 m`.']],
    },
    {
        what: 'wide digits',
        from: 'speed 8 kn',
        to: 'speed ８ kn',
        says: [[21, 'quantity', 'Numbers take plain digits: `8`.']],
    },
    {
        what: 'a name in two words',
        from: 'lure ink  back 45 m',
        to: 'lure ink blot  back 45 m',
        says: [[27, 'unknown-word', '`blot`']],
    },
    {
        what: 'a name in two words that neither is',
        from: 'lure ink  back 45 m',
        to: 'lure big ink  back 45 m',
        says: [[27, 'unknown-name', 'A name is one word: `big-ink`']],
    },
    {
        what: 'the word `position` before one',
        from: 'starboard long rigger {',
        to: 'position stbd-long {',
        says: [[27, 'syntax', '`position` does not belong in a spread block']],
    },
    {
        what: 'a word of another block with half a time behind it',
        from: 'crew 3',
        to: 'lines out 16:',
        says: [[22, 'syntax', '`lines` does not belong in a spread block']],
    },
    {
        what: 'neither brace of a position',
        from: 'starboard long rigger { lure ink  back 45 m }\n}',
        to: 'starboard long rigger lure ink back 45 m\n}',
        says: [[27, 'syntax', '`{` is missing']],
    },
    {
        what: 'a comma missing in a list',
        from: 'halyards 3 m, 5.5 m',
        to: 'halyards 3 m 5.5 m',
        says: [[9, 'syntax', '`5.5` does not belong here']],
    },
    {
        what: 'the file ends in the middle of a word',
        from: 'speed 7 kn\n}\n',
        to: 'spe',
        says: [[31, 'syntax', 'A `}` is missing at the end']],
    },
];

describe('each kind of damage says what it is, once, and costs nothing else', () => {
    test.each(damages)('$what', async ({ from, to, says, keeps }) => {
        expect(sound).toContain(from);
        const sheet = await checkText(sound.replace(from, to));
        expect(
            sheet.findings
                .filter(({ rule }) => LANGUAGE.has(rule))
                .map(asSaid)
                .sort(),
        ).toEqual(says.map(([line, code, part]) => [line, code, expect.stringContaining(part)]));
        const names = sheet.resolved.definitions.map(({ name }) => name);
        expect(names).toEqual(expect.arrayContaining([...(keeps ?? ['tern', 'ink', 'calm', 'rough'])]));
    });

    test('the sound text is sound', async () => {
        const sheet = await checkText(sound);
        expect(sheet.findings.filter(({ rule }) => LANGUAGE.has(rule)).map(messageOf)).toEqual([]);
    });
});

describe('a number that could not be read is no number', () => {
    test.each([
        ['missing', 'speed 8 kn\n    crew 3', 'speed\n    crew 3'],
        ['without a unit', 'speed 8 kn\n    crew 3', 'speed 8\n    crew 3'],
        ['with a comma', 'speed 8 kn\n    crew 3', 'speed 8,5 kn\n    crew 3'],
        ['of another kind', 'speed 8 kn\n    crew 3', 'speed 8 kg\n    crew 3'],
    ])('a speed %s', async (_how, from, to) => {
        const sheet = await checkText(sound.replace(from, to));
        const calm = sheet.resolved.spreads.find(({ name }) => name === 'calm');
        expect(calm?.speed).toBeUndefined();
        expect(calm?.crew?.si).toBe(3);
        expect(sheet.plans.find(({ plan }) => plan === calm)?.waves).toEqual({
            known: false,
            reason: expect.stringMatching(/^`speed.*` cannot be used\.$/),
        });
    });
});

function asSaid(finding: Finding): [number, string, string] {
    return [finding.at.range.start.line + 1, finding.rule, messageOf(finding)];
}

test.each(['2026-03-0', '2026-13-01', '14/2/2026', '0000-01-01', '1.1.1'])(
    'a day that no calendar has, %s, is told wherever it stands, and nothing is reckoned from it',
    async (day) => {
        const { findings } = await checkText(`outfit red "Red" {
    rod { length 1.8 m  tip 1.3 m  butt 0.45 m }
    reel { capacity 800 m of 0.71 mm }
    line nylon { diameter 0.71 mm  class 24 kg  breaks 22.6 kg  fitted ${day} }
    drag { set 6 kg  hooked 7 kg  full 8 kg }
    tested ${day} by "R."
}
lure ink "Ink" pusher {
    length 300 mm
    hooks single { gap 48 mm  inspected ${day} }
    leader nylon { diameter 1.6 mm  breaks 113 kg  length 4.2 m  inspected ${day} }
}
spread calm "Calm day" {
    date ${day}
    waive stagger because "calm" until ${day}
    port long rigger { outfit red  lure ink  back 44 m }
}
spread dated "Dated" like calm { date 2026-03-02 }
log ${day} { using dated }
`);
        const told = findings.filter(({ rule }) => rule === 'value');
        expect(told.length).toBe(7);
    },
);
