import { leaderOf, runnerOf } from '../gear.ts';
import { cutLeader, judgeLengths } from '../lengths.ts';
import { rule } from '../rule.ts';
import { written } from '../standing.ts';

/** A leader longer than its class allows, or inside the stretch margin. */
export const leaderLength = rule({
    name: 'leader-length',
    group: 'written rules',
    standing: written('The pack that the event stands on, by line class.'),
    severity: 'error',
    summary: 'A leader is longer than its class allows, or inside the stretch margin.',
    settings: {},

    check(analysis, _, report) {
        judgeLengths(
            analysis,
            (line) => {
                const leader = leaderOf(line)?.length;
                return (
                    leader && {
                        which: 'leader',
                        name: `The leader of ${runnerOf(line)?.value.title ?? line.position.name}`,
                        at: leader,
                        length: leader.si,
                        like: leader,
                        fixes: (room) => [cutLeader(line, leader, room)],
                    }
                );
            },
            report,
        );
    },
});
