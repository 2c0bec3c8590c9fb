import { EXPECTED_RUN } from '../../physics/drag.ts';
import { norm, subtract } from '../../physics/vector.ts';
import type { Figure, LineFigures, ReelFigures } from '../figures.ts';
import type { Line, Reel, SpreadLine } from '../model.ts';
import { capacityFor } from './drags.ts';
import { known, leaningOf, silent } from './figure.ts';
import { leaderOf } from './rest.ts';

type Geometry = Pick<LineFigures, 'towPoint' | 'rodTip' | 'astern' | 'rest'>;

/** How much line is left on the reel of a fished line when a fish has run. */
export function reelOf(line: SpreadLine, geometry: Geometry): Figure<ReelFigures> | undefined {
    if (line.role !== 'fished') return undefined;
    const outfit = line.outfit?.value;
    const holds = outfit?.reel && held(outfit.reel, outfit.line);
    if (!holds)
        return silent(
            `What the reel of the ${line.position.name} holds is not known: an outfit’s \`reel\` has a \`capacity\`.`,
        );
    const out = lineOff(line, geometry);
    if (!out.known) return out;
    const run = outfit.run?.si ?? EXPECTED_RUN;
    return known(
        {
            holds,
            out: out.value,
            run,
            ...(outfit.run && { runSaid: outfit.run }),
            left: holds - out.value - run,
        },
        'computed',
        [...out.leaning, ...(outfit.run ? [] : [`A run of ${EXPECTED_RUN} m (estimate).`])],
    );
}

/** No more than the line is long, where that was said. */
function held(reel: Reel, line: Line | undefined): number | undefined {
    const full = capacityFor(reel, line);
    return full && Math.min(full, line?.length?.si ?? Number.POSITIVE_INFINITY);
}

/** From the rod's tip over the clip to the leader; without all of those, as far as the lure is astern. */
export function lineOff(line: SpreadLine, { towPoint, rodTip, astern, rest }: Geometry): Figure {
    if (!astern.known) return astern;
    if (!rest.known || !towPoint.known) return known(astern.value, 'computed', leaningOf(astern));
    const toClip = rodTip?.known ? norm(subtract(towPoint.value, rodTip.value)) : 0;
    const leader = leaderOf(line)?.length?.si ?? 0;
    return known(Math.max(0, rest.value.lineOut + toClip - leader), 'computed', leaningOf(rest));
}
