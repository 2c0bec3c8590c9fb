/** The words that may open a line outside every block. */
export const definitionWords: ReadonlySet<string> = new Set([
    ...['boat', 'rod', 'reel', 'line', 'leader', 'hooks', 'outfit', 'lure', 'teaser', 'bait', 'method'],
    ...['species', 'spread', 'day', 'rules', 'log', 'use', 'layback'],
]);
