import type { PoleFigures } from '../plan/figures.ts';
import type { Boat } from '../plan/model.ts';
import type { Said } from '../plan/origin.ts';
import type { Hull, Pole, Transom, XY } from './elements.ts';
import { inMetres, sideWord } from './words.ts';

/** Stations along the hull as a share of its length, with the half breadth there as a share of half the beam. */
const stations: readonly (readonly [along: number, out: number])[] = [
    [0, 0.9],
    [0.1, 0.945],
    [0.2, 0.975],
    [0.3, 0.995],
    [0.38, 1],
    [0.46, 0.99],
    [0.54, 0.955],
    [0.62, 0.89],
    [0.7, 0.785],
    [0.78, 0.64],
    [0.86, 0.45],
    [0.92, 0.28],
    [0.97, 0.11],
    [1, 0],
];

/** The boat from above: to scale in length and beam, and no more than a boat's shape in between. */
export function drawHull(boat: Said<Boat> | undefined): Hull | Transom {
    const length = boat?.value.length?.si;
    const beam = boat?.value.beam?.si;
    const at = boat && { at: boat.origin.place };
    if (boat && length && beam) {
        return {
            id: 'hull',
            role: 'hull',
            name: `${boat.value.title}: ${inMetres(length)} long, ${inMetres(beam)} in the beam.`,
            ...at,
            outline: hullOutline(length, beam / 2, 0),
            deck: hullOutline(length, beam / 2, 0.09 * beam),
        };
    }
    const half = (beam ?? nominalBeam) / 2;
    const lacking = [!length && 'length', !beam && 'beam'].filter(Boolean).join(' and no ');
    return {
        id: 'hull',
        role: 'transom',
        name: boat ? `${boat.value.title}: no ${lacking} given, so no hull is drawn.` : 'No boat is given.',
        ...at,
        across: [
            [0, half],
            [0, -half],
        ],
        ...(length && {
            keel: [
                [0, 0],
                [length, 0],
            ] as const,
        }),
    };
}

/** A mark to find the transom by where no beam is known; the picture says that it is not to scale. */
const nominalBeam = 2;

export function drawPole(pole: PoleFigures): Pole {
    return {
        id: `pole:${pole.side}`,
        role: 'pole',
        name: poleName(pole),
        at: pole.origin.place,
        side: pole.side,
        foot: [pole.foot[0], pole.foot[1]],
        tip: [pole.tip[0], pole.tip[1]],
        halyards: pole.halyards.map(([x, y]) => [x, y]),
    };
}

export function poleName({ side, tip }: PoleFigures): string {
    if (side === 'centre') return `Centre rigger: tip ${inMetres(tip[2])} up.`;
    return `${sideWord(side)} outrigger: tip ${inMetres(Math.abs(tip[1]))} out and ${inMetres(tip[2])} up.`;
}

function hullOutline(length: number, half: number, inset: number): XY[] {
    const stretch = (length - 2 * inset) / length;
    const port = stations.map(
        ([along, out]): XY => [
            inset + along * length * stretch,
            Math.max(0, out * half - inset * (1 - along)),
        ],
    );
    const starboard = port
        .slice(0, -1)
        .reverse()
        .map(([x, y]): XY => [x, -y]);
    return [...port, ...starboard];
}
