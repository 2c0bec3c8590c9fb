import { describe, expect, test, vi } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { createServices } from '../../language/src/plan/services.ts';
import type { FluentParser } from '../../language/src/plan/syntax/fluent/parser.ts';
import { excerpt } from '../../language/src/reports/excerpt.ts';
import { checkText } from './marked.ts';

describe('of one kind of fault in the text of a file', () => {
    const text = (faults: number) => `spread s {\n${'    frob 3 kn\n'.repeat(faults)}}\n`;

    test('fifty are told, and behind them how many more there are', async () => {
        const { findings } = await checkText(text(170));
        const said = findings.filter(({ rule }) => rule === 'unknown-word');
        expect(said).toHaveLength(51);
        expect(said.map(({ at }) => at.range.start.line)).toEqual(
            Array.from({ length: 51 }, (_, n) => n + 1),
        );
        expect(messageOf(said[50]!)).toBe(
            '120 more places in this file, from here on, have a finding of this kind. Mend the first ones: often the rest follows from them.',
        );
        expect(said[50]!.severity).toBe('error');
    });

    test('fifty are all told, and of fifty-one the last is one more', async () => {
        const few = await checkText(text(50));
        expect(few.findings.filter(({ rule }) => rule === 'unknown-word')).toHaveLength(50);
        expect(few.findings.map(messageOf).join()).not.toContain('more place');
        const { findings } = await checkText(text(51));
        expect(messageOf(findings.filter(({ rule }) => rule === 'unknown-word').at(-1)!)).toMatch(
            /^One more place/,
        );
    });

    test('a flood of one kind leaves another kind its word', async () => {
        const { findings } = await checkText(
            `spread s { speed 8\n${'    frob 3 kn\n'.repeat(200)} boat nobody }\n`,
        );
        expect(findings.map(({ rule }) => rule)).toContain('quantity');
        expect(findings.map(({ rule }) => rule)).toContain('unknown-name');
    });
});

test('comments that open and never close are told one by one, and what stands between them is read', async () => {
    const { findings, resolved } = await checkText(`${'/* one\nspread s { crew 3 }\n'.repeat(120)}`);
    expect(findings.filter(({ rule }) => rule === 'syntax').map(({ at }) => at.range.start.line)).toEqual(
        Array.from({ length: 51 }, (_, n) => 2 * n),
    );
    expect(resolved.spreads).toHaveLength(120);
});

test('thousands of faults in one block turn over no stack, and what follows the block is read', async () => {
    const lines = Array.from({ length: 9_000 }, (_, n) => `position p${n} { outfit o }`).join('\n');
    const { findings, resolved } = await checkText(`spread s {\n${lines}\n}\nspread t { crew 3 }\n`);
    const said = findings.filter(({ rule }) => rule === 'syntax');
    expect(said).toHaveLength(51);
    expect(said[0]!.at.range.start.line).toBe(1);
    expect(resolved.spreads.at(-1)?.crew?.si).toBe(3);
});

test('the way on is looked for once for faults of a kind, however many there are', () => {
    const { wrapper, parse } = thorough();
    // What is read ahead is what is done, however fast the machine.
    const readAhead = (faults: number) => {
        const spy = vi.spyOn(wrapper, 'LA');
        const { parserErrors } = parse(`spread s {\n${'crew 3 4\n'.repeat(faults)}}\n`);
        expect(parserErrors).toHaveLength(faults);
        const { length } = spy.mock.calls;
        spy.mockRestore();
        return length / faults;
    };
    expect(readAhead(1200)).toBeLessThan(2 * readAhead(300));
});

/** The parser that gets on after faults, and what it reads ahead with. */
function thorough() {
    const { parser } = createServices();
    const { thorough: made } = parser.LangiumParser as unknown as FluentParser;
    const { wrapper } = made as unknown as { wrapper: { LA(howFar: number): unknown } };
    return { wrapper, parse: (text: string) => made.parse(text) };
}

