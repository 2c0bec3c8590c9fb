import type { Command } from 'commander';

export interface Verb {
    readonly name: string;
    readonly summary: string;
    /** Started by a program, and not worth a line of the help. */
    readonly hidden?: true;
    /** Loads what the verb needs, and nothing for the other verbs: start-up is most of what a check takes. */
    readonly load: () => Promise<{ declare: (command: Command) => void }>;
}

export const verbs: readonly Verb[] = [
    {
        name: 'check',
        summary: 'say what is wrong with plans, or could be better',
        load: () => import('./check.ts'),
    },
    {
        name: 'format',
        summary: 'lay out plans in the one way',
        load: () => import('./format.ts'),
    },
    {
        name: 'figures',
        summary: 'print every number that was computed about a plan',
        load: () => import('./figures.ts'),
    },
    {
        name: 'draw',
        summary: 'draw a plan from above or from the side',
        load: () => import('./draw.ts'),
    },
    {
        name: 'card',
        summary: 'make the deck card of a plan, to print or for a telephone',
        load: () => import('./card.ts'),
    },
    {
        name: 'brief',
        summary: 'print the words of the deck card, for a message to the crew',
        load: () => import('./brief.ts'),
    },
    {
        name: 'compare',
        summary: 'say what changed between two versions of plans, and what follows',
        load: () => import('./compare.ts'),
    },
    {
        name: 'season',
        summary: 'say what the logs tell, and how sure that is',
        load: () => import('./season.ts'),
    },
    {
        name: 'git-setup',
        summary: 'let git compare and merge plans by what they say',
        load: () => import('./git-setup.ts'),
    },
    {
        name: 'git-text',
        summary: 'print what a file says, for git diff',
        hidden: true,
        load: () => import('./git-text.ts'),
    },
    {
        name: 'git-merge',
        summary: 'merge two versions of a file, for git merge',
        hidden: true,
        load: () => import('./git-merge.ts'),
    },
    {
        name: 'explain',
        summary: 'show what a rule says, on what it stands, and what to do',
        load: () => import('./explain.ts'),
    },
    {
        name: 'new',
        summary: 'start a team folder: a boat, tackle, a method, rules and a first plan',
        load: () => import('./new.ts'),
    },
    {
        name: 'language-server',
        summary: 'serve an editor, over the language server protocol',
        load: () => import('./language-server.ts'),
    },
];
