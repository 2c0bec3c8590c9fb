import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const two = `
    port short corner { outfit medium-1  lure broad  back wave 2 }
    port long rigger { outfit medium-4  lure wisp  back wave 5 }`;

describe('position-missing', () => {
    test('in an order, a fallback and a role', async () => {
        await expectMarked(
            today(`${two}
    order set port long rigger, shotgun
    //                          ^^^^^^^ position-missing: The order to set names shotgun, and this plan has none.
    fallback "a hand short" { drop starboard long rigger }
    //                             ^^^^^^^^^^^^^^^^^^^^^ position-missing: The fallback “a hand short” names starboard long rigger
    roles { starboard short corner "Kit" }
    //      ^^^^^^^^^^^^^^^^^^^^^^ position-missing: The role of Kit names starboard short corner
`),
            'position-missing',
        );
    });

    test('what a preset says of a line that this plan takes out is harmless', async () => {
        const text = today(`${two}\n    order set port long rigger, port short corner`).concat(
            'spread fewer like today { without port long rigger }\n',
        );
        expect(await messagesOf(text, 'position-missing')).toEqual([]);
    });

    test('a plan that names only what it has', async () => {
        await expectMarked(
            today(`${two}\n    order set port long rigger, port short corner\n    roles { leader "Kit" }`),
            'position-missing',
        );
    });
});
