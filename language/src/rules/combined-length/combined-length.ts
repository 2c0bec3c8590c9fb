import { leaderOf } from '../gear.ts';
import { cutLeader, judgeLengths } from '../lengths.ts';
import { rule } from '../rule.ts';
import { written } from '../standing.ts';

/** Double and leader together longer than the class allows, or inside the stretch margin. */
export const combinedLength = rule({
    name: 'combined-length',
    group: 'written rules',
    standing: written('The pack that the event stands on, by line class.'),
    severity: 'error',
    summary: 'Double and leader together are longer than the class allows, or inside the stretch margin.',
    settings: {},

    check(analysis, _, report) {
        judgeLengths(
            analysis,
            (line) => {
                const [double, leader] = [line.outfit?.value.double?.length, leaderOf(line)?.length];
                if (!double || !leader) return undefined;
                return {
                    which: 'combined',
                    name: `Double and leader at ${line.position.name}`,
                    verb: 'are together',
                    at: leader,
                    length: double.si + leader.si,
                    like: leader,
                    fixes: (room) => [cutLeader(line, leader, room)],
                };
            },
            report,
        );
    },
});
