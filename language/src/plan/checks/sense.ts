import type { AstNode } from 'langium';
import type { Back, Quantity as QuantityNode } from '../../../grammar/generated/ast.ts';
import { type Quantity, si } from '../../units/quantity.ts';
import { boundsOf } from '../vocabulary/bounds.ts';
import { type Property, propertyOf } from '../vocabulary.ts';
import { contextOf } from './context.ts';

/** A number outside what its place allows, and what that is, SI. */
export interface Senseless {
    readonly least: number;
    readonly most: number;
}

/** Where a number makes no sense although its unit does: nothing may be computed from it. */
export function senseless(node: QuantityNode, found: Quantity): Senseless | undefined {
    const owner = node.$container;
    // The settings of rules have their own sense, which the rules know.
    if (owner.$type === 'Setting') return undefined;
    const place = `${owner.$type}.${isWave(node) ? 'wave' : node.$containerProperty}`;
    const [least, most] = boundsOf(place, found.unit.dimension, propertyOfQuantity(owner));
    const value = si(found);
    return value >= least && value <= most ? undefined : { least, most };
}

/** Whether a number counts waves. */
export function isWave({ $container: owner }: QuantityNode): boolean {
    return owner.$type === 'Back' && (owner as Back).wave === true;
}

/** The property whose number, or one of whose numbers, this is. */
export function propertyOfQuantity(owner: AstNode): Property | undefined {
    const { word } = owner as { word?: string };
    const context = contextOf(owner);
    return word && context ? propertyOf(context, word) : undefined;
}
