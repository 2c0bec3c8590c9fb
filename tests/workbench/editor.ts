import type { Locator, Page } from 'playwright-core';
import { rowsOf } from './rows.ts';
import { exactly, step } from './step.ts';

export interface Squiggle {
    severity: 'error' | 'warning' | 'info' | 'hint';
    /** The text that is underlined, as it stands on one line. */
    text: string;
}

/** What one can do in the text editor that shows, and read from it. Only lines in sight are read. */
export function textEditor(page: Page) {
    /** The one in the active group; with a panel active beside it, the first that shows. */
    const editor = async (): Promise<Locator> => {
        const shown = '.editor-instance .monaco-editor[data-uri]:visible';
        const active = page.locator(`.editor-group-container.active ${shown}`).first();
        return (await active.count()) > 0 ? active : page.locator(shown).first();
    };
    const focus = async () => {
        await (await editor()).locator('textarea.inputarea').first().focus();
    };
    const press = async (keys: string) => {
        await focus();
        await page.keyboard.press(keys);
    };
    const within = <T>(what: string, act: () => Promise<T>) => step(page, what, act);

    const openFixes = async (): Promise<Locator> => {
        const menu = page.locator('.action-widget');
        // Asked too early, the editor answers that there are none.
        for (const end = Date.now() + 10_000; Date.now() < end; ) {
            await press('ControlOrMeta+.');
            const opened = menu.locator('.monaco-list-row.action').first().waitFor({ timeout: 1500 });
            if (
                await opened.then(
                    () => true,
                    () => false,
                )
            )
                return menu;
            await page.keyboard.press('Escape');
        }
        throw new Error('no quick fix is offered at the cursor');
    };

    /** Goes down the rows of a list that has the keyboard, and takes the one that is named. */
    const walkTo = async (rows: Locator, part: string, name: string) => {
        const wanted = rows
            .filter({ has: page.locator(part, { hasText: exactly(name) }) })
            .and(page.locator('.focused'));
        for (let left = Number(await rows.first().getAttribute('aria-setsize')); left >= 0; left--) {
            if ((await wanted.count()) > 0) return page.keyboard.press('Enter');
            await page.keyboard.press('ArrowDown');
        }
        throw new Error('it is not among what is offered');
    };

    return {
        /** The lines in sight; what is shown between the words, such as inlay hints, is part of them. */
        async text(): Promise<string> {
            return (await (await editor()).evaluate(readLines)).join('\n');
        },

        /** Selects the n-th place, from 1, at which the text stands in the file, and brings it in sight. */
        select: (text: string, nth = 1) =>
            within(`select "${text}"`, async () => {
                const find = page.locator('.find-widget.visible');
                await press('ControlOrMeta+Home');
                // A web view that is just being filled may take the keyboard between two keys.
                for (let tries = 1; tries <= 5 && !(await find.isVisible()); tries++) {
                    await press('ControlOrMeta+f');
                    await find.waitFor({ timeout: 1000 * tries }).catch(() => undefined);
                }
                const input = find.locator('.find-part textarea').first();
                const count = (reading: RegExp) => find.locator('.matchesCount', { hasText: reading });
                // In a narrow editor the count stands there, but is not shown.
                const there = { state: 'attached' } as const;
                // An empty search first: the count of an earlier one must not be taken for this one's.
                await input.fill('');
                await count(/^No results$/).waitFor(there);
                await input.fill(text);
                await count(/^\d+ of \d+$/)
                    .waitFor({ ...there, timeout: 5000 })
                    .catch(() => {
                        throw new Error('it does not stand in the file');
                    });
                const [, of] = ((await count(/of/).textContent()) ?? '').split(' of ').map(Number);
                if (!of || of < nth) throw new Error(`it stands ${of} times in the file, not ${nth}`);
                for (let at = 2; at <= nth; at++) {
                    await input.press('Enter');
                    await count(new RegExp(`^${at} of`)).waitFor(there);
                }
                // The first Escape may go to a tooltip that happens to be open under the mouse.
                for (let tries = 1; tries <= 3 && (await find.isVisible()); tries++) {
                    await page.keyboard.press('Escape');
                    await find.waitFor({ state: 'hidden', timeout: 1000 }).catch(() => undefined);
                }
                await find.waitFor({ state: 'hidden' });
            }),

        /** Types at the cursor, over what is selected, with all that the editor does while one types. */
        type: (text: string) =>
            within(`type "${text}"`, async () => {
                await focus();
                for (const line of text.split(/(?<=\n)/)) {
                    await page.keyboard.type(line);
                    // Where the lines above are not coloured yet, which the editor does when it is idle, it neither
                    // closes a brace nor indents. Nobody else types so fast.
                    if (line.endsWith('\n')) await page.evaluate(idle);
                }
            }),

        /** Presses keys in the editor, as `ArrowRight`, `ControlOrMeta+Enter`. */
        press: (keys: string) => within(`press ${keys}`, () => press(keys)),

        undo: () => within('undo', () => press('ControlOrMeta+z')),

        /** What is underlined in sight, from top to bottom. */
        async squiggles(): Promise<Squiggle[]> {
            return (await editor()).evaluate(readSquiggles);
        },

        /** The text of the hover that opens over the n-th place in sight where the text stands. */
        hoverOver: (text: string, nth = 1): Promise<string> =>
            within(`hover over "${text}"`, async () => {
                const hover = page.locator('.monaco-hover:not(.hidden):not(.workbench-hover)');
                const opened = hover.filter({ hasNotText: 'Loading...' });
                // A lens that comes late moves every line below it, away from under the mouse.
                for (let tries = 1; tries <= 5 && (tries === 1 || !(await opened.isVisible())); tries++) {
                    await page.mouse.move(0, 0);
                    await hover.waitFor({ state: 'hidden' });
                    const place = await (await editor()).evaluate(locate, { text, nth });
                    if (!place) throw new Error('it is not in sight');
                    await page.mouse.move(place.x - 2, place.y);
                    await page.mouse.move(place.x, place.y);
                    await opened.waitFor({ timeout: 1000 * tries }).catch(() => undefined);
                }
                await opened.waitFor();
                return (await hover.allInnerTexts()).join('\n');
            }),

        /** The labels that completion offers at the cursor; none if it says that there are none. */
        complete: (): Promise<string[]> =>
            within('complete', async () => {
                await press('Control+Space');
                const widget = page.locator('.suggest-widget.visible');
                await widget
                    .locator('.monaco-list-row, .message:visible:not(:text("Loading"))')
                    .first()
                    .waitFor();
                if ((await widget.locator('.monaco-list-row').count()) === 0) return [];
                const offered = await rowsOf(widget.locator('.monaco-list').first(), (seen) =>
                    seen.map((row) => ({
                        index: Number(row.dataset.index),
                        label: row.querySelector('.label-name')?.textContent ?? '',
                    })),
                );
                return offered.map(({ label }) => label);
            }),

        /** Takes what `complete` offered under this label. */
        accept: (label: string) =>
            within(`accept "${label}"`, async () => {
                const widget = page.locator('.suggest-widget.visible');
                await walkTo(widget.locator('.monaco-list-row'), '.label-name', label);
                await widget.waitFor({ state: 'hidden' });
            }),

        /** The titles of the quick fixes offered at the cursor. */
        quickFixes: (): Promise<string[]> =>
            within('list quick fixes', async () => {
                const menu = await openFixes();
                const titles = await menu.locator('.monaco-list-row.action .title').allInnerTexts();
                await page.keyboard.press('Escape');
                return titles;
            }),

        quickFix: (title: string) =>
            within(`quick fix "${title}"`, async () => {
                const menu = await openFixes();
                await walkTo(menu.locator('.monaco-list-row'), '.title', title);
                await menu.waitFor({ state: 'hidden' });
            }),

        /** Renames what the cursor is on, in every file where it is used. */
        rename: (name: string) =>
            within(`rename to "${name}"`, async () => {
                await press('F2');
                const box = page.locator('.rename-box input.rename-input');
                await box.waitFor();
                await box.fill(name);
                await page.keyboard.press('Enter');
                await box.waitFor({ state: 'hidden' });
            }),

        /** Saves, and waits until the tab says so. */
        save: () =>
            within('save', async () => {
                await press('ControlOrMeta+s');
                await page
                    .locator('.editor-group-container.active .tab.active:not(.dirty)')
                    .first()
                    .waitFor();
            }),

        /** Clicks the lens with this title that stands closest above a text in sight. */
        clickLens: (title: string, below: string) =>
            within(`click "${title}" above "${below}"`, async () => {
                const lenses = page.locator('.codelens-decoration a:visible', { hasText: exactly(title) });
                for (const end = Date.now() + 10_000; Date.now() < end; await page.waitForTimeout(100)) {
                    const place = await (await editor()).evaluate(locate, { text: below, nth: 1 });
                    const boxes = await lenses.evaluateAll((all) =>
                        all.map((lens) => lens.getBoundingClientRect().toJSON() as DOMRect),
                    );
                    const [nearest] = boxes
                        .filter(({ bottom }) => place && bottom <= place.y && bottom > place.y - 40)
                        .sort((a, b) => b.y - a.y);
                    if (!nearest) continue;
                    await page.mouse.click(nearest.x + nearest.width / 2, nearest.y + nearest.height / 2);
                    return;
                }
                throw new Error('there is no such lens');
            }),

        /** The titles of the code lenses in sight. */
        async lenses(): Promise<string[]> {
            return (await editor()).locator('.codelens-decoration a').allInnerTexts();
        },
    };
}

