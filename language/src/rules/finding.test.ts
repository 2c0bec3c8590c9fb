import { expect, test } from 'vitest';
import { checkText, today } from '../../../tests/language/marked.ts';
import type { SpreadLine } from '../plan/model.ts';
import { judge } from './judge.ts';
import { type Problem, type Rule, rule } from './rule.ts';
import { housekeeping } from './standing.ts';

const two = today(
    '    port short corner { lure broad  back 20 m }\n    starboard long corner { lure dart  back 30 m }',
);

/** A rule that says what it is told to, of a plan's lines. */
const saying = (
    name: string,
    problems: (lines: readonly SpreadLine[]) => readonly Problem[],
    more: object = {},
) =>
    rule({
        name,
        group: 'crew',
        standing: housekeeping,
        severity: 'warning',
        summary: 'Says what it is told to, for the sake of a test.',
        settings: {},
        check: ({ plan }, _, report) => {
            for (const problem of problems(plan.lines)) report(problem);
        },
        ...more,
    }) as Rule;
const judged = async (...rules: readonly Rule[]) => {
    const { resolved, plans } = await checkText(two);
    return judge(resolved, plans, rules);
};

test('findings come by their place, then by their rule, then by their words', async () => {
    const late = saying('a-late', ([, second]) => [{ at: second!, what: 'Late.' }]);
    const both = (name: string) =>
        saying(name, ([first]) => [
            { at: first!, what: 'B.' },
            { at: first!, what: 'A.' },
        ]);
    const { findings, plans } = await judged(late, both('c'), both('b'));
    const told = findings.map(({ rule, what }) => `${rule}: ${what}`);
    expect(told).toEqual(['b: A.', 'b: B.', 'c: A.', 'c: B.', 'a-late: Late.']);
    expect(plans.get('today')!.map(({ rule, what }) => `${rule}: ${what}`)).toEqual(told);
});

test('a finding has what its problem has, and nothing more', async () => {
    const { findings } = await judged(
        saying('bare', ([first]) => [{ at: first!, what: 'bare.' }]),
        saying('full', ([first, second]) => [
            {
                at: [first!, second!],
                severity: 'hint',
                what: 'full.',
                why: 'Because.',
                remedy: 'Mend it.',
                related: [
                    { at: second!, what: 'over there.' },
                    { at: undefined, what: 'Nowhere.' },
                ],
                fixes: [undefined, { title: 'Mend', edits: [] }],
                positions: [second!, first!],
                unnecessary: true,
            },
        ]),
    );
    const [bare, full] = findings;
    expect(bare).toEqual({
        rule: 'bare',
        severity: 'warning',
        at: bare!.at,
        what: 'Bare.',
        related: [],
        fixes: [],
        positions: [],
        plan: 'today',
    });
    expect(two.slice(bare!.at.start, bare!.at.end)).toBe('port short corner');
    expect(full).toEqual({
        rule: 'full',
        severity: 'hint',
        at: bare!.at,
        what: 'Full.',
        why: 'Because.',
        remedy: 'Mend it.',
        related: [{ at: expect.objectContaining({ uri: bare!.at.uri }), what: 'Over there.' }],
        fixes: [{ title: 'Mend', edits: [] }],
        positions: ['starboard long corner', 'port short corner'],
        unnecessary: true,
        plan: 'today',
    });
    expect(two.slice(full!.related[0]!.at.start, full!.related[0]!.at.end)).toBe('starboard long corner');
});

test('what another line says of the same words is one finding about both', async () => {
    const { findings } = await judged(
        saying('shared', (lines) =>
            lines.map((line) => ({ at: lines[0]!, what: 'The same.', positions: [line] })),
        ),
    );
    expect(findings.map(({ positions }) => positions)).toEqual([
        ['port short corner', 'starboard long corner'],
    ]);
});

test('a rule that spares presets is not heard on a plan that others are like and that cannot be fished yet', async () => {
    const heard = async (base: string, like = 'like base') => {
        const text = `use "cockpit.spread"
spread base { ${base}  shotgun { lure pin } }
spread day ${like} { boat fulmar  speed 8 kn  shotgun { lure pin } }
`;
        const { resolved, plans } = await checkText(text);
        const said = (more: object) =>
            [
                ...judge(resolved, plans, [
                    saying('one', () => [], more),
                    saying('some', ([first]) => [{ at: first!, what: 'Heard.' }], more),
                ]).plans,
            ]
                .flatMap(([name, found]) => (found.length > 0 ? [name] : []))
                .sort();
        expect(said({})).toEqual(['base', 'day']);
        return said({ spares: 'presets' });
    };
    expect(await heard('')).toEqual(['day']);
    expect(await heard('boat fulmar')).toEqual(['day']);
    expect(await heard('speed 8 kn')).toEqual(['day']);
    expect(await heard('boat fulmar  speed 8 kn')).toEqual(['base', 'day']);
    expect(await heard('', '')).toEqual(['base', 'day']);
});

test('what is said of the file stands beside what is said of its plans, unless it is switched off', async () => {
    const about = (severity: string) =>
        saying('about', () => [], {
            severity,
            check: undefined,
            checkFile: (_: unknown, __: unknown, report: (problem: Problem) => void) =>
                report({ at: place!, what: 'About.' }),
        });
    const { resolved, plans } = await checkText(two);
    const place = plans[0]!.plan.lines[0];
    expect(
        judge(resolved, plans, [about('hint')]).findings.map(({ severity, what }) => [severity, what]),
    ).toEqual([['hint', 'About.']]);
    expect(judge(resolved, plans, [about('off')]).findings).toEqual([]);
});
