import { getHeapSpaceStatistics } from 'node:v8';
import { expect, test } from 'vitest';
import { sweepOfNode } from '../../language/src/editor/sweep.ts';

/** Bytes of objects made lately. */
function young(): number {
    return getHeapSpaceStatistics().find(({ space_name }) => space_name === 'new_space')!.space_used_size;
}

test('the engine lends its sweep, and it clears away what was made lately', () => {
    const sweep = sweepOfNode();
    expect(sweep).toBeTypeOf('function');
    sweep!();
    const swept = young();
    // 20,000 objects of at least 16 bytes each, and nobody holds them.
    expect(Array.from({ length: 20_000 }, (_, n) => ({ n })).length * 16).toBeLessThan(young() - swept);
    sweep!();
    expect(young() - swept).toBeLessThan(100_000);
});