// What follows runs in the page; each function stands alone there.

function idle(): Promise<void> {
    return new Promise((resolve) => {
        requestIdleCallback(() => resolve());
    });
}

function readLines(editor: Element): string[] {
    return [...editor.querySelectorAll<HTMLElement>('.view-line')]
        .sort((a, b) => a.offsetTop - b.offsetTop)
        .map((line) => (line.textContent ?? '').replaceAll('\u00a0', ' '));
}

function readSquiggles(editor: Element): Squiggle[] {
    const lines = [...editor.querySelectorAll('.view-line')];
    const marks = [...editor.querySelectorAll('.view-overlays [class*="squiggly-"]')];
    const found = marks.flatMap((mark) => {
        const severity = /squiggly-(error|warning|info|hint)/.exec(mark.className)?.[1];
        if (!severity) return [];
        const under = mark.getBoundingClientRect();
        let text = '';
        for (const line of lines) {
            const box = line.getBoundingClientRect();
            if (Math.abs(box.top - under.top) > 2) continue;
            const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
            for (let node = walker.nextNode(); node; node = walker.nextNode()) {
                for (let at = 0; at < (node.nodeValue ?? '').length; at++) {
                    const range = document.createRange();
                    range.setStart(node, at);
                    range.setEnd(node, at + 1);
                    const { left, width } = range.getBoundingClientRect();
                    const middle = left + width / 2;
                    if (middle > under.left && middle < under.right) text += node.nodeValue?.[at];
                }
            }
        }
        return [{ severity, text: text.replaceAll('\u00a0', ' '), top: under.top, left: under.left }];
    });
    found.sort((a, b) => a.top - b.top || a.left - b.left);
    return found.map(({ severity, text }) => ({ severity, text })) as Squiggle[];
}

function locate(
    editor: Element,
    { text, nth }: { text: string; nth: number },
): { x: number; y: number } | undefined {
    const lines = [...editor.querySelectorAll<HTMLElement>('.view-line')].sort(
        (a, b) => a.offsetTop - b.offsetTop,
    );
    let count = 0;
    for (const line of lines) {
        const written = (line.textContent ?? '').replaceAll('\u00a0', ' ');
        for (let at = written.indexOf(text); at >= 0; at = written.indexOf(text, at + 1)) {
            if (++count < nth) continue;
            const middle = at + Math.floor(text.length / 2);
            const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
            let before = 0;
            for (let node = walker.nextNode(); node; node = walker.nextNode()) {
                const length = (node.nodeValue ?? '').length;
                if (middle < before + length) {
                    const range = document.createRange();
                    range.setStart(node, middle - before);
                    range.setEnd(node, middle - before + 1);
                    const box = range.getBoundingClientRect();
                    return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
                }
                before += length;
            }
        }
    }
    return undefined;
}
