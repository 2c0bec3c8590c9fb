import { replaceValue } from '../fixes.ts';
import { judgeLengths } from '../lengths.ts';
import { rule } from '../rule.ts';
import { written } from '../standing.ts';

/** A double longer than its class allows, or inside the stretch margin. */
export const doubleLength = rule({
    name: 'double-length',
    group: 'written rules',
    standing: written('The pack that the event stands on, by line class.'),
    severity: 'error',
    summary: 'A double is longer than its class allows, or inside the stretch margin.',
    settings: {},

    check(analysis, _, report) {
        judgeLengths(
            analysis,
            ({ outfit }) => {
                const length = outfit?.value.double?.length;
                return (
                    length && {
                        which: 'double',
                        name: `The double of ${outfit.value.title}`,
                        at: length,
                        length: length.si,
                        like: length,
                        fixes: (room) => [
                            replaceValue(
                                (text) => `Shorten the double to ${text}`,
                                length,
                                room('double'),
                                'down',
                            ),
                        ],
                    }
                );
            },
            report,
        );
    },
});
