import path from 'node:path';
import type { FrameLocator, Page } from 'playwright-core';
import type { Theme } from './page.ts';
import { rowsOf } from './rows.ts';
import { exactly, notifications, picture, step } from './step.ts';

export interface Problem {
    severity: 'error' | 'warning' | 'info';
    message: string;
    source: string;
    code: string;
    /** From 1. */
    line: number;
    column: number;
}

/** What one can do in the window around the editor, and read from it. */
export function shell(page: Page, folder: string) {
    const within = <T>(what: string, act: () => Promise<T>) => step(page, what, act);
    const input = page.locator('.quick-input-widget:visible input.input');
    const rows = page.locator('.quick-input-list .monaco-list-row');
    /** Takes from the list that is open the row with exactly this label, and this beside it; false if the list closes meanwhile. */
    const take = async (text: string, label: string, beside?: string): Promise<boolean> => {
        const labelled = rows.filter({ has: page.locator('.label-name', { hasText: exactly(label) }) });
        const told = page.locator('.label-description', { hasText: exactly(beside ?? '') });
        const row = (beside ? labelled.filter({ has: told }) : labelled).first();
        const none = rows.filter({ hasText: /^No matching (commands|results)/ });
        try {
            await input.fill(text, { timeout: 3000 });
            await Promise.race([
                row.or(none).first().waitFor({ timeout: 5000 }),
                input.waitFor({ state: 'hidden' }).catch(() => undefined),
            ]);
            if ((await input.count()) === 0) return false;
            await row.click({ timeout: (await none.count()) > 0 ? 300 : 5000 });
        } catch {
            if ((await input.count()) === 0) return false;
            const offered = await rows.locator('.quick-input-list-label .label-name').allInnerTexts();
            throw new Error(`"${label}" is not offered, but: ${offered.join(', ') || 'nothing'}`);
        }
        // Gone rather than the whole list closed: a command may ask a question of its own.
        await row.waitFor({ state: 'hidden' });
        return true;
    };
    const pick = async (keys: string, text: string, label: string, beside?: string) => {
        // A web view that has just opened takes the focus when it is ready; keys get lost, and an open list closes.
        for (let tries = 1; tries <= 10; tries++) {
            await page.keyboard.press(keys);
            const opened = await input.waitFor({ timeout: 1000 }).then(
                () => true,
                () => false,
            );
            try {
                if (opened && (await take(text, label, beside))) return;
            } catch (fault) {
                // A list of another command may have come up in its place: away with it, and from the start.
                if (tries >= 3) throw fault;
                await page.keyboard.press('Escape');
            }
        }
        throw new Error(`the editor does not answer to ${keys}`);
    };
    const command = (name: string) => pick('F1', `>${name}`, name);

    return {
        /** Opens a file of the workspace, and waits for its text and the cursor in it. */
        openFile: (file: string) =>
            within(`open ${file}`, async () => {
                // Files that were open before are offered at once, one of the same name elsewhere among them.
                const below = path.posix.dirname(file);
                const beside = below === '.' ? undefined : below;
                await pick('ControlOrMeta+p', `/${folder}/${file}`, path.posix.basename(file), beside);
                const opened = page.locator(
                    `.editor-group-container.active [data-uri$="/${encodeURI(file)}"]`,
                );
                await opened.locator('.view-line').first().waitFor();
                await opened.locator('textarea.inputarea').first().focus();
            }),

        /** Runs a command by the name under which the palette lists it, its category included. */
        command: (name: string) => within(`run "${name}"`, () => command(name)),

        /** Answers a question that a command asks by taking what is so labelled. */
        choose: (label: string) =>
            within(`choose "${label}"`, async () => {
                await input.waitFor();
                if (!(await take(label, label))) throw new Error('the list closes');
            }),

        /** Gives up what a command asks, once it is asked: an Escape before that would give up nothing. */
        decline: (label: string) =>
            within(`decline "${label}"`, async () => {
                await rows
                    .filter({ has: page.locator('.label-name', { hasText: exactly(label) }) })
                    .first()
                    .waitFor();
                await input.press('Escape');
                await input.waitFor({ state: 'hidden' });
            }),

        /** Answers a question that a command asks in words; without words, with those that stand there. */
        answer: (text?: string) =>
            within(`answer "${text ?? 'as it stands'}"`, async () => {
                await input.waitFor();
                if (text !== undefined) await input.fill(text);
                await input.press('Enter');
            }),

        /** Saves under the name that is offered, once the list of what stands there already is up. */
        saveAs: (name: RegExp) =>
            within(`save as ${name}`, async () => {
                await input.waitFor();
                await page.waitForFunction(
                    ([source, flags]) =>
                        [...document.querySelectorAll<HTMLInputElement>('.quick-input-widget input')].some(
                            ({ value }) => new RegExp(source!, flags).test(value),
                        ),
                    [name.source, name.flags],
                );
                await rows.first().waitFor();
                await input.press('Enter');
                await input.waitFor({ state: 'hidden' });
            }),

        /** What the Problems view lists, whichever files it concerns. */
        problems: (): Promise<Problem[]> =>
            within('read the problems', async () => {
                const list = page.locator('.markers-panel .monaco-list');
                if (!(await list.isVisible())) await command('Problems: Focus on Problems View');
                await page.locator('.markers-panel').waitFor();
                if (!(await list.isVisible())) return [];
                try {
                    const rows = await rowsOf(list, (seen) =>
                        seen.map((row) => ({
                            index: Number(row.dataset.index),
                            level: row.getAttribute('aria-level'),
                            label: row.getAttribute('aria-label') ?? '',
                            code: row.querySelector('.marker-code, .code-link')?.textContent ?? '',
                        })),
                    );
                    return rows
                        .filter(({ level }) => level === '2')
                        .map(({ label, code }) => problem(label, code));
                } catch (error) {
                    // With the last problem the list goes, which may be while it is read.
                    if (await list.isVisible()) throw error;
                    return [];
                }
            }),

        notifications: () => notifications(page),

        /** Whether the file in front has changes that are not saved. */
        dirty: async () =>
            (await page.locator('.editor-group-container.active .tab.active.dirty').count()) > 0,

        /** The names of the open tabs. */
        tabs: () => page.locator('.tab .monaco-icon-label .label-name').allInnerTexts(),

        /** The page inside the web view that shows. */
        webview: (): FrameLocator =>
            page.frameLocator('iframe.webview.ready:visible').frameLocator('iframe#active-frame'),

        /** Changes the colour theme, as a user does. */
        theme: (theme: Theme) =>
            within(`change the theme to ${theme}`, async () => {
                const [label, mark] = themeLabels[theme];
                const chosen = async () => {
                    await command('Preferences: Color Theme');
                    return take(label, label);
                };
                if (!(await chosen()) && !(await chosen())) throw new Error('the list of themes closes');
                await page.locator(`.monaco-workbench.${mark}`).waitFor();
            }),

        /** Takes a picture to artefacts/workbench/, and returns its path. */
        screenshot: (name: string) => picture(page, name),
    };
}

const themeLabels: Readonly<Record<Theme, readonly [label: string, mark: string]>> = {
    light: ['Light Modern', 'vs'],
    dark: ['Dark Modern', 'vs-dark'],
    hc: ['Dark High Contrast', 'hc-black'],
    'hc-light': ['Light High Contrast', 'hc-light'],
};

function problem(label: string, code: string): Problem {
    const parts =
        /^(Error|Warning|Info): (.*) at line (\d+) and character (\d+)\.(?: This problem has references to \d+ locations\.)?(?: generated by (.*))?$/s.exec(
            label,
        );
    if (!parts) throw new Error(`The Problems view words a row in an unknown way: ${label}`);
    const [, severity = '', message = '', line, column, source = ''] = parts;
    return {
        severity: severity.toLowerCase() as Problem['severity'],
        message,
        source,
        code,
        line: Number(line),
        column: Number(column),
    };
}
