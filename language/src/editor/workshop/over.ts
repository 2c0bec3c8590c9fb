import { doingsOf } from '../../plan/day/doings.ts';
import type { Spread } from '../../plan/model.ts';

/** `Over from Settled day: speed, 2 in, 1 out, 3 adjusted`: what there is to do from one spread to another. */
export function overWords(from: Spread, to: Spread): string {
    const { all, lines } = doingsOf(from, to);
    const doings = [...lines.values()];
    const count = (is: (doing: (typeof doings)[number]) => boolean, words: string) => {
        const many = doings.filter(is).length;
        return many === 0 ? [] : [`${many} ${words}`];
    };
    const told = [
        ...all.map(({ path }) => path.join(' ')),
        ...count((doing) => doing.in !== undefined, 'in'),
        ...count((doing) => doing.set === true, 'out'),
        ...count((doing) => !doing.in && !doing.set && doing.differences.length > 0, 'adjusted'),
    ];
    return `Over from ${from.title}: ${told.length === 0 ? 'nothing changes' : told.join(', ')}`;
}
