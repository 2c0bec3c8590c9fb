import type { Definition } from '../../../grammar/generated/ast.ts';
import type { Method, Species } from '../model.ts';
import { definedBy } from './defined.ts';
import { type Gathered, gather } from './gather.ts';
import { readDrag, resolveShares } from './tackle.ts';
import { choice, measure, span } from './values.ts';

export function readMethod(definition: Definition, gathered: Gathered): Method {
    const known = gathered.readings.get(definition);
    if (known) return known as Method;
    const table = gather(definition, gathered);
    const style = choice<'direct' | 'drop-back'>(table, 'style');
    const loop = measure(table, 'loop', 'length');
    const wait = measure(table, 'wait', 'time');
    const clip = measure(table, 'clip', 'force');
    const wraps = measure(table, 'wraps', 'count');
    const opens = measure(table, 'opens', 'force');
    const speed = span(table, 'speed', 'speed');
    const dragSaid = readDrag(table);
    const method: Method = {
        ...definedBy(definition),
        ...(style && { style }),
        drag: resolveShares(dragSaid, undefined),
        dragSaid,
        ...(loop && { loop }),
        ...(wait && { wait }),
        ...(clip && { clip }),
        ...(wraps && { wraps }),
        ...(opens && { opens }),
        ...(speed && { speed }),
    };
    gathered.readings.set(definition, method);
    return method;
}

export function readSpecies(definition: Definition, gathered: Gathered): Species {
    const table = gather(definition, gathered);
    const speed = span(table, 'speed', 'speed');
    const weight = span(table, 'weight', 'mass');
    return { ...definedBy(definition), ...(speed && { speed }), ...(weight && { weight }) };
}
