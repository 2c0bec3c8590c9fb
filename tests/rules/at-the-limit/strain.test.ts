import { describe, expect, test } from 'vitest';
import {
    checkText,
    expectMarked,
    mended,
    messagesOf,
    relatedOf,
    severityOf,
    today,
} from '../../language/marked.ts';

/*
 * What pulls, and what holds, opens or breaks: a clip, a reel, a line. What is exactly at its limit keeps it, what is a hair beyond does not; and the
 * sentences that only a rare plan brings about. Each test is named after the rule that it is about.
 */

const pulling = `lure mine "Mine" pusher { pull 3 kg at 8 kn }
method unsaid "Unsaid" { }
method shy "Shy" { opens 3.2 kg }`;
const corner = (rest: string, day = 'sea 0.5 m') =>
    today(`    ${day}\n    port short corner { lure mine  back wave 2  ${rest} }`, pulling);

describe('clip-false-release', () => {
    test('clip-false-release: a clip at the pull itself opens with the surge, not by itself', async () => {
        const [message] = await messagesOf(corner('clip 3 kg'), 'clip-false-release');
        expect(message).toContain('opens at 3 kg, and Mine pulls 3.6 kg with surge');
        expect(await severityOf(corner('clip 3 kg'), 'clip-false-release')).toBe('warning');
        expect(await messagesOf(corner('clip 3 kg', ''), 'clip-false-release')).toEqual([]);
    });

    test('clip-false-release: only a drop-back is meant to be light', async () => {
        expect(
            await severityOf(corner('clip 3.4 kg  method unsaid', 'sea 0.5 m'), 'clip-false-release'),
        ).toBe('warning');
    });

    test('clip-false-release: a clip taken over from another plan is shown where the lure was chosen', async () => {
        const text = `use "cockpit.spread"\n${pulling}
spread before { boat fulmar  speed 8 kn  sea 0.5 m  port short corner { back wave 2  clip 2 kg } }
spread after like before {
    port short corner { lure mine }
    //                       ^^^^ clip-false-release: by itself
}
`;
        await expectMarked(text, 'clip-false-release');
    });
});

describe('clip-stiff', () => {
    test('clip-stiff: the lure itself opens it, and the method should ask for more', async () => {
        const [message] = await messagesOf(corner('clip 5 kg  method shy'), 'clip-stiff');
        expect(message).toMatch(
            /^The clip at port short corner opens at 5 kg, and Shy wants 3\.2 kg at most\. .* Below 3\.6 kg the lure itself opens it: tow one that pulls less, or let the method ask for more\.$/,
        );
        expect(await relatedOf(corner('clip 5 kg  method shy'), 'clip-stiff')).toEqual(['Shy says it here.']);
    });
});

describe('drag-under-tow', () => {
    test('drag-under-tow: set drag at the pull itself holds until a sea comes', async () => {
        expect(await messagesOf(corner('from rod tip  drag { set 3 kg }', ''), 'drag-under-tow')).toEqual([]);
        const text = corner('from rod tip  drag { set 3 kg }');
        expect(await severityOf(text, 'drag-under-tow')).toBe('hint');
        expect((await messagesOf(text, 'drag-under-tow'))[0]).toContain('with surge');
    });

    test('drag-under-tow: only a drop-back lives with light drag', async () => {
        const text = corner('from rod tip  drag { set 2 kg }  method unsaid');
        expect(await severityOf(text, 'drag-under-tow')).toBe('warning');
        expect((await messagesOf(text, 'drag-under-tow'))[0]).toMatch(/or tow it from a clip\.$/);
    });

    test('drag-under-tow: a bait without a pull of its own is judged by its size, and has nothing to show', async () => {
        const text = today(
            '    sea 0.5 m\n    port short corner { lure plain  back wave 2  from rod tip  drag { set 0.1 kg } }',
            'lure plain "Plain" pusher { head 45 mm }',
        );
        expect(await messagesOf(text, 'drag-under-tow')).toHaveLength(1);
        expect(await relatedOf(text, 'drag-under-tow')).toEqual([]);
    });

    test('drag-under-tow: a drag taken over from another plan is shown where the lure was chosen', async () => {
        const text = `use "cockpit.spread"\n${pulling}
spread before { boat fulmar  speed 8 kn  sea 0.5 m  port short corner { back wave 2  from rod tip  drag { set 2 kg } } }
spread after like before {
    port short corner { lure mine }
    //                       ^^^^ drag-under-tow: by itself
}
`;
        await expectMarked(text, 'drag-under-tow');
    });
});

