import type { Block, Measured, Quantity, Ranged } from '../../../grammar/generated/ast.ts';
import { si } from '../../units/quantity.ts';
import type { Finding } from '../finding.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { readQuantity } from '../resolve/values.ts';
import { instead, problem } from './problem.ts';

/** A range whose upper end comes first: `speed 9 kn to 6 kn`. */
export function checkRange({ word, from, to }: Ranged): Finding | undefined {
    if (!from || !to || !isLess(to, from)) return undefined;
    const at = placeOf(from);
    const other = placeOf(to);
    const [first, last] = [from.$cstNode?.text ?? '', to.$cstNode?.text ?? ''];
    const swapped = `${word} ${last} to ${first}`;
    return problem('value', at, {
        what: `The range goes from ${first} down to ${last}.`,
        why: 'Nothing lies inside it, so everything would be said to be out of it.',
        remedy: `Write the lesser first: \`${swapped}\`.`,
        related: [{ at: other, what: 'The other end.' }],
        fixes: [
            {
                title: `Change to \`${swapped}\``,
                edits: [...instead(at, last).edits, ...instead(other, first).edits],
            },
        ],
    });
}

/** A spool that is thinner full than empty. */
export function checkSpool({ word, entries }: Block): Finding | undefined {
    if (word !== 'spool') return undefined;
    const measured = (name: string) =>
        (entries as readonly Measured[]).find((each) => each.$type === 'Measured' && each.word === name);
    const [full, arbor] = [measured('full'), measured('arbor')];
    if (!full?.amount || !arbor?.amount || !isLess(full.amount, arbor.amount)) return undefined;
    return problem('value', placeOfProperty(arbor, 'amount'), {
        what: `The arbor is ${arbor.amount.$cstNode?.text}, and the full spool ${full.amount.$cstNode?.text}.`,
        why: 'Both are diameters: line lies on the bare arbor, so the full spool is the thicker one.',
        remedy: 'Look for a slip in one of the two.',
        related: [{ at: placeOfProperty(full, 'amount'), what: 'The full spool is said here.' }],
    });
}

function isLess(a: Quantity, b: Quantity): boolean {
    const [one, other] = [readQuantity(a), readQuantity(b)];
    return one?.unit.dimension === other?.unit.dimension && !!one && !!other && si(one) < si(other);
}
