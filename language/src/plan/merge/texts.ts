import type { Sheet } from '../../../grammar/generated/ast.ts';
import type { LaybackServices } from '../services.ts';
import { type Chunk, chunksOf } from './chunks.ts';
import { type Merged, merge } from './merge.ts';

/**
 * Three texts as one: see `merge`. Line breaks become those of ours.
 *
 * @returns nothing where one of them cannot be read: who cannot read a text cannot say what is the same in it
 */
export function mergeTexts(
    [base, ours, theirs]: readonly [base: string, ours: string, theirs: string],
    services: LaybackServices,
): Merged | undefined {
    const chunks = [base, ours, theirs].map((text) => read(text.replace(/\r\n?/g, '\n'), services));
    const [was, our, their] = chunks;
    if (!was || !our || !their) return undefined;
    const { text, conflicts } = merge(was, our, their);
    return { text: ours.includes('\r\n') ? text.replaceAll('\n', '\r\n') : text, conflicts };
}

function read(text: string, services: LaybackServices): Chunk[] | undefined {
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse<Sheet>(text);
    return lexerErrors.length + parserErrors.length > 0 ? undefined : chunksOf(text, value);
}
