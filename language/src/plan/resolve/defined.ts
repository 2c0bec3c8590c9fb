import type { Definition } from '../../../grammar/generated/ast.ts';
import type { Defined } from '../model.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { documentationOf } from './documentation.ts';
import { likeChain, voiceOf } from './gather.ts';
import { definitionName } from './table.ts';

/** Name, title and documentation of a definition; the title of the nearest one that has one. */
export function definedBy(definition: Definition): Defined {
    const name = definitionName(definition);
    const titled = [definition, ...likeChain(definition)].find((each) => each.title);
    const doc = documentationOf(definition);
    const named = 'name' in definition ? 'name' : 'date';
    return {
        name,
        title: titled?.title ?? name,
        ...(doc && { doc }),
        origin: {
            place: placeOfProperty(definition, named),
            property: placeOf(definition),
            voice: voiceOf(definition.kind),
            definition: name,
        },
    };
}
