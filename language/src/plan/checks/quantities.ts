import type { AstNode } from 'langium';
import type { Quantity as QuantityNode } from '../../../grammar/generated/ast.ts';
import { isQuantityError, parseQuantity } from '../../units/parse.ts';
import { print } from '../../units/print.ts';
import type { Dimension } from '../../units/unit.ts';
import type { Finding } from '../finding.ts';
import { placeOf } from '../place.ts';
import { readQuantity } from '../resolve/values.ts';
import { feetMarkAt } from '../syntax/feet-mark.ts';
import type { Property } from '../vocabulary.ts';
import { capital } from '../wording.ts';
import { instead, problem } from './problem.ts';
import { isWave, propertyOfQuantity, senseless } from './sense.ts';

/** Numbers that are not what their property measures: wrong or missing units, commas, slips of the pen. */
export function checkQuantity(node: QuantityNode): Finding | undefined {
    if (node.number === undefined || hasFeetMark(node)) return undefined;
    const owner = node.$container;
    const property = propertyOfQuantity(owner);
    const wanted = dimensionOf(node, owner, property);
    const written = node.$cstNode?.text ?? '';
    const found = readQuantity(node);
    const fits = found && (!wanted || wanted.includes(found.unit.dimension));
    if (!fits) return misfit(node, written, wanted?.[0], property);
    const beyond = senseless(node, found);
    if (!beyond) return uncounted(node);
    const { least, most } = beyond;
    if (isWave(node)) {
        return problem('quantity', placeOf(node), {
            what: `There is no wave ${written} to tell of: they count from 1 to ${most} behind the boat.`,
            remedy: 'Count again, or say how far back in metres or feet.',
        });
    }
    // In the unit that was written: a bound in another one would have to be converted by whoever reads it.
    return problem('quantity', placeOf(node), {
        what: `${property ? `${capital(property.word)} ` : ''}${written} is outside what makes sense (${print(least, found.unit)} to ${print(most, found.unit)}).`,
        remedy: 'Look for a slip in the number or its unit.',
    });
}

function misfit(
    node: QuantityNode,
    written: string,
    wanted: Dimension | undefined,
    property: Property | undefined,
): Finding {
    const at = placeOf(node);
    const error = parseQuantity(written, wanted, property?.sane);
    const example = property && `For instance \`${property.example}\`.`;
    if (!isQuantityError(error)) {
        const what = `\`${written}\` cannot be read as a quantity.`;
        return problem('quantity', at, { what, remedy: example });
    }
    const start = property ? `${capital(property.word)}: ` : '';
    return problem('quantity', at, {
        what: `${start}${error.message}`,
        remedy: error.instead.length === 0 ? example : undefined,
        fixes: error.instead.map((text) => instead(at, text)),
    });
}

/** `40'`: what is wrong with it is said where the mark is. */
function hasFeetMark({ $cstNode }: QuantityNode): boolean {
    return $cstNode !== undefined && feetMarkAt($cstNode.root.fullText, $cstNode.end) !== undefined;
}

/** Numbers that are not of their word's own dimension: the speed of a pull, the bearing of a wind. */
const OTHER: Readonly<Record<string, Dimension | undefined>> = {
    'Pull.speed': 'speed',
    'Crests.speed': 'speed',
    'Wind.from': 'angle',
    'From.number': 'count',
    'AtMost.amount': 'count',
    'Limits.upTo': 'load',
    'EventWeight.amount': 'load',
    'Condition.height': 'length',
    'Condition.strength': 'speed',
    'Classes.tests': 'load',
    'Classes.customary': 'load',
};

function dimensionOf(
    node: QuantityNode,
    owner: AstNode,
    property: Property | undefined,
): readonly Dimension[] | undefined {
    if (owner.$type === 'Setting') return undefined;
    if (isWave(node)) return ['count'];
    const other = OTHER[`${owner.$type}.${node.$containerProperty}`];
    if (other) return [other];
    if (!property?.dimension) return undefined;
    return property.orShare ? [property.dimension, 'share'] : [property.dimension];
}

/** Halyards and waves are counted off: there is none between the first and the second. */
function uncounted(node: QuantityNode): Finding | undefined {
    if (Number.isInteger(node.number)) return undefined;
    if (isWave(node)) {
        return problem('quantity', placeOf(node), {
            what: `Waves are counted, and \`${node.$cstNode?.text}\` lies between two of them.`,
            why: 'A lure runs on the face of one, and in between on none. It counts as not written.',
            remedy: 'Write a whole number, or how far back in metres or feet.',
        });
    }
    if (node.$container.$type !== 'From') return undefined;
    return problem('quantity', placeOf(node), {
        what: `Halyards are counted, and \`${node.$cstNode?.text}\` is none of them.`,
        remedy: 'Number 1 is the inner one.',
    });
}
