import type { AnalysedPlan, WavePlace } from '../plan/figures.ts';
import type { SpreadLine } from '../plan/model.ts';
import { fishedLines } from './neighbours.ts';

/**
 * The lures that should run on a wave, with their places on it. None where the wave model is in doubt, and no
 * divers: they track below the surface.
 */
export function* luresOnWaves(
    analysis: AnalysedPlan,
): Generator<{ readonly line: SpreadLine; readonly wave: WavePlace; readonly astern: number }> {
    if (!analysis.waves.known || analysis.waves.value.doubt !== undefined) return;
    for (const { line, wave, astern } of fishedLines(analysis)) {
        if (!line.lure || line.lure.value.kind?.value === 'diver' || !wave.known || !astern.known) continue;
        yield { line, wave: wave.value, astern: astern.value };
    }
}
