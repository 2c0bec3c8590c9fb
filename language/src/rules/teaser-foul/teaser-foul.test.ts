import { describe, expect, test } from 'vitest';
import { expectMarked, messagesOf, today } from '../../../../tests/language/marked.ts';

const chain = 'teaser chain "Chain" { kind chain  pull 6 kg at 8 kn }';

describe('teaser-foul', () => {
    test('a teaser in the lane of a corner lure', async () => {
        await expectMarked(
            today(
                `
    port short corner { outfit medium-1  lure broad  back 12 m }
    port squid chain { teaser chain  back 12 m  from bridge }
    //                               ^^^^^^^^^ teaser-foul: Port squid chain and port short corner touch without any sway, and this plan allows for 4 deg.`,
                chain,
            ),
            'teaser-foul',
        );
    });

    test('on the other side it is out of the way, and the lines’ own rule has nothing to add', async () => {
        const clear = today(
            `
    port short corner { outfit medium-1  lure broad  back 12 m }
    starboard squid chain { teaser chain  back 12 m  from bridge }`,
            chain,
        );
        await expectMarked(clear, 'teaser-foul', 'stagger');
        const fouled = clear.replace('starboard squid', 'port squid');
        expect(await messagesOf(fouled, 'stagger')).toEqual([]);
    });

    test('two teasers take nobody’s fish, but they do not run in one place either', async () => {
        await expectMarked(
            today(
                `
    port squid chain { teaser chain  back 8 m  from bridge }
    port bridge teaser { teaser chain  back 8.2 m  from bridge }
    //                                 ^^^^^^^^^^ teaser-foul: Port bridge teaser runs in the same place as port squid chain, 8.2 m back.
    starboard bridge teaser { teaser chain  back 8 m  from bridge }
    starboard squid chain { teaser chain  back 8.4 m  from bridge }`,
                chain,
            ),
            'teaser-foul',
        );
    });

    test('a teaser that is known to wander needs more room', async () => {
        const room = (sway: string) =>
            today(
                `
    port long corner { outfit medium-1  lure broad  back 23 m }
    starboard squid chain { teaser chain  back 7 m  from bridge }`,
                `teaser chain "Chain" { ${sway} }`,
            );
        expect(await messagesOf(room('sway 4 deg'), 'teaser-foul')).toEqual([]);
        expect(await messagesOf(room('sway 25 deg'), 'teaser-foul')).toHaveLength(1);
    });
});
