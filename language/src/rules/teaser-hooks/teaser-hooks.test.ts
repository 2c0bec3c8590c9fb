import { describe, expect, test } from 'vitest';
import { messagesOf, today } from '../../../../tests/language/marked.ts';

const club = 'rules club "Club" {\n    teasers hookless\n}\n';
const chain = (hooks: string) => `teaser chain "Chain" {\n    kind chain\n    ${hooks}\n}`;

describe('teaser-hooks', () => {
    test('teasers without hooks', async () => {
        const towed = (hooks: string) =>
            today('    event club\n    port squid chain { teaser chain  back 12 m }', club + chain(hooks));
        expect(await messagesOf(towed('hooks single { gap 30 mm }'), 'teaser-hooks')).toHaveLength(1);
        expect(await messagesOf(towed(''), 'teaser-hooks')).toEqual([]);
        expect(
            await messagesOf(towed('hooks single { gap 30 mm }').replace('hookless', 'any'), 'teaser-hooks'),
        ).toEqual([]);
    });
});
