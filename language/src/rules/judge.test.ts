import { URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../tests/language/marked.ts';
import { messageOf } from '../plan/finding.ts';
import { type FileText, load } from '../plan/load.ts';
import { Gathered } from '../plan/resolve/gather.ts';
import { createServices } from '../plan/services.ts';
import { checkAll, checkSheet } from './check.ts';
import { judge } from './judge.ts';
import { Memory } from './memory.ts';
import { rules } from './registry.ts';
import { rule } from './rule.ts';
import { count } from './settings.ts';
import { housekeeping } from './standing.ts';

const offTheFace = '    port short rigger { lure dart  back 29 m }';

describe('severity and settings', () => {
    const own = (said: string, event = '') =>
        today(`    ${event}\n    ${said}\n${offTheFace}`, 'rules team { rule wave-face { severity error } }');
    const severityIn = async (text: string) =>
        (await checkText(text)).findings.find((finding) => finding.rule === 'wave-face')?.severity;

    test('the rule’s own word, unless the event has another, unless the plan has another', async () => {
        expect(await severityIn(own(''))).toBe('warning');
        expect(await severityIn(own('', 'event team'))).toBe('error');
        expect(await severityIn(own('rule wave-face { severity hint }', 'event team'))).toBe('hint');
        expect(await severityIn(own('rule wave-face { severity off }', 'event team'))).toBeUndefined();
    });

    test('a severity that the team chose makes no case graver or milder', async () => {
        const over = (said: string) =>
            today(
                `    ${said}\n    port short corner { outfit own }`,
                'outfit own { line clear-24  drag { full 30 kg } }',
            );
        const severity = async (text: string) =>
            (await checkText(text)).findings.find((finding) => finding.rule === 'drag-over-class')?.severity;
        expect(await severity(over(''))).toBe('error');
        expect(await severity(over('rule drag-over-class { severity hint }'))).toBe('hint');
    });

    test('a setting of the plan comes before the event’s, and each setting on its own', async () => {
        const text = today(
            `    event team\n    rule drag-over-class { hooked 45 % }\n    port short corner { outfit own }`,
            'rules team { rule drag-over-class { hooked 20 %  full 90 % } }\noutfit own { line clear-24  drag { hooked 10 kg  full 20 kg } }',
        );
        expect(await messagesOf(text, 'drag-over-class')).toEqual([]);
        expect(await messagesOf(text.replace('hooked 45 %', 'hooked 40 %'), 'drag-over-class')).toHaveLength(
            1,
        );
        expect(await messagesOf(text.replace('full 90 %', ''), 'drag-over-class')).toHaveLength(1);
    });

    test('a setting of the wrong kind has no effect', async () => {
        const text = today(
            '    crew 1\n    rule crew { lines 3 kg }\n    port short corner { }\n    port long corner { }\n    shotgun { }',
        );
        expect((await messagesOf(text, 'crew'))[0]).toContain('who can clear 2');
    });
});

describe('one cause, one finding', () => {
    test('what two plans share is said once, where it was said, and counts for both', async () => {
        const sheet = await expectMarked(
            today(`
    port short rigger { lure dart  back 29 m }
    //                             ^^^^^^^^^ wave-face: on the back of wave 3`).concat(
                'spread tomorrow like today { port long rigger { lure wisp  back wave 5 } }\n',
            ),
            'wave-face',
        );
        for (const plan of ['today', 'tomorrow']) {
            const found = sheet.judgement.plans.get(plan)!.filter((finding) => finding.rule === 'wave-face');
            expect(found.map(({ positions }) => positions)).toEqual([['port short rigger']]);
        }
    });

    test.each([
        ['hint', 'error'],
        ['error', 'hint'],
    ])('is as grave as the graver of two plans has it: %s, %s', async (first, second) => {
        const tomorrow = `spread tomorrow like today { rule wave-face { severity ${second} } }\n`;
        const text = today(`    rule wave-face { severity ${first} }\n${offTheFace}`) + tomorrow;
        const { findings } = await checkText(text);
        const found = findings.filter(({ rule }) => rule === 'wave-face');
        expect(found.map(({ severity }) => severity)).toEqual(['error']);
    });

    test('what goes wrong only in the plan that took it over is shown there, with where it was said', async () => {
        const sheet = await expectMarked(
            today('    port short rigger { lure dart  back 24 m }').concat(
                `spread slow "Slow" like today { speed 7 kn }
//                                    ^^^^ wave-face: at 7 kn
`,
            ),
            'wave-face',
        );
        const [finding] = sheet.findings.filter((each) => each.rule === 'wave-face');
        expect(finding?.plan).toBe('slow');
        expect(finding?.related[0]).toMatchObject({ what: 'It is said here.' });
        expect(finding?.related[0]?.at.range.start.line).toBe(5);
        // Moving the lure would spoil the plan that it came from.
        expect(finding?.fixes).toEqual([]);
    });

    test('two lines with one cause are one finding about both', async () => {
        const text = today(
            '    event harbour-cup\n    port short corner { outfit own }\n    port long corner { outfit own }',
            'outfit own "Own" { line nylon { class 37 kg } }',
        );
        const { findings } = await checkText(text);
        const found = findings.filter((each) => each.rule === 'line-class');
        expect(found.map(({ positions }) => positions)).toEqual([['port short corner', 'port long corner']]);
    });
});

describe('the place of a finding', () => {
    test('what stands in a tackle file is shown at the word that names it, and both are linked', async () => {
        const sheet = await expectMarked(
            today(`
    date 2026-06-01
    port short corner { outfit medium-1  lure broad }
    //                         ^^^^^^^^ drag-untested: tested 92 days before`),
            'drag-untested',
        );
        const finding = sheet.findings.find((each) => each.rule === 'drag-untested');
        expect(finding?.related[0]?.at.uri).toMatch(/cockpit\.spread$/);
    });

    test('findings come in the order of the text, whatever the order of the rules', async () => {
        const { findings } = await checkText(
            today(`
    crew 1
    date 2026-06-01
    starboard short corner { outfit medium-1  lure dart  back 29 m }
    port long rigger { outfit medium-1  lure broad  back 60 m }
    shotgun { outfit medium-3  lure pin  back 9 m }`),
        );
        const starts = findings.map(({ at }) => at.start);
        expect(starts.length).toBeGreaterThan(6);
        expect(starts).toEqual([...starts].sort((a, b) => a - b));
    });
});

describe('the judge', () => {
    const busy = today(`
    date 2026-06-01
    crew 2
    starboard short corner { outfit medium-1  lure broad  back wave 2 }
    port long corner { outfit medium-2  lure dart  back wave 3 }
    port short rigger { outfit medium-3  lure gulp  back 29 m }
    starboard long rigger { outfit medium-4  lure wisp  back wave 5 }
    shotgun { outfit medium-5  lure pin  back wave 6 }
    port squid chain { back 12 m  from bridge }
    centre standby { bait live "scad" }`);

    test('gives the same findings for the same text, and changes nothing that it was given', async () => {
        const { resolved, plans } = await checkText(busy);
        const once = judge(resolved, plans);
        const again = judge(resolved, plans);
        expect(again.findings.map(messageOf)).toEqual(once.findings.map(messageOf));
        expect(once.findings.length).toBeGreaterThan(3);
    });

    test('hears a part of the rules, and calls no waiver idle that is for another part', async () => {
        const { resolved, plans } = await checkText(
            busy.replace('\n}', '\n    waive crew because "tried"\n}'),
        );
        const [some, rest] = [
            rules.filter(({ name }) => name !== 'crew'),
            rules.filter(({ name }) => name === 'crew'),
        ];
        expect(judge(resolved, plans, some).findings.some((finding) => finding.rule === 'waiver-idle')).toBe(
            false,
        );
        expect(judge(resolved, plans, rest).findings).toEqual([]);
    });

    test('judges a plan of seven lines in a millisecond', async () => {
        const { resolved, plans } = await checkText(busy);
        expect(plans[0]!.lines).toHaveLength(7);
        // Figures that no rule has seen before: otherwise none would run.
        const unseen = () => plans.map((plan) => ({ ...plan, lines: [...plan.lines] }));
        for (let warm = 0; warm < 200; warm++) judge(resolved, unseen());
        // Work done, not time gone by: the machine may have other things to do. The least of several rounds counts.
        const rounds = Array.from({ length: 10 }, () => {
            const anew = Array.from({ length: 20 }, unseen);
            const before = process.cpuUsage();
            for (const plans of anew) judge(resolved, plans);
            const { user, system } = process.cpuUsage(before);
            return (user + system) / 1000 / anew.length;
        });
        expect(Math.min(...rounds)).toBeLessThan(1);
    });
});

describe('a rule whose inputs did not change', () => {
    const busy = today('    crew 1\n    turn within 60 m\n    port short corner { lure dart  back 29 m }');

    /** Rules that count how often they run. */
    function counting() {
        const runs = { first: 0, turning: 0, about: 0 };
        const base = {
            group: 'crew',
            standing: housekeeping,
            severity: 'hint',
            summary: 'Counts how often it runs, for the sake of a test.',
            settings: { times: count('3', ['1', '9'], 'How often.') },
        } as const;
        const first = rule({ ...base, name: 'first', check: () => void runs.first++ });
        const turning = rule({ ...base, name: 'turning', reads: 'turns', check: () => void runs.turning++ });
        const about = rule({ ...base, name: 'about', checkFile: () => void runs.about++ });
        return { runs, these: [first, turning, about] };
    }

    test('does not run again, and what it said still counts', async () => {
        const { resolved, plans } = await checkText(busy);
        const { runs, these } = counting();
        const memory = new Memory();
        judge(resolved, plans, these, memory);
        judge(resolved, plans, these, memory);
        expect(runs).toEqual({ first: 1, turning: 1, about: 1 });
        const [once, again] = [1, 2].map(() => judge(resolved, plans, rules, memory).findings);
        expect(again).toEqual(once);
        expect(once!.length).toBeGreaterThan(0);
    });

    test('when turns come later, only what reads them runs', async () => {
        const { resolved, plans } = await checkText(busy);
        const { runs, these } = counting();
        const memory = new Memory();
        const before = plans.map(({ turns, ...plan }) => plan);
        judge(resolved, before, these, memory);
        judge(resolved, plans, these, memory);
        expect(plans[0]!.turns?.known).toBe(true);
        expect(runs).toEqual({ first: 1, turning: 2, about: 1 });
    });

    test('runs again for other figures, other settings, or a file whose definitions came into use', async () => {
        const { resolved, plans } = await checkText(busy);
        const { runs, these } = counting();
        const memory = new Memory();
        judge(resolved, plans, these, memory);
        judge(resolved, [{ ...plans[0]!, pairs: [] }], these, memory);
        expect(runs.first).toBe(2);
        const settings = new Map([['times', { value: undefined, origin: plans[0]!.plan.origin, si: 5 }]]);
        const setting = { rule: { value: 'first', origin: plans[0]!.plan.origin }, settings };
        const stricter = { ...plans[0]!.plan, settings: [{ ...setting, origin: plans[0]!.plan.origin }] };
        judge(resolved, [{ ...plans[0]!, plan: stricter }], these, memory);
        expect(runs.first).toBe(3);
        judge({ ...resolved, definitions: [] }, plans, these, memory);
        expect(runs.about).toBe(2);
    });
});

describe('a file that is checked again', () => {
    test('is read and computed anew only where its text, or one in its reach, is another', async () => {
        const services = createServices();
        const [plan, tackle] = [URI.file('/plan.spread'), URI.file('/tackle.spread')];
        const texts = new Map([
            [plan.toString(), 'use "tackle.spread"\nspread friday { shotgun { lure pin  back 60 m } }'],
            [tackle.toString(), 'lure pin "Pin" bullet { length 180 mm }'],
        ]);
        const files = (uri: URI): FileText => ({ kind: 'text', text: texts.get(uri.toString())! });
        const loaded = await load(services, [plan, tackle], files);
        const [once] = checkAll(loaded);
        const [again, other] = checkAll(loaded);
        expect(again!.plans).toBe(once!.plans);
        expect(again!.resolved).toBe(once!.resolved);
        const unused = checkSheet(other!.document, loaded, new Gathered(), new Set());
        expect(unused.resolved.definitions[0]?.used).toBe(false);
        expect(other!.resolved.definitions[0]?.used).toBe(true);

        // The file in its reach is parsed anew: another tree.
        const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = services.shared.workspace;
        LangiumDocuments.deleteDocument(tackle);
        const longer = 'lure pin "Pin" bullet { length 200 mm }';
        LangiumDocuments.addDocument(LangiumDocumentFactory.fromString(longer, tackle));
        services.shared.names.Reach.forget();
        await DocumentBuilder.build(LangiumDocuments.all.toArray(), { validation: false });
        const third = checkSheet(once!.document, loaded, new Gathered(), new Set());
        expect(third.plans).not.toBe(once!.plans);
    });
});

describe('a rule', () => {
    test('knows the types of its settings, with their defaults', async () => {
        const { resolved, plans } = await checkText(today(''));
        const seen: unknown[] = [];
        const loud = rule({
            name: 'loud',
            group: 'crew',
            standing: housekeeping,
            severity: 'hint',
            summary: 'Says what it was given, for the sake of a test.',
            settings: { times: count('3', ['1', '9'], 'How often.') },
            check(_, { times }, report) {
                const more: number = times + 1;
                seen.push(more);
                report({ at: plans[0]!.plan, what: 'Heard.' });
            },
        });
        expect(judge(resolved, plans, [loud]).findings.map(messageOf)).toEqual(['Heard.']);
        expect(seen).toEqual([4]);
    });
});