describe('names that nothing has', () => {
    test('get no suggestion that would make a plan like itself', async () => {
        const { findings } = await checkText(`spread plan-a like plan-x { }
spread plan-b like plan-a { }
spread plan-long like plan-b { }
spread plan-q { crew 3 }
`);
        expect(findings.filter(({ rule }) => rule === 'unknown-name').map(messageOf)).toEqual([
            'No spread is called `plan-x` in this file or in what it uses. What leans on it is not known. Did you mean `plan-q`?',
        ]);
    });

    test('are each looked for among all others only where somebody reads what comes of it', async () => {
        const { findings } = await checkText(
            Array.from({ length: 600 }, (_, n) => `spread s${n} like sx${n} { }`).join('\n'),
        );
        const said = findings.filter(({ rule }) => rule === 'unknown-name');
        expect(said).toHaveLength(51);
        expect(messageOf(said[0]!)).toMatch(/Did you mean `s10`\?/);
    });
});

/** Counts the calls of a method of all collections: a spy would keep every one of millions. Gives what takes it back. */
function counted<T extends object>(of: T, name: keyof T & string, count: () => void): () => void {
    const original = of[name] as (...given: unknown[]) => unknown;
    const counting = function (this: unknown, ...given: unknown[]) {
        count();
        return original.apply(this, given);
    };
    Object.defineProperty(of, name, { value: counting, writable: true, configurable: true });
    return () => Object.defineProperty(of, name, { value: original, writable: true, configurable: true });
}

describe('a row of plans, one like the next', () => {
    const row = (length: number) =>
        Array.from({ length }, (_, n) => `spread s${n} ${n > 0 ? `like s${n - 1} { }` : '{ crew 3 }'}`).join(
            '\n',
        );

    test('is followed a hundred times, and not for ever', async () => {
        const { findings, resolved } = await checkText(row(105));
        const crew = resolved.spreads.map((plan) => plan.crew?.si);
        expect(crew.slice(0, 101)).toEqual(Array(101).fill(3));
        expect(crew.slice(101)).toEqual(Array(4).fill(undefined));
        const said = findings.filter(({ rule }) => rule === 'like');
        expect(said.map(({ at }) => at.range.start.line)).toEqual([101, 102, 103, 104]);
        expect(messageOf(said[0]!)).toMatch(
            /^`s101` is at the end of more than 100 definitions, one like the next\./,
        );
    });

    test('costs each of them the same, however long the row is', async () => {
        // What is looked up and remembered is what is done, however fast the machine.
        const lookups = async (length: number) => {
            const text = row(length);
            let calls = 0;
            const restored = [
                counted(Set.prototype, 'add', () => calls++),
                counted(Set.prototype, 'has', () => calls++),
                counted(Map.prototype, 'get', () => calls++),
            ];
            await checkText(text);
            for (const restore of restored) restore();
            return calls / length;
        };
        const [short, long] = [await lookups(300), await lookups(1200)];
        // Four times as long: one look at every pair would cost each of them four times as much.
        expect(long / short).toBeLessThan(2);
    });

    test('of any length turns over no stack, whichever end is read first', async () => {
        const { findings } = await checkText(row(6000).split('\n').reverse().join('\n'));
        expect(findings.filter(({ rule }) => rule === 'like')).toHaveLength(51);
    });
});

test('of a line of a megabyte only the neighbourhood is looked at, and is shown as of any other', () => {
    const place = (start: number) => ({
        uri: 'file:///a.spread',
        start,
        end: start + 3,
        range: { start: { line: 0, character: start }, end: { line: 0, character: start + 3 } },
    });
    const width = (text: string) => text.length;
    const long = 'abc '.repeat(250_000);
    const shown = excerpt(long, place(500_000), 80, width);
    expect(shown.line).toMatch(/^….*…$/);
    expect(shown.line.slice(shown.carets.indexOf('^'), shown.carets.length)).toBe('abc');
    const short = 'one\nabc abc abc\nthree';
    expect(excerpt(short, place(8), 80, width)).toEqual({ line: 'abc abc abc', carets: '    ^^^' });
    let measured = 0;
    const counting = (text: string) => {
        measured += text.length;
        return text.length;
    };
    excerpt(long, place(500_000), 80, counting);
    expect(measured).toBeLessThan(100_000);
});
