import type { Steps } from '../../physics/steps.ts';

/**
 * Remembers the answers to pure questions that are made of numbers and plain words: lines and turns that many plans
 * share, or that stay as they are while a crew types elsewhere, are worked out once. The longest unasked goes first.
 */
export function remembering<Question, Answer>(
    answer: (question: Question) => Answer,
    most: number,
): (question: Question) => Answer {
    const known = new Map<string, Answer>();
    return (question) => {
        const key = JSON.stringify(question);
        const found = known.has(key) ? known.get(key)! : answer(question);
        keep(known, key, found, most);
        return found;
    };
}

/** The same for answers worked out step by step; what is left off half way is not remembered. */
export function rememberingSteps<Question, Answer>(
    answer: (question: Question) => Steps<Answer>,
    most: number,
): (question: Question) => Steps<Answer> {
    const known = new Map<string, Answer>();
    return function* (question) {
        const key = JSON.stringify(question);
        const found = known.has(key) ? known.get(key)! : yield* answer(question);
        keep(known, key, found, most);
        return found;
    };
}

function keep<Answer>(known: Map<string, Answer>, key: string, found: Answer, most: number): void {
    known.delete(key);
    known.set(key, found);
    if (known.size > most) known.delete(known.keys().next().value!);
}
