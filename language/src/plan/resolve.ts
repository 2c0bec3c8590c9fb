import type { LangiumDocument } from 'langium';
import type { Definition, Sheet } from '../../grammar/generated/ast.ts';
import type { Log, Resolved } from './model.ts';
import { placeOf } from './place.ts';
import { readDay } from './resolve/day.ts';
import { definedBy } from './resolve/defined.ts';
import { Gathered } from './resolve/gather.ts';
import { readLog } from './resolve/log.ts';
import { readSpread } from './resolve/spread.ts';

/**
 * What a linked document holds, resolved: no reader of this needs the syntax tree again.
 *
 * @param gathered  shared by documents that are resolved in one go, and dropped at the next edit
 * @param usedElsewhere  whether any other file that is looked at refers to a definition
 */
export function resolveDocument(
    document: LangiumDocument,
    gathered = new Gathered(),
    usedElsewhere: (definition: Definition) => boolean = () => false,
): Resolved {
    const { definitions = [] } = document.parseResult.value as Sheet;
    return {
        uri: document.uri.toString(),
        spreads: definitions
            .filter((each) => each.kind === 'spread')
            .map((each) => readSpread(each, gathered)),
        days: definitions.filter((each) => each.kind === 'day').map((each) => readDay(each, gathered)),
        logs: definitions.flatMap((each): Log[] => {
            const log = each.kind === 'log' ? readLog(each, gathered) : undefined;
            return log ? [log] : [];
        }),
        definitions: definitionsIn(document, usedElsewhere),
    };
}

/** The definitions of a document, and whether anything refers to each. */
export function definitionsIn(
    document: LangiumDocument,
    usedElsewhere: (definition: Definition) => boolean,
): Resolved['definitions'] {
    const { definitions = [] } = document.parseResult.value as Sheet;
    const usedHere = referredIn(document);
    return definitions.map((each) => ({
        ...definedBy(each),
        kind: each.kind,
        used: usedHere.has(each) || usedElsewhere(each),
        place: placeOf(each),
    }));
}

/** The definitions that a document's own references lead to. */
function referredIn(document: LangiumDocument): ReadonlySet<unknown> {
    const found = new Set<unknown>();
    for (const reference of document.references) if ('ref' in reference) found.add(reference.ref);
    return found;
}
