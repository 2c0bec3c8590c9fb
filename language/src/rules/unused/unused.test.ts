import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, today } from '../../../../tests/language/marked.ts';

const spare = 'lure forgotten "Forgotten" jet { }\n//   ^^^^^^^^^ unused: No plan uses the lure Forgotten';

describe('unused', () => {
    test('a definition that nothing names is shown faded', async () => {
        const sheet = await expectMarked(today('', spare), 'unused');
        expect(sheet.findings.find(({ rule }) => rule === 'unused')).toMatchObject({
            severity: 'hint',
            unnecessary: true,
        });
    });

    test('what another definition names is used', async () => {
        await expectMarked(
            today(
                '    port short corner { outfit own  lure broad  back wave 2 }',
                'rod stick { length 2 m }\noutfit own { rod stick  line clear-24 }',
            ),
            'unused',
        );
    });

    test('so is a spare', async () => {
        await expectMarked(today('    spare lure-b', 'lure lure-b { }'), 'unused');
    });

    test('an inventory may hold what no plan fishes today', async () => {
        await expectMarked('lure forgotten "Forgotten" jet { }\n', 'unused');
    });

    test('is mended by taking it out', async () => {
        const after = await mended(today('', spare), 'unused');
        expect(after).not.toContain('lure forgotten');
        expect((await checkText(after)).findings.filter(({ rule }) => rule === 'unused')).toEqual([]);
    });
});
