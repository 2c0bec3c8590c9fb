/** Long work done a little at a time: whoever asked for it can listen to others in between, or leave off. */
export type Steps<T> = Generator<void, T, void>;

/** The same done in one go. */
export function finish<T>(steps: Steps<T>): T {
    for (;;) {
        const step = steps.next();
        if (step.done) return step.value;
    }
}
