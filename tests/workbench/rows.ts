import type { Locator } from 'playwright-core';

/** A row of a list, with its place in the list from 0. */
export interface Row {
    index: number;
}

/**
 * What stands in the rows of a list of the editor, from first to last.
 *
 * Such a list keeps only the rows in sight; this scrolls through it as a mouse wheel does.
 *
 * @param read  called in the page with the rows in sight; must not refer to anything outside itself
 * @throws if the end does not come in sight, as when the list closes meanwhile
 */
export async function rowsOf<T extends Row>(list: Locator, read: (rows: HTMLElement[]) => T[]): Promise<T[]> {
    const page = list.page();
    const rows = list.locator('.monaco-list-row');
    const timeout = 3000;
    const found = new Map<number, T>();
    await list.hover({ timeout });
    await page.mouse.wheel(0, -100_000);
    await list.locator('.monaco-list-row[data-index="0"]').waitFor({ timeout });
    for (let steps = 0; steps < 500; steps++) {
        const seen = await rows.evaluateAll(read as (rows: Element[]) => T[]);
        for (const row of seen) found.set(row.index, row);
        const last = Math.max(...seen.map(({ index }) => index));
        if (
            (await list.locator(`.monaco-list-row[data-index="${last}"][data-last-element="true"]`).count()) >
            0
        ) {
            return [...found.values()].sort((a, b) => a.index - b.index);
        }
        await page.mouse.wheel(0, 60);
        await page.waitForTimeout(30);
    }
    throw new Error(`the list does not end after ${found.size} rows`);
}
