import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(line: string, event = 'harbour-cup'): string {
    const outfit = `outfit own "Own" {\n    line nylon { ${line} }\n}`;
    return today(`    event ${event}\n    port short corner { outfit own  lure broad  back wave 2 }`, outfit);
}

const noClasses = '\nrules open "Open" { written saltwater }\n';

describe('line-class', () => {
    test('the event says which classes fish', async () => {
        expect(await messagesOf(fished('class 37 kg'), 'line-class')).toEqual([
            'Own is of the 37 kg class, and Harbour cup knows 15 kg and 24 kg. A fish on it does not count. Put an outfit of one of those classes here.',
        ]);
        expect(await messagesOf(fished('class 15 kg'), 'line-class')).toEqual([]);
    });

    test('customary pounds are looked up, and repeated as written', async () => {
        expect(await messagesOf(fished('class 50 lb'), 'line-class')).toEqual([]);
        const [message] = await messagesOf(fished('class 80 lb'), 'line-class');
        expect(message).toMatch(/^Own is of the 80 lb class/);
    });

    test('where the event names no classes, the pack that it stands on does', async () => {
        const text = fished('class 30 kg', 'open').replace('\nspread', `${noClasses}\nspread`);
        const [message] = await messagesOf(text, 'line-class');
        expect(message).toMatch(
            /^Own is of the 30 kg class, and IGFA saltwater knows 1 kg, 2 kg, .*37 kg and 60 kg\./,
        );
    });

    // The test strengths are published in truncated pounds: 52.91 lb is 23.9996 kg.
    test('line that breaks above its class counts as the next one up', async () => {
        expect(await messagesOf(fished('class 24 kg  breaks 23.9 kg'), 'line-class')).toEqual([]);
        expect(await messagesOf(fished('class 24 kg  breaks 24.1 kg'), 'line-class')).toEqual([
            'Own breaks at 24.1 kg (53.1 lb), and the 24 kg class tests to 52.91 lb. Line that tests above its class counts as the next class up. Spool up with line that breaks under its class.',
        ]);
    });

    test.each([
        ['15 kg', '15 kg'],
        ['24 kg', '24 kg'],
        ['37 kg', '37 kg'],
        ['60 kg', '60 kg'],
        ['50 lb', '52.91 lb'],
    ])('of the %s class, line that breaks at %s is in it', async (lineClass, breaks) => {
        const text = fished(`class ${lineClass}  breaks ${breaks}`, 'open').replace(
            '\nspread',
            `${noClasses}\nspread`,
        );
        expect(await messagesOf(text, 'line-class')).toEqual([]);
    });

    test('line of no class is told of, since nothing of it was judged', async () => {
        const { findings } = await checkText(fished('diameter 0.8 mm  breaks 34 kg'));
        expect(
            findings
                .filter(({ rule }) => rule === 'line-class')
                .map(({ severity, what }) => [severity, what]),
        ).toEqual([['hint', 'The line of Own says no class, so nothing of it was held to the rules.']]);
    });

    test('outside an event any line fishes', async () => {
        await expectMarked(fished('class 37 kg').replace('    event harbour-cup\n', ''), 'line-class');
    });

    test('gear standing by is judged as well, for it will be cast', async () => {
        const text = fished('class 37 kg').replace('port short corner', 'centre standby');
        expect(await messagesOf(text, 'line-class')).toHaveLength(1);
    });
});
