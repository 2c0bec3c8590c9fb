/** Whether an action of a kind is among those that are asked for: a kind asks for all that are more particular. */
export function isAskedFor(kind: string, only: readonly string[]): boolean {
    return only.some((each) => each === '' || kind === each || kind.startsWith(`${each}.`));
}
