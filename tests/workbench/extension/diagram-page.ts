import { expect } from 'vitest';
import { soon, type Workbench } from '../driver.ts';

/** What stands in the diagram that shows, as it stands. */
export function diagramOf(bench: () => Workbench) {
    const view = () => bench().webview();
    const svg = () => view().locator('#stage > svg');
    const sight = async (): Promise<number[]> =>
        ((await svg().getAttribute('viewBox')) ?? '').split(' ').map((text) => Math.round(Number(text)));
    return {
        view,
        /** The plan that is drawn; undefined where none is. */
        plan: async (): Promise<string | undefined> =>
            (await svg().count()) > 0 ? ((await svg().getAttribute('data-plan')) ?? undefined) : undefined,
        /** What part of the page is in sight: x, y, width, height. */
        sight,
        /** The paper that it is drawn on, as its drawing gives it. */
        sheet: async (): Promise<string> => {
            const paper = svg().locator('rect').first();
            return `${await paper.getAttribute('width')} × ${await paper.getAttribute('height')}`;
        },
        /** Where one looks and how large, whatever the size of the panel: the middle of what is in sight, a pixel's worth. */
        eye: async (): Promise<number[]> => {
            const [x = 0, y = 0, width = 0, height = 0] = await sight();
            const box = await view().locator('#stage').boundingBox();
            return [x + width / 2, y + height / 2]
                .map(Math.round)
                .concat(Number((width / (box?.width ?? 1)).toFixed(2)));
        },
        /** How long a metre of water is on the screen, px. */
        metre: async (): Promise<number> => {
            const [, , width = 0] = await sight();
            const box = await view().locator('#stage').boundingBox();
            return (Number(await svg().getAttribute('data-per-metre')) * (box?.width ?? 0)) / width;
        },
        /** Where on the screen the middle of an element is, px: its edges have strokes, as wide as the sheet's scale asks. */
        placeOf: async (id: string) => {
            const box = await view().locator(`g[data-id="${id}"]`).boundingBox();
            return box && { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) };
        },
        banner: async (): Promise<string> => {
            const banner = view().locator('#banner');
            return (await banner.isVisible()) ? (await banner.allInnerTexts()).join() : '';
        },
        /** The positions of the lures that are marked. */
        marked: (): Promise<string[]> =>
            view()
                .locator('g.marked[data-role="lure"]')
                .evaluateAll((all) =>
                    all.map((each) => (each.getAttribute('data-id') ?? '').replace('lure:', '')),
                ),
        rings: (): Promise<number> => view().locator('.ring').count(),
        /** What is written beside a position's lure. */
        label: (position: string): Promise<string> =>
            view()
                .locator(`g[data-id="note:${position}"]`)
                .evaluate((label) =>
                    [...label.querySelectorAll('text')].map(({ textContent }) => textContent).join(' | '),
                ),
        paper: (): Promise<string | null> => svg().locator('rect').first().getAttribute('fill'),
        words: async (): Promise<string> => (await view().locator('#words').allInnerTexts()).join(),
    };
}

/** Line and column of the caret, as the status bar says them, from 1. */
export async function caretOf(bench: Workbench): Promise<string> {
    return (await bench.page.locator('[id="status.editor.selection"]').allInnerTexts()).join();
}

/** Closes every tab; what was changed is saved first, so that nothing is asked. */
export async function closeAll(bench: Workbench): Promise<void> {
    await bench.command('File: Save All Files');
    await expect.poll(() => bench.page.locator('.tab.dirty').count(), soon).toBe(0);
    await bench.command('View: Close All Editors');
    await expect.poll(() => bench.tabs(), soon).toEqual([]);
}
