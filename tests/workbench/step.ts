import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';

/** Bounds for `expect.poll`, for what the editor shows a moment later. */
export const soon = { timeout: 15_000, interval: 100 } as const;

const artefacts = path.resolve('artefacts/workbench');

/** Takes a picture of the page to artefacts/workbench/, and returns its path. */
export async function picture(page: Page, name: string): Promise<string> {
    await mkdir(artefacts, { recursive: true });
    const file = path.join(artefacts, `${name}.png`);
    await page.screenshot({ path: file, animations: 'disabled' });
    return file;
}

/**
 * Does one thing that a user would do.
 *
 * @throws within the page's time limit, and then says what was being done, what the editor had to say, and where a
 *         picture of that moment is
 */
export async function step<T>(page: Page, what: string, act: () => Promise<T>): Promise<T> {
    try {
        return await act();
    } catch (error) {
        const reason = (error as Error).message.split('\n')[0];
        const said = await notifications(page).catch(() => []);
        const seen = await picture(page, `failed-${what.replace(/\W+/g, '-').slice(0, 60)}`).catch(
            () => 'no picture',
        );
        const lines = [
            `${what}: ${reason}`,
            ...said.map((message) => `the editor says: ${message}`),
            `see ${seen}`,
        ];
        throw new Error(lines.join('\n  '), { cause: error });
    }
}

/** The messages that stand in the lower right corner. */
export function notifications(page: Page): Promise<string[]> {
    return page.locator('.notification-toast .notification-list-item-message').allInnerTexts();
}

/** What reads exactly so, for `hasText`. */
export function exactly(text: string): RegExp {
    return new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
}
