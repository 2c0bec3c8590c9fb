import { rule } from '../rule.ts';
import { sayApart } from '../say.ts';
import { speed } from '../settings.ts';
import { physics } from '../standing.ts';
import { luresOnWaves } from '../waves.ts';

/** A lure leaves its face somewhere in the speeds that the helm may run. */
export const waveBand = rule({
    name: 'wave-band',
    group: 'waves and speed',
    standing: physics(
        "The waves that keep pace with the boat, linear theory, from Kelvin's wake.",
        'The first crest, unless the boat has measured ones.',
    ),
    severity: 'warning',
    summary: 'A lure leaves its wave face within the speeds that the helm may run.',
    settings: {
        wander: speed(
            { otherwise: 'not judged' },
            "How far the boat may stray from the plan's speed, up or down.",
        ),
    },

    check(analysis, { wander }, report) {
        const { speed: planned } = analysis.plan;
        if (wander === undefined || !planned) return;
        for (const { line, wave } of luresOnWaves(analysis)) {
            if (!wave.band || !line.back) continue;
            const { from, to } = wave.band;
            const [slowest, fastest] = [planned.si - wander, planned.si + wander];
            if (slowest >= from && fastest <= to) continue;
            const [low, high] = [sayApart.speed(from, slowest), sayApart.speed(to, fastest)];
            const [band, run] = [`${low[0]} to ${high[0]}`, `${low[1]} to ${high[1]}`];
            report({
                at: line.back,
                what: `${line.position.name} stays on wave ${wave.wave} at ${band}, and the boat may run ${run}.`,
                why: 'The waves stretch with speed and slide away from under a lure.',
                remedy: `Hold ${band}, or ${fastest > to ? 'let it back' : 'bring it in'} a little.`,
                positions: [line],
            });
        }
    },
});
