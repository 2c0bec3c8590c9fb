import { Deferred, OperationCancelled } from 'langium';
import type { CancellationToken } from 'vscode-languageserver';

/** Where requests wait until it is worth looking again whether they can be answered. */
export class Turnstile {
    private next = new Deferred<void>();

    /** Lets all through that wait now. */
    open(): void {
        const now = this.next;
        this.next = new Deferred();
        now.resolve();
    }

    /** @throws `OperationCancelled` as soon as the request is */
    async wait(token: CancellationToken): Promise<void> {
        if (token.isCancellationRequested) throw OperationCancelled;
        const cancelled = new Deferred<void>();
        const listening = token.onCancellationRequested(() => cancelled.reject(OperationCancelled));
        try {
            await Promise.race([this.next.promise, cancelled.promise]);
        } finally {
            listening.dispose();
        }
    }
}
