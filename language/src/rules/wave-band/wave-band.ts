import type { WavePlace } from '../../plan/figures.ts';
import type { Span } from '../../plan/measure.ts';
import type { Spread } from '../../plan/model.ts';
import { replaceSpan } from '../fixes.ts';
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
            { otherwise: "the plan's own speeds, or else not judged" },
            ['0.1 kn', '5 kn'],
            "How far the boat may stray from the plan's speed, where it does not say its speeds.",
        ),
    },

    check(analysis, { wander }, report) {
        const { plan } = analysis;
        const run = runBy(plan, wander);
        if (!run) return;
        const riding = [...luresOnWaves(analysis)].flatMap(({ line, wave }) =>
            wave.band && line.back ? [{ line, wave: wave.wave, band: wave.band, back: line.back }] : [],
        );
        const leaving = riding.filter(({ band }) => run.from < band.from - SLACK || run.to > band.to + SLACK);
        const { speeds } = plan;
        const several = speeds && leaving.length > 1;
        const all = common(riding.map(({ band }) => band));
        for (const { line, wave, band, back } of leaving) {
            const [holds, runs] = inWords(band, run, speeds);
            const { name } = line.position;
            report({
                at: several ? { ...speeds.from.origin, place: speeds.from.origin.property } : back,
                what: `${name} stays on wave ${wave} at ${holds}, and the boat may run ${runs}.`,
                why: 'The waves stretch with speed and slide away from under a lure.',
                remedy: `Hold ${holds}, or ${run.to > band.to ? 'let it back' : 'bring it in'} a little.`,
                related: [
                    {
                        at: several ? back : speeds?.from,
                        what: several ? `${name} runs here.` : 'The speeds are said here.',
                    },
                ],
                fixes: [speeds && keep(speeds, band)],
                positions: [line],
                together: speeds && {
                    kind: 'speeds',
                    name,
                    what: (names) => `${names} leave their wave faces within ${runs}.`,
                    remedy: `Keep her at ${inWords(all, run, speeds)[0]}, where all of them stay.`,
                    fixes: [keep(speeds, all)],
                    each: { at: back, what: `${name} stays on wave ${wave} at ${holds}.` },
                },
            });
        }
    },
});

/** A tenth of a knot: finer than anyone steers, and than the band is said. */
const SLACK = 0.1 * (1852 / 3600);

type Band = NonNullable<WavePlace['band']>;

function runBy({ speed: planned, speeds }: Spread, wander: number | undefined): Band | undefined {
    if (!planned) return undefined;
    if (speeds) return { from: speeds.from.si, to: speeds.to.si };
    return wander === undefined ? undefined : { from: planned.si - wander, to: planned.si + wander };
}

/** Never empty: at the plan's own speed all of them are on their faces. */
function common(bands: readonly Band[]): Band {
    return { from: Math.max(...bands.map(({ from }) => from)), to: Math.min(...bands.map(({ to }) => to)) };
}

/** A band and the speeds that are run, told apart. */
function inWords(band: Band, run: Band, said: Span | undefined): [band: string, run: string] {
    const low = sayApart.speed(band.from, said?.from ?? run.from);
    const high = sayApart.speed(band.to, said?.to ?? run.to);
    return [`${low[0]} to ${high[0]}`, `${low[1]} to ${high[1]}`];
}

function keep(speeds: Span, band: Band) {
    const title = (from: string, to: string) => `Keep her at ${from} to ${to}`;
    const within = {
        from: Math.max(speeds.from.si, band.from),
        to: Math.min(speeds.to.si, band.to),
    };
    return replaceSpan(title, speeds, within);
}
