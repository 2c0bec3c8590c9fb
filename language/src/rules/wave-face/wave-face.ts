import type { WavePlace } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { replaceProperty, replaceValue } from '../fixes.ts';
import { rule } from '../rule.ts';
import { listed, say } from '../say.ts';
import { physics } from '../standing.ts';
import { luresOnWaves } from '../waves.ts';

/** A lure runs on a crest, a back face or in a trough. */
export const waveFace = rule({
    name: 'wave-face',
    group: 'waves and speed',
    standing: physics(
        "The waves that keep pace with the boat, linear theory, from Kelvin's wake.",
        'The first crest, unless the boat has measured ones.',
    ),
    severity: 'warning',
    summary: "A lure runs on a crest, a back face or in a trough at the plan's speed.",
    settings: {},

    check(analysis, _, report) {
        for (const { line, wave, astern } of luresOnWaves(analysis)) {
            if (wave.onFace || !line.back) continue;
            const at = say.speed(analysis.plan.speed!);
            const faces = nearestTwo(wave.faces, astern);
            const moves = remedyFor(faces, line);
            report({
                at: [line.back, ...(analysis.plan.speed ? [analysis.plan.speed] : [])],
                what: `${line.position.name} runs ${partInWords(wave)} at ${at}.`,
                why: 'A lure works on the front face, in clean water.',
                remedy: moves,
                fixes: faces.map((face) => moveTo(face, line)),
                positions: [line],
                together: {
                    kind: 'speed',
                    name: line.position.name,
                    what: (names) => `${names} are off their wave faces at ${at}.`,
                    remedy: 'Move each to a face of this speed, or tow at the speed that they were laid out for.',
                    fixes: [],
                    each: {
                        at: line.back,
                        what: `${line.position.name} runs ${partInWords(wave)}.${moves ? ` ${moves}` : ''}`,
                    },
                },
            });
        }
    },
});

type Faces = WavePlace['faces'];

function partInWords({ part, wave }: WavePlace): string {
    if (part === 'trough') return `in the trough at wave ${wave}`;
    return part === 'crest' ? `on the crest of wave ${wave}` : `on the back of wave ${wave}`;
}

function nearestTwo(faces: Faces, astern: number): Faces {
    const off = ({ astern: ideal }: Faces[number]) => Math.abs(ideal - astern);
    const nearest = [...faces].sort((a, b) => off(a) - off(b)).slice(0, 2);
    return nearest.sort((a, b) => a.astern - b.astern);
}

function remedyFor(faces: Faces, { back }: SpreadLine): string | undefined {
    const like = back?.kind === 'distance' ? back.distance : undefined;
    const ways = faces.map(({ wave, astern }) => `${say.length(astern, like)} (wave ${wave})`);
    return ways.length > 0 ? `Move it to ${listed(ways, 'or')}.` : undefined;
}

function moveTo({ wave, astern }: Faces[number], { back }: SpreadLine) {
    if (back?.kind === 'wave')
        return replaceProperty(`Move it to wave ${wave}`, back.origin, `back wave ${wave}`);
    return back && replaceValue((text) => `Move it to ${text}, on wave ${wave}`, back.distance, astern);
}
