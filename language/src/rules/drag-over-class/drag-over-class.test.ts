import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const line = '    port short corner { outfit own  lure broad  back wave 2 }';

function outfit(drag: string, rest = 'line clear-24'): string {
    return today(line, `outfit own "Own" {\n    ${rest}\n    drag { ${drag} }\n}`);
}

describe('drag-over-class', () => {
    test('says the share, what is usual, and what to do', async () => {
        expect(await messagesOf(outfit('hooked 9.5 kg'), 'drag-over-class')).toEqual([
            'Hooked drag 9.5 kg is 40 % of the 24 kg class. Common practice is 25–33 % (6–8 kg). Lower it or use a heavier outfit.',
        ]);
    });

    // Common practice, no source: the table of a quarter to a third of each class.
    test.each([
        ['10 kg', 3.3],
        ['15 kg', 5.0],
        ['24 kg', 8],
        ['37 kg', 12.3],
        ['60 kg', 20],
    ])('lets a third of the %s class pass and no more', async (lineClass, third) => {
        const at = (kg: number) => outfit(`hooked ${kg.toFixed(2)} kg`, `line nylon { class ${lineClass} }`);
        expect(await messagesOf(at(third), 'drag-over-class')).toEqual([]);
        expect(await messagesOf(at(third * 1.03), 'drag-over-class')).toHaveLength(1);
    });

    // 33.3 % of 52.91 lb is 17.6 lb: whoever sets 18 lb because a message said so would hear it again.
    test('says no limit that it would not let pass', async () => {
        const pounds = (drag: string) => outfit(`hooked ${drag}`, 'line nylon { class 50 lb }');
        expect(await messagesOf(pounds('18 lb'), 'drag-over-class')).toEqual([
            'Hooked drag 18 lb is 34 % of the 50 lb class. Common practice is 25–33 % (13–17 lb). Lower it or use a heavier outfit.',
        ]);
        expect(await messagesOf(pounds('17 lb'), 'drag-over-class')).toEqual([]);
    });

    test('is an error above the class itself, a warning above the share', async () => {
        const severityOf = async (drag: string) =>
            (await checkText(outfit(drag))).findings.filter(({ rule }) => rule === 'drag-over-class')[0]
                ?.severity;
        expect(await severityOf('full 25 kg')).toBe('error');
        expect(await severityOf('full 17.5 kg')).toBe('warning');
        expect(await severityOf('full 16.8 kg')).toBeUndefined();
    });

    // 70 % of class at the full setting is 106 % at a quarter of the line, arbor half the full diameter: r² grows
    // with the line left, so r falls to √(¼ + ¾·¼) = 0.661.
    test('follows the drag down the spool, to a quarter of the line', async () => {
        const onSpool = 'reel drum-24\n    line clear-24';
        const [message] = await messagesOf(outfit('full 16.8 kg', onSpool), 'drag-over-class');
        expect(message).toBe(
            'Full drag 16.8 kg grows to 25.4 kg with 25 % of the line left, 106 % of the 24 kg class. Drag grows as the spool empties, and the line breaks at the end of a long run. Lower it to 15.8 kg, or ease it as line goes out.',
        );
        expect(await messagesOf(outfit('full 15.8 kg', onSpool), 'drag-over-class')).toEqual([]);
    });

    test('says one thing about a stage: the gravest', async () => {
        const everything = outfit('full 30 kg', 'reel drum-24\n    line clear-24');
        expect(await messagesOf(everything, 'drag-over-class')).toHaveLength(1);
    });

    test.each(['hooked 9.5 kg', 'hooked 21 lb', 'full 30 kg', 'full 90 %', 'set 12 kg'])(
        'is mended by its fix: %s',
        async (drag) => {
            const after = await mended(outfit(drag, 'reel drum-24\n    line clear-24'), 'drag-over-class');
            expect(await messagesOf(after, 'drag-over-class')).toEqual([]);
            expect(after).toContain(drag.split(' ')[2]!);
        },
    );

    test('lowers to a third as a crew writes it', async () => {
        expect(await mended(outfit('hooked 9.5 kg'), 'drag-over-class')).toContain('hooked 8 kg');
    });

    test('keeps to the share that the team agreed', async () => {
        const agreed = outfit('hooked 9.5 kg').replace(
            line,
            `    rule drag-over-class { hooked 38 % }\n${line}`,
        );
        expect(await messagesOf(agreed, 'drag-over-class')).toEqual([
            'Hooked drag 9.5 kg is 40 % of the 24 kg class. The most agreed is 38 % (9.1 kg). Lower it or use a heavier outfit.',
        ]);
    });

    test('one share of a method for lines of several classes is one finding, mended in the method, which says so', async () => {
        const shared = today(
            `    method stiff
    port short corner { outfit medium-1  lure broad  back wave 2 }
    port long corner { outfit heavy  lure dart  back wave 3 }`,
            'outfit heavy "Heavy" { line nylon { class 37 kg } }\nmethod stiff "Stiff" { style direct  hooked 40 % }',
        );
        const sheet = await checkText(shared);
        const [finding, ...more] = sheet.findings.filter(({ rule }) => rule === 'drag-over-class');
        expect(more).toEqual([]);
        expect(finding?.what).toBe(
            'Hooked drag at port short corner and port long corner is above the share agreed.',
        );
        expect(finding?.related.map(({ what }) => what)).toEqual([
            'At port short corner: Hooked drag 9.6 kg is 40 % of the 24 kg class.',
            'At port long corner: Hooked drag 14.8 kg is 40 % of the 37 kg class.',
        ]);
        expect(finding?.fixes.map(({ title }) => title)).toEqual([
            'Lower hooked drag to 33 % of class in stiff, for every line',
        ]);
        const after = await mended(shared, 'drag-over-class');
        expect(after).toContain('hooked 33 %');
        expect(await messagesOf(after, 'drag-over-class')).toEqual([]);
    });

    test('the class itself is a limit to the last per cent', async () => {
        expect(
            (await checkText(outfit('full 24.1 kg'))).findings.some(({ severity }) => severity === 'error'),
        ).toBe(true);
        const all = outfit('full 24 kg').replace(line, `    rule drag-over-class { full 100 % }\n${line}`);
        expect(await messagesOf(all, 'drag-over-class')).toEqual([]);
    });

    test('speaks of the class as it was written, and never converts it', async () => {
        const [message] = await messagesOf(
            outfit('hooked 25 lb', 'line nylon { class 50 lb }'),
            'drag-over-class',
        );
        // 25 lb is 11.34 kg, of the 24 kg that the 50 lb class stands for.
        expect(message).toMatch(/^Hooked drag 25 lb is 47 % of the 50 lb class\. .*\(13–17 lb\)/);
    });

    test('is silent without a class', async () => {
        await expectMarked(outfit('hooked 30 kg', 'line nylon { }'), 'drag-over-class');
    });

    test('blames the position where the position decided', async () => {
        const decided = today(`
    port short corner { outfit medium-1  lure broad  back wave 2  drag { hooked 12 kg } }
    //                                                                          ^^^^^ drag-over-class: 50 % of the 24 kg class`);
        await expectMarked(decided, 'drag-over-class');
    });
});
