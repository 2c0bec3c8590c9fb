import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { rules } from '../../language/src/rules/registry.ts';
import { checkText, expectMarked, mended } from '../language/marked.ts';

const folder = (name: string) => {
    const here = new URL(`${name}/`, import.meta.url);
    return readdirSync(here)
        .filter((file) => file.endsWith('.spread'))
        .map((file) => ({ file, text: readFileSync(new URL(file, here), 'utf8') }));
};

/** Curing one thing shows the next: a clip set for the other lure, another lane, a turn at the least speed. */
const knockOn: ReadonlySet<string> = new Set([
    'big-one-outside.spread',
    'off-the-face.spread',
    'too-slow-for-a-jet.spread',
]);

/** Rules that never offer a fix: no single value of a plan can put right what they are about. */
const unfixed: ReadonlySet<string> = new Set(
    rules.map(({ name }) => name).filter((name) => !/\bfixes\b/.test(sourceOf(name))),
);

function sourceOf(rule: string): string {
    const path = `../../language/src/rules/${rule}/${rule}.ts`;
    return readFileSync(new URL(path, import.meta.url), 'utf8');
}

/** Mistakes without a fix, though their rule has some: why no number of the plan's own cures them. */
const notHere: ReadonlyMap<string, string> = new Map([
    ['long-together.spread', 'double and leader both belong to others'],
    ['lure-takes-line.spread', 'no drag that may be set holds that lure'],
    ['riggers-level.spread', 'the distances are said as waves'],
    ['rope-on-the-rigger.spread', 'the other outfit is said in the plan that it is like'],
    ['strike-a-circle.spread', 'the method is another, not a number'],
    ['treble-on-a-skirt.spread', 'what to rig instead is the crew’s to say'],
]);

const sound = folder('sound');
const mistakes = folder('mistakes');

describe('ten sound plans, made from common practice for different boats, fish and seas', () => {
    test.each(sound)('$file: no finding at all', async ({ text }) => {
        expect((await checkText(text)).findings.map(messageOf)).toEqual([]);
    });

    test('differ in what a spread can differ in', async () => {
        const plans = await Promise.all(
            sound.map(async ({ text }) => {
                const { plans } = await checkText(text);
                expect(plans).toHaveLength(1);
                return plans[0]!;
            }),
        );
        const of = <T>(pick: (plan: (typeof plans)[number]['plan']) => T) =>
            new Set(plans.map(({ plan }) => pick(plan)));
        expect(plans).toHaveLength(10);
        expect(of(({ boat }) => boat!.value.title).size).toBe(10);
        expect(of(({ target }) => target!.value.name).size).toBeGreaterThanOrEqual(8);
        expect(of(({ lines }) => lines.filter(({ role }) => role === 'fished').length)).toEqual(
            new Set([2, 3, 4, 5]),
        );
        const seas = [...of(({ sea }) => sea!.si)].sort((a, b) => a - b);
        expect([seas[0], seas.at(-1)]).toEqual([0.3, 1.75]);
        const knots = [...of(({ speed }) => Math.round(speed!.si / 0.514444))].sort((a, b) => a - b);
        expect([knots[0], knots.at(-1)]).toEqual([5, 14]);
    });

    // A rule without its inputs is silent about anything: silence would prove nothing.
    test('give the rules enough to speak of', async () => {
        const figures = (await Promise.all(sound.map(({ text }) => checkText(text)))).flatMap(
            ({ plans }) => plans,
        );
        const fished = figures.flatMap(({ lines }) => lines.filter(({ line }) => line.role === 'fished'));
        const share = (met: number) => met / fished.length;
        expect(
            figures.filter(({ waves }) => waves.known && !waves.value.doubt).length,
        ).toBeGreaterThanOrEqual(5);
        expect(figures.every(({ turns }) => turns?.known && turns.value.asked)).toBe(true);
        expect(figures.filter(({ order }) => order.known).length).toBe(10);
        expect(share(fished.filter(({ reel }) => reel?.known).length)).toBe(1);
        expect(share(fished.filter(({ pull }) => pull.known).length)).toBe(1);
        expect(share(fished.filter(({ weakest }) => weakest?.known).length)).toBe(1);
        expect(share(fished.filter(({ drags }) => drags.length === 3).length)).toBe(1);
        expect(share(fished.filter(({ clip }) => clip?.known).length)).toBeGreaterThan(0.85);
        expect(share(fished.filter(({ rest }) => rest.known).length)).toBeGreaterThan(0.8);
    });
});

describe('plans with one realistic mistake each', () => {
    test('are forty at least, and try every rule that speaks by itself', () => {
        expect(mistakes.length).toBeGreaterThanOrEqual(40);
        const tried = new Set(mistakes.flatMap(({ text }) => /\^ ([\w-]+): /.exec(text)?.[1] ?? []));
        const untried = rules.map(({ name }) => name).filter((name) => !tried.has(name));
        // Off until a team wants it; and about the file, not about a plan.
        expect(untried).toEqual(['lateral-gap', 'version']);
    });

    test.each(mistakes)(
        '$file: found by the one rule that should, under the right words',
        async ({ text }) => {
            expect(text.match(/^\s*\/\/\s*\^+ /gm)).toHaveLength(1);
            await expectMarked(text);
        },
    );

    const fixed = mistakes.filter(
        ({ file, text }) => !unfixed.has(/\^ ([\w-]+): /.exec(text)![1]!) && !notHere.has(file),
    );

    test.each(mistakes)('$file: each of its quick fixes cures it', async ({ file, text }) => {
        const [finding] = (await checkText(text)).findings;
        for (const index of finding!.fixes.keys()) {
            const { findings } = await checkText(await mended(text, finding!.rule, index));
            expect(findings.filter(({ rule }) => rule === finding!.rule).map(messageOf)).toEqual([]);
            if (!knockOn.has(file)) expect(findings.map(messageOf)).toEqual([]);
        }
    });

    test('where one number cures a mistake in the plan’s own words, there is a quick fix', async () => {
        expect(fixed.length).toBeGreaterThan(15);
        const without: string[] = [];
        for (const { file, text } of fixed) {
            const [finding] = (await checkText(text)).findings;
            if (finding!.fixes.length === 0) without.push(file);
        }
        expect(without).toEqual([]);
        const found = new Set(mistakes.map(({ file }) => file));
        for (const file of notHere.keys()) expect(found).toContain(file);
    });
});
