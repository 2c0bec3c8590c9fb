import { crestDistance } from '../../physics/waves/crest.ts';
import { backWave } from '../../physics/waves/ride.ts';
import type { AnalysedPlan, Figure, LineFigures, WavePlace } from '../figures.ts';
import { known, leaningOf } from './figure.ts';
import { trainOf } from './riding.ts';

/** How far back a lure is looked for a place, m. Estimate: further than any plan lets one out. */
const FARTHEST = 150;

/** The ideal place of every wave that a line can be let back to, nearer the boat first. */
export function facesFor(line: LineFigures, { waves }: AnalysedPlan): Figure<WavePlace['faces']> {
    const { lateral } = line;
    if (!waves.known) return waves;
    if (!lateral.known) return lateral;
    const train = trainOf(waves.value);
    const faces: { wave: number; astern: number }[] = [];
    for (let wave = 1; crestDistance(train, wave) < FARTHEST; wave++) {
        const astern = backWave(train, wave, lateral.value);
        if (astern !== undefined && astern <= FARTHEST) faces.push({ wave, astern });
    }
    return known(faces, 'computed', leaningOf(waves, lateral));
}
