import { OperationCancelled } from 'langium';
import { expect, test } from 'vitest';
import { CancellationToken, CancellationTokenSource } from 'vscode-languageserver';
import { Turnstile } from '../../language/src/editor/turnstile.ts';

test('who waits is let through with the others, and let go at once when nobody wants the answer any more', async () => {
    const turnstile = new Turnstile();
    const unwanted = new CancellationTokenSource();
    const waits = turnstile.wait(unwanted.token);
    unwanted.cancel();
    await expect(waits).rejects.toBe(OperationCancelled);
    await expect(turnstile.wait(unwanted.token)).rejects.toBe(OperationCancelled);

    const passes = Promise.all([1, 2].map(() => turnstile.wait(CancellationToken.None)));
    turnstile.open();
    await expect(passes).resolves.toHaveLength(2);
});
