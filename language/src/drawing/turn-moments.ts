import type { TurnInTime } from '../plan/analyse/turn-in-time.ts';
import { capital } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import { inMetres } from './words.ts';

/** Something that happens in a turn. */
export interface TurnMoment {
    readonly kind: 'helm over' | 'new course' | 'nearest' | 'foul' | 'slack' | 'slow';
    /** s from the helm going over. */
    readonly time: number;
    /** Something is wrong with it. */
    readonly grave: boolean;
    /** A sentence without its time. */
    readonly words: string;
    /** The lines that it concerns. */
    readonly positions: readonly string[];
}

/**
 * The moments of a turn in order of time: the helm, and whatever the crew would want to see coming.
 *
 * @param contact  lines nearer than this count as touching, m
 */
export function momentsOfTurn({ lines, nearest, steadyFrom }: TurnInTime, contact: number): TurnMoment[] {
    const moments: TurnMoment[] = [
        { kind: 'helm over', time: 0, grave: false, words: 'The helm goes over.', positions: [] },
        {
            kind: 'new course',
            time: steadyFrom,
            grave: false,
            words: 'She is on her new course.',
            positions: [],
        },
    ];
    for (const { figures, lure, leastSpeed } of lines) {
        const position = figures.line.position.name;
        if (lure.slackAt !== undefined) {
            moments.push({
                kind: 'slack',
                time: lure.slackAt,
                grave: true,
                words: `${capital(position)} falls slack.`,
                positions: [position],
            });
        } else if (leastSpeed !== undefined && lure.slowest < leastSpeed) {
            moments.push({
                kind: 'slow',
                time: lure.time,
                grave: true,
                words: `${capital(position)} runs at ${print(lure.slowest, units.kn)}; its lure works from ${print(leastSpeed, units.kn)}.`,
                positions: [position],
            });
        }
    }
    if (nearest) {
        const { a, b, clearance, time } = nearest.pair;
        const [one, other] = [a.line.position.name, b.line.position.name];
        const touch = clearance <= contact;
        moments.push({
            kind: touch ? 'foul' : 'nearest',
            time,
            grave: touch,
            words: touch
                ? `${capital(one)} and ${other} can touch, swaying as they may.`
                : `${capital(one)} and ${other} come nearest, ${inMetres(clearance)} apart with their sway.`,
            positions: [one, other],
        });
    }
    // Of what goes wrong at the same moment, that which lacks most comes first.
    return moments.sort((first, second) => first.time - second.time || lackOf(second) - lackOf(first));

    function lackOf({ kind, positions }: TurnMoment): number {
        const line = lines.find(({ figures }) => figures.line.position.name === positions[0]);
        if (kind !== 'slow' || !line?.leastSpeed) return kind === 'foul' || kind === 'slack' ? 1 : 0;
        return 1 - line.lure.slowest / line.leastSpeed;
    }
}
