import { flatten } from './flatten.ts';
import { extractMethod, inlineMethod } from './method.ts';
import { move } from './move.ts';
import { makePreset } from './preset.ts';
import type { Refactoring, Workplace } from './refactoring.ts';

/**
 * Other ways to write what stands at a place, each of which leaves every figure as it is. On the words of a definition
 * what is about the whole of it, in a position what is about that.
 *
 * @param allowNewFile  whether a file can be made
 */
export function refactorings(place: Workplace, onHead: boolean, allowNewFile: boolean): Refactoring[] {
    const { parserErrors, lexerErrors } = place.document.parseResult;
    // In a text that was read only in part there may be more than is known.
    if (parserErrors.length > 0 || lexerErrors.length > 0) return [];
    return [
        ...(onHead ? [...makePreset(place), ...flatten(place), ...move(place, allowNewFile)] : []),
        ...extractMethod(place),
        ...inlineMethod(place),
    ];
}
