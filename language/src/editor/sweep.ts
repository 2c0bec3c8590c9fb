import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/**
 * A sweep of what was made lately and is used no more, for when nobody waits; `undefined` where the engine does not
 * lend its own. Left to itself it sweeps when its room is full, which is in the middle of every fourth keystroke.
 * The flag is undocumented; a test sees to it that it still exists.
 */
export function sweepOfNode(): (() => void) | undefined {
    setFlagsFromString('--expose-gc');
    const collect: unknown = runInNewContext('globalThis.gc');
    return typeof collect === 'function' ? () => void collect({ type: 'minor' }) : undefined;
}
