import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

function fished(length: string, lineClass = '24 kg', event = 'harbour-cup'): string {
    return today(
        `    event ${event}\n    port short corner { outfit own  lure own  back wave 2 }`,
        `outfit own "Own" { line nylon { class ${lineClass} } }
lure own "Own lure" pusher {
    leader nylon { length ${length} }
}`,
    );
}

// IGFA saltwater: 4.57 m up to and including 10 kg, 9.14 m above.
describe('leader-length', () => {
    test.each([
        ['10 kg', 4.42, 4.57],
        ['20 lb', 4.42, 4.57],
        ['15 kg', 8.99, 9.14],
        ['24 kg', 8.99, 9.14],
    ])(
        'on the %s class: clean to %f m, a warning to %f m, an error beyond',
        async (lineClass, clean, most) => {
            const severity = async (length: number) =>
                (await checkText(fished(`${length.toFixed(2)} m`, lineClass))).findings.find(
                    ({ rule }) => rule === 'leader-length',
                )?.severity;
            expect(await severity(clean)).toBeUndefined();
            expect(await severity(clean + 0.01)).toBe('warning');
            expect(await severity(most)).toBe('warning');
            expect(await severity(most + 0.01)).toBe('error');
        },
    );

    test('says the limit as it is published, and where', async () => {
        const sheet = await checkText(fished('31 ft'));
        const finding = sheet.findings.find(({ rule }) => rule === 'leader-length')!;
        expect(finding.what).toBe('The leader of Own lure is 31 ft long, and IGFA saltwater allows 30 ft.');
        expect(finding.related[0]).toMatchObject({
            at: { uri: expect.stringMatching(/^layback:/) },
            what: expect.stringContaining('27 October 2021'),
        });
    });

    test.each(['9.3 m', '31 ft', '30 ft 6 in'])('is mended by cutting %s', async (length) => {
        const after = await mended(fished(length), 'leader-length');
        expect(await messagesOf(after, 'leader-length')).toEqual([]);
    });

    // The edition has 9.14 m and 30 ft side by side: who rigs to the feet is not over the metres.
    test.each([
        ['30 ft', 'warning'],
        ['360 in', 'warning'],
        ['30 ft 1 in', 'error'],
        ['9.144 m', 'error'],
    ])('of %s, as the edition prints the limit, is an %s', async (length, severity) => {
        const { findings } = await checkText(fished(length));
        expect(findings.find(({ rule }) => rule === 'leader-length')?.severity).toBe(severity);
    });

    test('is cut so that it is right together with the double, too', async () => {
        const text = fished('9.3 m').replace('class 24 kg }', 'class 24 kg }  double { length 6 m }');
        const after = await mended(text, 'leader-length');
        expect(after).toContain('leader nylon { length 6 m }');
        for (const rule of ['leader-length', 'combined-length'])
            expect(await messagesOf(after, rule)).toEqual([]);
    });

    test('without a class nobody knows the limit, and outside an event there is none', async () => {
        expect(await messagesOf(fished('20 m').replace('class 24 kg', ''), 'leader-length')).toEqual([]);
        await expectMarked(fished('20 m').replace('    event harbour-cup\n', ''), 'leader-length');
    });
});
