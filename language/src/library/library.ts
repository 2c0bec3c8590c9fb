import basics from './basics.spread';
import methods from './methods.spread';
import species from './species.spread';
import writtenRules from './written-rules.spread';

/** The built-in files by the name that follows `layback:`, as text that an editor can show. */
export const library: ReadonlyMap<string, string> = new Map([
    ['basics', basics],
    ['species', species],
    ['methods', methods],
    ['written-rules', writtenRules],
]);
