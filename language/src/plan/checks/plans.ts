import type { LangiumDocument } from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import type { Finding } from '../finding.ts';
import type { Resolved } from '../model.ts';
import type { Gathered } from '../resolve/gather.ts';
import { boatOf } from '../resolve/spread.ts';
import { checkBoat } from './boats.ts';
import { checkDay } from './days.ts';
import { checkDrags, checkDragsOfLine } from './drags.ts';
import { checkTowPoint } from './tow-points.ts';

/**
 * What cannot be although every word and number of it can: a clip beyond the end of its pole, a line from a halyard
 * that the boat does not have. Each is said where it was brought about: a plan that takes all of it from a preset is
 * not told again.
 *
 * @param whole  whether everything in reach could be read; else nothing is known to be missing from a boat
 */
export function checkPlans(
    document: LangiumDocument<Sheet>,
    { spreads, days }: Pick<Resolved, 'spreads' | 'days'>,
    gathered: Gathered,
    whole: boolean,
): Finding[] {
    const uri = document.uri.toString();
    return [
        ...document.parseResult.value.definitions.flatMap((definition) => {
            if (definition.kind === 'boat') return checkBoat(boatOf(definition, gathered), uri);
            if (definition.kind !== 'outfit' && definition.kind !== 'method') return [];
            return checkDrags(definition, gathered, uri);
        }),
        ...days.flatMap(checkDay).filter(({ at }) => at.uri === uri),
        ...spreads.flatMap(({ boat, lines }) =>
            lines.flatMap((line) => [
                ...(boat && whole ? checkTowPoint(line, boat, uri) : []),
                ...checkDragsOfLine(line, uri),
            ]),
        ),
    ];
}
