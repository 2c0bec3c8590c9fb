import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { mergeTexts } from '../../language/src/plan/merge/texts.ts';
import { createServices } from '../../language/src/plan/services.ts';

const services = createServices();

function merged(base: string, ours: string, theirs: string) {
    const found = mergeTexts([base, ours, theirs], services);
    if (!found) throw new Error('One of the texts cannot be read.');
    return found;
}

const base = `use "tackle.spread"

/** For a settled sea. */
spread friday "Friday" {
    boat dunlin
    speed 8 kn  // both engines
    sea 0.5 m

    port short corner { outfit heavy  lure bell  back 12 m }
    // The far one.
    starboard long corner {
        outfit light
        lure rope
        back 24 m
    }
    note "gloves on"
}
`;

describe('two changes of one plan', () => {
    test('to different positions, or to different properties of one, both hold', () => {
        const ours = base.replace('12 m', '13 m').replace('8 kn', '7.5 kn');
        const theirs = base
            .replace('24 m', '26 m')
            .replace('lure rope', 'lure jetty')
            .replace('0.5 m', '0.8 m');
        expect(merged(base, ours, theirs)).toEqual({
            text: ours.replace('24 m', '26 m').replace('lure rope', 'lure jetty').replace('0.5 m', '0.8 m'),
            conflicts: 0,
        });
        const within = base.replace('lure bell', 'lure jetty');
        expect(merged(base, ours, within).text).toContain(
            'port short corner { outfit heavy  lure jetty  back 13 m }',
        );
    });

    test('of which one moves a line and the other changes it, both hold', () => {
        const lines = base.split('\n');
        const note = lines.findIndex((line) => line.includes('note'));
        const ours = [
            ...lines.slice(0, 4),
            lines[note],
            ...lines.slice(4, note),
            ...lines.slice(note + 1),
        ].join('\n');
        const theirs = base.replace('24 m', '26 m');
        expect(merged(base, ours, theirs)).toEqual({ text: ours.replace('24 m', '26 m'), conflicts: 0 });
    });

    test('alike, is taken once', () => {
        const both = base.replace('12 m', '13 m');
        expect(merged(base, both, both.replace('back 13 m', 'back   13 m'))).toEqual({
            text: both,
            conflicts: 0,
        });
    });

    test('that add each its own, keep both, whichever side is ours', () => {
        const [a, b] = ['note "knives away"', 'shotgun { outfit heavy  lure jetty  back 60 m }'].map((line) =>
            base.replace('    note "gloves on"\n', `    note "gloves on"\n    ${line}\n`),
        ) as [string, string];
        const found = merged(base, a, b);
        expect(found.conflicts).toBe(0);
        expect(found.text).toContain('knives away');
        expect(found.text).toContain('shotgun');
        expect(merged(base, b, a)).toEqual(found);
    });

    test('of one property, each otherwise, are marked in comments: ours stands, and neither is lost', () => {
        const ours = base.replace('24 m', '26 m');
        const theirs = base.replace('24 m', 'wave 3');
        expect(merged(base, ours, theirs)).toEqual({
            text: base.replace(
                '        back 24 m\n',
                [
                    '        // <<<<<<< ours: both sides changed this; keep one and take these marks out',
                    '        back 26 m',
                    '        // ======= theirs:',
                    '        // back wave 3',
                    '        // >>>>>>>',
                    '',
                ].join('\n'),
            ),
            conflicts: 1,
        });
    });

    test('in a block of one line open it for the marks, and it can still be read', () => {
        const { text, conflicts } = merged(base, base.replace('12 m', '13 m'), base.replace('12 m', '14 m'));
        expect(conflicts).toBe(1);
        const { value, parserErrors } = services.parser.LangiumParser.parse(text);
        expect(parserErrors).toEqual([]);
        expect((value as Sheet).definitions).toHaveLength(1);
        expect(text).toMatch(/back 13 m\n[\s\S]*\/\/ back 14 m\n/);
    });

    test('of which one takes out what the other changed, leave it and say so', () => {
        const without = base.replace('    port short corner { outfit heavy  lure bell  back 12 m }\n', '');
        const changed = base.replace('12 m', '13 m');
        for (const [ours, theirs, who] of [
            [without, changed, 'our side'],
            [changed, without, 'the other side'],
        ] as const) {
            const { text, conflicts } = merged(base, ours, theirs);
            expect(conflicts).toBe(1);
            expect(text).toContain('back 13 m');
            expect(text).toContain(`${who} took this out`);
        }
    });

    test('of a log keep the events of both, in the order of the day', () => {
        const log = (events: string) => `log 2026-03-07 {\n    using friday\n${events}}\n`;
        const [first, ours, theirs] = [
            '    at 07:10 raise port short corner\n',
            '    at 09:30 bite shotgun\n',
            '    at 08:05 bite starboard long corner\n',
        ];
        expect(merged(log(first), log(first + ours), log(first + theirs))).toEqual({
            text: log(first + theirs + ours),
            conflicts: 0,
        });
    });

    test('that cannot be read are left to whoever merges lines', () => {
        expect(mergeTexts([base, `${base}\nspread {`, base], services)).toBeUndefined();
    });

    test('keep the line ends of ours', () => {
        const ours = base.replaceAll('\n', '\r\n');
        const { text } = merged(base, ours, base.replace('24 m', '26 m'));
        expect(text).toBe(ours.replace('24 m', '26 m'));
    });
});

