import type { LineFigures } from '../../plan/figures.ts';
import type { Back } from '../../plan/model.ts';
import { distances, isBehind } from '../distances.ts';
import { replaceValue } from '../fixes.ts';
import { fishedLines, known } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { practice } from '../standing.ts';

/** A shotgun that is not the longest line. */
export const shotgunInside = rule({
    name: 'shotgun-inside',
    group: 'layout',
    standing: practice('The shotgun is the longest line, on the centreline, behind all that it could foul.'),
    severity: 'warning',
    summary: 'A shotgun runs inside other lines.',
    settings: {},

    check(analysis, _, report) {
        const fished = fishedLines(analysis);
        for (const shotgun of fished.filter(({ line }) => line.position.place === 'shotgun')) {
            const outside = fished.filter((other) => isBehind(other, shotgun));
            const [longest, ...others] = outside.sort((a, b) => (isBehind(a, b) ? -1 : 1));
            if (!longest) continue;
            const [back, other] = distances(shotgun, longest);
            const { line } = shotgun;
            report({
                at: line.back ?? line,
                what: `${line.position.name} runs ${back} back, inside ${longest.line.position.name} at ${other}.`,
                why: 'The shotgun is the longest line, down the middle.',
                remedy: 'Run it behind the others, or give it another name.',
                related: [{ at: longest.line.back ?? longest.line, what: 'The longest line runs here.' }],
                fixes: [behind(line.back, longest)],
                positions: [line, longest.line, ...others.map(({ line }) => line)],
            });
        }
    },
});

/** On the wave behind the longest line's, where the shotgun is on a wave. */
function behind(back: Back | undefined, longest: LineFigures) {
    const wave = known(longest.wave)?.wave;
    if (back?.kind !== 'wave' || wave === undefined) return undefined;
    return replaceValue((text) => `Let it back to wave ${text}`, back.wave, wave + 1);
}
