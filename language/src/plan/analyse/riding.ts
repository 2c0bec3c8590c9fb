import { crestDistance } from '../../physics/waves/crest.ts';
import { backWave, rideAt, speedBand } from '../../physics/waves/ride.ts';
import type { WaveTrain } from '../../physics/waves/train.ts';
import { doubts } from '../../physics/waves/trust.ts';
import type { Figure, Point, WaveFigures, WavePlace } from '../figures.ts';
import type { SpreadLine } from '../model.ts';
import { known, leaningOf, silent, without } from './figure.ts';
import { sentenceOf, type Water } from './water.ts';

/** How far astern the lure runs, whichever way the plan says it. */
export function asternOf(line: SpreadLine, towPoint: Figure<Point>, water: Water): Figure {
    const { back } = line;
    if (line.role === 'standby') return silent('The gear stands by.');
    if (!back) return without(line, 'back', `How far \`back\` the ${line.position.name} runs is not said.`);
    if (back.kind === 'distance') return known(back.distance.si, 'written');
    if (!water.waves.known) return water.waves;
    const lateral = towPoint.known ? towPoint.value[1] : 0;
    const astern = backWave(trainOf(water.waves.value), back.wave.si, lateral);
    if (astern === undefined) {
        return silent(
            `Wave ${back.wave.si} does not reach out to where the ${line.position.name} is towed from.`,
        );
    }
    const sideways = towPoint.known ? [] : ['The lure on the centreline, since its tow point is not known.'];
    return known(astern, 'computed', [...leaningOf(water.waves), ...sideways]);
}

/** Where on the waves a lure at a place runs. */
export function wavePlaceOf(astern: Figure, lateral: Figure, water: Water): Figure<WavePlace> {
    const { waves, habit, depth } = water;
    if (!waves.known) return waves;
    if (!astern.known) return astern;
    if (!lateral.known) return lateral;
    const spot = { astern: astern.value, lateral: lateral.value };
    const train = trainOf(waves.value);
    const ride = rideAt(train, spot.astern, spot.lateral);
    if (!ride) return silent(outsideWedge(waves.value, spot));
    const onFace = ride.part.startsWith('front');
    const { firstCrestShare } = habit;
    const band = onFace ? speedBand(ride.wave, spot.astern, spot.lateral, habit, depth) : undefined;
    return known(
        {
            wave: ride.wave,
            part: ride.part.replace(', ', ' ') as WavePlace['part'],
            onFace,
            ideal: spot.astern + ride.toIdeal,
            faces: facesAround(train, ride.idealWave, spot),
            ...(band && firstCrestShare > 0 && { band }),
        },
        'computed',
        leaningOf(waves, astern, lateral),
    );
}

/** The ideal places on the wave nearer the boat, the nearest one, and the one behind. */
function facesAround(train: WaveTrain, wave: number, spot: { astern: number; lateral: number }) {
    const candidates = [wave - 1, wave, wave + 1].filter((n) => n >= 1 && crestDistance(train, n) > 0);
    return candidates.flatMap((n) => {
        const astern = backWave(train, n, spot.lateral);
        return astern === undefined ? [] : [{ wave: n, astern }];
    });
}

function outsideWedge(waves: WaveFigures, spot: { astern: number; lateral: number }): string {
    const doubt = doubts({ speed: waves.speed }, {}, spot).find(({ reason }) => reason === 'outside wedge');
    return doubt ? sentenceOf(doubt) : 'The lure runs outside the boat’s wake.';
}

export function trainOf({ wavelength, firstCrest }: WaveFigures): WaveTrain {
    return { length: wavelength, firstCrest };
}
