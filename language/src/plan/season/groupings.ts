/** By what a season can be told apart. */
export const groupings = ['position', 'lure', 'method', 'wave', 'speed', 'target', 'species'] as const;

export type Grouping = (typeof groupings)[number];
