/*
 * What a server does now and then: a program of its own, read when it is first wanted. What it is given and gives back is
 * plain: syntax trees, resolved plans, texts.
 */

export { overWords } from './over.ts';
export { refactorings } from './refactorings.ts';

export type Workshop = typeof import('./part.ts');
