import { describe, expect, test } from 'vitest';
import { checkText, today } from '../../../tests/language/marked.ts';
import { judge } from './judge.ts';
import { ruleNamed } from './registry.ts';
import { rule } from './rule.ts';
import { housekeeping } from './standing.ts';

describe('a rule that gives way', () => {
    const base = {
        group: 'crew',
        standing: housekeeping,
        severity: 'hint',
        summary: 'Says something about lines, for the sake of a test.',
        settings: {},
    } as const;
    const speaker = (name: string, lines: readonly number[], more: object = {}) =>
        rule({
            ...base,
            ...more,
            name,
            check: ({ plan }, _, report) => {
                const positions = lines.map((line) => plan.lines[line]!);
                report({ at: positions[0]!, what: `${name} speaks.`, positions });
            },
        });
    const two = today(
        '    port short corner { lure broad  back wave 2 }\n    shotgun { lure pin  back wave 6 }',
    );

    test.each([
        ['to the cause, which is about the same lines', [0, 1], [0], ['cause']],
        ['not where the cause is about other lines', [0], [0, 1], ['cause', 'effect']],
    ])('%s', async (_, causes, effects, heard) => {
        const { resolved, plans } = await checkText(two);
        const these = [speaker('effect', effects, { givesWayTo: ['cause'] }), speaker('cause', causes)];
        const found = judge(resolved, plans, these).findings.map((finding) => finding.rule);
        expect(found.sort()).toEqual(heard);
    });

    const waiving = (name: string) =>
        two.replace('\n}', `\n    waive ${name} on port short corner because "so"\n}`);
    /** What is heard of an effect, `crew`, of its cause, `lift`, and of the cause of that, `wash`. */
    const heardOf = async (text: string, ...speaking: readonly string[]) => {
        const { resolved, plans } = await checkText(text);
        const these = [
            speaker('crew', [0], { givesWayTo: ['lift'] }),
            speaker('lift', [0], { givesWayTo: ['wash'] }),
            speaker('wash', [0]),
            ruleNamed('waiver-idle')!,
        ].filter(({ name }) => speaking.includes(name) || name === 'waiver-idle');
        return judge(resolved, plans, these)
            .findings.map(({ rule }) => rule)
            .sort();
    };

    test('not to a cause that is waived: whoever waived it did not speak of this', async () => {
        expect(await heardOf(waiving('lift'), 'crew', 'lift')).toEqual(['crew']);
    });

    test('and a waiver of it is not idle while the cause is told: without that it would be told', async () => {
        expect(await heardOf(waiving('crew'), 'crew', 'lift')).toEqual(['lift']);
    });

    test('to the first of a chain of causes, whether or not one between them is waived', async () => {
        expect(await heardOf(two, 'crew', 'lift', 'wash')).toEqual(['wash']);
        expect(await heardOf(waiving('lift'), 'crew', 'lift', 'wash')).toEqual(['wash']);
        expect(await heardOf(waiving('wash'), 'crew', 'lift', 'wash')).toEqual(['lift']);
    });
});