const positions = ['port short corner', 'starboard long corner', 'port long rigger', 'shotgun'] as const;
const entry = fc.oneof(
    fc.constantFrom(...positions).chain((position) =>
        fc
            .record({
                lure: fc.constantFrom('bell', 'rope', 'jetty'),
                back: fc.integer({ min: 10, max: 14 }),
            })
            .map(({ lure, back }) => [position, `${position} { lure ${lure}  back ${back} m }`] as const),
    ),
    fc.integer({ min: 6, max: 9 }).map((speed) => ['speed', `speed ${speed} kn`] as const),
    fc.constantFrom('gloves on', 'knives away').map((note) => [note, `note "${note}"`] as const),
    fc.constantFrom('calm', 'a chop').map((when) => ['', `// ${when}`] as const),
);
const sheet = fc.array(entry, { maxLength: 7 }).map((entries) => {
    const once = entries.filter(
        ([key], index) => key === '' || entries.findIndex((each) => each[0] === key) === index,
    );
    return `spread day {\n${once.map(([, text]) => `    ${text}\n`).join('')}}\n`;
});

describe('any three texts', () => {
    const assert = (law: (base: string, ours: string, theirs: string) => void) =>
        fc.assert(fc.property(sheet, sheet, sheet, law), { numRuns: 400 });

    test('of which one is the base give the other, letter for letter', () => {
        assert((was, ours) => {
            expect(merged(was, ours, was)).toEqual({ text: ours, conflicts: 0 });
            expect(merged(was, was, ours).conflicts).toBe(0);
            expect(bare(merged(was, was, ours).text)).toBe(bare(ours));
        });
    });

    test('of which two are alike give these', () => {
        assert((was, ours) => {
            expect(merged(was, ours, ours)).toEqual({ text: ours, conflicts: 0 });
        });
    });

    test('give the same plan from either side, where nothing is at odds, and as many conflicts', () => {
        assert((was, ours, theirs) => {
            const [one, other] = [merged(was, ours, theirs), merged(was, theirs, ours)];
            expect(one.conflicts).toBe(other.conflicts);
            if (one.conflicts === 0) expect(sorted(one.text)).toEqual(sorted(other.text));
        });
    });

    test('lose no word of either side that the base had not, and can be read', () => {
        assert((was, ours, theirs) => {
            const { text } = merged(was, ours, theirs);
            const before = new Set(bare(was).split(' '));
            for (const word of bare(`${ours} ${theirs}`).split(' '))
                if (!before.has(word)) expect(text).toContain(word);
            expect(services.parser.LangiumParser.parse(text).parserErrors).toEqual([]);
        });
    });
});

function bare(text: string): string {
    return text.split(/\s+/).filter(Boolean).join(' ');
}

function sorted(text: string): string[] {
    return text.split('\n').map(bare).filter(Boolean).sort();
}