describe('drag-over-class', () => {
    const outfit = (drag: string, lineClass = '24 kg') =>
        today(
            '    port short corner { outfit own  lure broad  back wave 2 }',
            `outfit own "Own" { line nylon { class ${lineClass} }  drag { ${drag} } }`,
        );

    test('drag-over-class: above the class it says that the line goes first', async () => {
        expect(await messagesOf(outfit('full 25 kg'), 'drag-over-class')).toEqual([
            'Full drag 25 kg is 104 % of the 24 kg class. A line that keeps its class breaks before the reel gives. Lower it to 16.8 kg or use a heavier outfit.',
        ]);
        expect(await relatedOf(outfit('full 25 kg'), 'drag-over-class')).toEqual(['The class of Own.']);
    });

    test('drag-over-class: what is too much with a fish on is too much while trolling', async () => {
        expect(await messagesOf(outfit('set 12 kg'), 'drag-over-class')).toEqual([
            'Set drag 12 kg is 50 % of the 24 kg class. Common practice is 25–33 % (6–8 kg), and that with a fish on. Lower it or use a heavier outfit.',
        ]);
    });

    test('drag-over-class: half of one per cent is not over, a little more is', async () => {
        // 33.3 % and half a per cent of 20 kg are 6.76 kg.
        expect(await messagesOf(outfit('hooked 6.75 kg', '20 kg'), 'drag-over-class')).toEqual([]);
        expect(await messagesOf(outfit('hooked 6.77 kg', '20 kg'), 'drag-over-class')).toHaveLength(1);
    });
});

test('combined-length: where the double alone is over, cutting the leader to nothing is no fix', async () => {
    const text = (double: string) =>
        today(
            '    event harbour-cup\n    port short corner { outfit own  lure broad  back wave 2 }',
            `outfit own "Own" { line nylon { class 15 kg }  double { length ${double} } }`,
        );
    // In this class the pack allows 12.19 m together, and the leader has 4 m.
    expect(await messagesOf(text('12.5 m'), 'combined-length')).toHaveLength(1);
    await expect(mended(text('12.5 m'), 'combined-length')).rejects.toThrow('offers no fix');
    const after = await checkText(text('8.5 m'));
    const fixes = after.findings.find(({ rule }) => rule === 'combined-length')?.fixes;
    expect(fixes?.map(({ title }) => title)).toEqual(['Cut the leader to 3.5 m in broad']);
});

test('inspection-due: what is due is done anew, each thing in its own way', async () => {
    const text = today(
        '    date 2027-03-02\n    port short corner { outfit own  lure broad  back wave 2 }',
        'outfit own "Own" { line nylon { class 24 kg  fitted 2020-01-01 } }',
    );
    expect((await messagesOf(text, 'inspection-due'))[0]).toMatch(
        /Spool up anew, or cut back to sound line and write down the day\.$/,
    );
});

test('line-class: a line without a class is said whole, on its own line', async () => {
    const text = today(
        '    event harbour-cup\n    port short corner { outfit own  lure broad  back wave 2 }',
        'outfit own "Own" { line nylon { breaks 24 kg } }',
    );
    const { findings } = await checkText(text);
    expect(findings.find(({ rule }) => rule === 'line-class')).toMatchObject({
        severity: 'hint',
        what: 'The line of Own says no class, so nothing of it was held to the rules.',
        why: 'Class, double, leader and drag all go by it.',
        remedy: 'Write it down: line { class 24 kg }.',
        positions: ['port short corner'],
    });
});

test('line-class: a teaser is on no class, and a strength at the class’s own passes', async () => {
    const text = (position: string, line: string) =>
        today(
            `    event harbour-cup\n    ${position} { outfit own  back 12 m }`,
            `outfit own "Own" { line nylon { ${line} } }`,
        );
    expect(await messagesOf(text('port squid chain', 'class 37 kg'), 'line-class')).toEqual([]);
    expect(await messagesOf(text('port short corner', 'class 37 kg'), 'line-class')).toHaveLength(1);
    expect(await messagesOf(text('port short corner', 'class 24 kg  breaks 52.91 lb'), 'line-class')).toEqual(
        [],
    );
    const listed = text('port short corner', 'class 15 kg  breaks 90 kg').replace(
        '\noutfit',
        '\nrules named "Named" { class among 15 kg }\noutfit',
    );
    expect(await messagesOf(listed.replace('event harbour-cup', 'event named'), 'line-class')).toEqual([]);
});
