import type { AstNode } from 'langium';
import type { Back, Quantity as QuantityNode } from '../../../grammar/generated/ast.ts';
import { contextOf } from '../../plan/checks/context.ts';
import type { LineFigures } from '../../plan/figures.ts';
import { readQuantity } from '../../plan/resolve/values.ts';
import { type Property, propertyOf } from '../../plan/vocabulary.ts';
import { classOf } from '../../units/line-class.ts';
import { printBoth } from '../../units/print.ts';
import { si } from '../../units/quantity.ts';
import { known } from './line.ts';
import { type Part, text, title } from './page.ts';
import type { Speech } from './speech.ts';

/** A number with its unit: the same in the other system, and what the plan makes of it. */
export function aboutNumber(node: QuantityNode, line: LineFigures | undefined, speech: Speech): Part[] {
    const quantity = readQuantity(node);
    const owner = node.$container;
    if (!quantity) return [];
    if (owner.$type === 'Back') return aboutBack(owner as Back, line, speech);
    const property = propertyOfNumber(owner);
    if (quantity.unit.dimension === 'count')
        return property ? [title(node.$cstNode?.text ?? '', property.word), text(property.says)] : [];
    const told = printBoth(si(quantity), quantity);
    const lineClass = property?.word === 'class' ? classOf(quantity) : undefined;
    return [
        title(told, property?.word),
        ...(lineClass ? [text(`The ${lineClass.kg} kg class.`)] : []),
        ...(property ? [text(property.says)] : []),
    ];
}

/** Metres for a wave, the wave for metres. */
function aboutBack(back: Back, line: LineFigures | undefined, speech: Speech): Part[] {
    const written = back.amount?.$cstNode?.text ?? '';
    const astern = line && known(line.astern, (metres) => speech.length(metres));
    const wave = line && known(line.wave, (at) => at);
    if (back.wave) {
        return [
            title(`Wave ${written}`, astern ?? 'not known'),
            ...(line && !line.astern.known ? [text(line.astern.reason)] : []),
        ];
    }
    const told = astern ?? written;
    if (!wave) return [title(told), ...(line && !line.wave.known ? [text(line.wave.reason)] : [])];
    const faces = wave.faces.map((face) => `wave ${face.wave} at ${speech.length(face.astern)}`).join(', ');
    return [title(told, `wave ${wave.wave}, ${wave.part}`), text(`Front faces near it: ${faces}.`)];
}

export function propertyOfNumber(owner: AstNode): Property | undefined {
    const { word } = owner as { word?: string };
    const context = contextOf(owner);
    return word && context ? propertyOf(context, word) : undefined;
}
