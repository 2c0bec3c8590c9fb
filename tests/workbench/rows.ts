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
    // Not the headings that stay in sight above rows of theirs: those are copies, with numbers of their own.
    const rows = list.locator('.monaco-list-rows > .monaco-list-row');
    const timeout = 3000;
    const found = new Map<number, T>();
    const top = rows.and(list.locator('[data-index="0"]'));
    // A tooltip that is open over the list would keep the mouse from it.
    await page.mouse.move(0, 0);
    await list.hover({ timeout });
    // However far the wheel is turned at once, the list goes a few rows.
    for (let turns = 1; turns <= 500 && !(await top.isVisible()); turns++) {
        if (!(await list.isVisible())) throw new Error('the list has gone');
        await page.mouse.wheel(0, -1000);
        await page.waitForTimeout(10);
    }
    await top.waitFor({ timeout });
    // Half a list at a time, so that no row is passed over.
    const stride = Math.max(20, ((await list.boundingBox({ timeout }))?.height ?? 0) / 2);
    for (let steps = 0; steps < 500; steps++) {
        const seen = await rows.evaluateAll(read as (rows: Element[]) => T[]);
        if (seen.length === 0 && !(await list.isVisible())) throw new Error('the list has gone');
        for (const row of seen) found.set(row.index, row);
        const last = Math.max(...seen.map(({ index }) => index));
        if ((await rows.and(list.locator(`[data-index="${last}"][data-last-element="true"]`)).count()) > 0) {
            return [...found.values()].sort((a, b) => a.index - b.index);
        }
        await page.mouse.wheel(0, stride);
        await page.waitForTimeout(30);
    }
    throw new Error(`the list does not end after ${found.size} rows`);
}
