import type { Definition } from '../../../grammar/generated/ast.ts';
import type { Defined } from '../model.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { documentationOf } from './documentation.ts';
import { voiceOf } from './gather.ts';
import { definitionName } from './table.ts';

/** Name, title and documentation of a definition. A title is its own: what is like another is not that other. */
export function definedBy(definition: Definition): Defined {
    const name = definitionName(definition);
    const doc = documentationOf(definition);
    const named = 'name' in definition ? 'name' : 'date';
    return {
        name,
        title: definition.title || name,
        ...(doc && { doc }),
        origin: {
            place: placeOfProperty(definition, named),
            property: placeOf(definition),
            voice: voiceOf(definition.kind),
            definition: name,
        },
    };
}
