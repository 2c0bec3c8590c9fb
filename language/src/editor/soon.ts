/** Puts an action off, so that many calls within so many milliseconds become one. */
export function soon(milliseconds: number, action: () => void): () => void {
    let isWaiting = false;
    return () => {
        if (isWaiting) return;
        isWaiting = true;
        setTimeout(() => {
            isWaiting = false;
            action();
        }, milliseconds);
    };
}
