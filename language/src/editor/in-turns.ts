import { isOperationCancelled } from 'langium';
import { LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Steps } from '../physics/steps.ts';

/** So long, ms, others may wait for their turn. */
const atOnce = 8;

/**
 * Goes through steps with rests between.
 *
 * @param goOn  throws where there is no more use in it
 */
export async function inTurns<T>(steps: Steps<T>, goOn: () => void): Promise<T> {
    for (let since = performance.now(); ; ) {
        const step = steps.next();
        if (step.done) return step.value;
        if (performance.now() - since < atOnce) continue;
        await new Promise((resolve) => setTimeout(resolve));
        goOn();
        since = performance.now();
    }
}

export function overtaken(code: LSPErrorCodes): ResponseError<void> {
    return new ResponseError(code, 'The answer is no longer wanted.');
}

/** Tells a client that it cancelled a request in the protocol's own words, where the wait for it ended by that. */
export async function orCancelled<T>(answer: Promise<T>): Promise<T> {
    try {
        return await answer;
    } catch (fault) {
        if (isOperationCancelled(fault)) throw overtaken(LSPErrorCodes.RequestCancelled);
        throw fault;
    }
}
