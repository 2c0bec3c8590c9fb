import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { launchBrowser } from './browser.ts';
import { textEditor } from './editor.ts';
import { layback, project } from './project.ts';
import { type ServerOptions, startServer } from './server.ts';
import { shell } from './shell.ts';
import { step } from './step.ts';

export { soon } from './step.ts';

export interface WorkbenchOptions
    extends Omit<ServerOptions, 'workspace' | 'project' | 'port' | 'extension'> {
    /** Files by path, or a folder; either is laid out afresh, so that a save changes nothing in the repository. */
    workspace: Readonly<Record<string, string>> | string;
    /** This project's own if left out. */
    extension?: ServerOptions['extension'];
}

export type Workbench = Awaited<ReturnType<typeof openWorkbench>>;

/**
 * Opens VS Code in a browser on a workspace of its own, with the extension.
 *
 * ```ts
 * const bench = await openWorkbench({ workspace: { 'plan.spread': text } });
 * afterAll(() => bench.close());
 * test('…', async () => {
 *     await bench.openFile('plan.spread');
 *     await expect.poll(() => bench.squiggles(), soon).toEqual([{ severity: 'error', text: 'sped' }]);
 * });
 * ```
 *
 * What does something waits until it is done, and throws after 15 s at most, with a picture of that moment. What reads
 * something reads it as it stands; `expect.poll(…, soon)` waits for what is expected.
 */
export async function openWorkbench({ workspace, extension = layback, ...options }: WorkbenchOptions) {
    const scratch = await mkdtemp(path.join(tmpdir(), 'workbench-'));
    const folder = path.join(scratch, typeof workspace === 'string' ? path.basename(workspace) : 'plans');
    await layOut(workspace, folder);
    const started = performance.now();
    const server = await startServer({ workspace: folder, extension, project, ...options });
    const browser = await launchBrowser().catch(async (error) => {
        await server.close();
        throw error;
    });
    const launched = performance.now();
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(15_000);
    await page.addInitScript(countWrites);
    const complaints = listen(page);
    const close = async () => {
        await browser.close();
        await server.close();
        await rm(scratch, { recursive: true, force: true });
    };
    const arrive = () => page.locator('.explorer-folders-view .monaco-list').waitFor({ timeout: 45_000 });
    try {
        await step(page, 'open the workbench', async () => {
            await page.goto(server.address);
            await arrive();
        });
    } catch (error) {
        await close();
        throw error;
    }

    return {
        ...shell(page, path.basename(folder)),
        ...textEditor(page),
        /** The workspace on disk. */
        folder,
        address: server.address,
        /** For what the vocabulary has no word for. */
        page,
        /** How long the browser and then the workbench took to come up, ms. */
        times: { browser: launched - started, workbench: performance.now() - launched },
        /** What the page has reported on its console as an error so far, what a policy has blocked among it. */
        complaints: (): readonly string[] => complaints,
        /** Loads the page anew; the editor comes back as it was left, text that is not saved included. */
        reload: () =>
            step(page, 'reload', async () => {
                await page.evaluate(leave);
                await page.reload();
                await arrive();
            }),
        close,
    };
}

function listen(page: Page): string[] {
    const complaints: string[] = [];
    page.on('pageerror', ({ message }) => complaints.push(message));
    page.on('console', (message) => {
        // The editor looks for translations of every extension, and the browser reports each that is not there.
        if (message.type() !== 'error' || message.location().url.endsWith('/package.nls.json')) return;
        complaints.push(`${message.text()} (${message.location().url})`);
    });
    return complaints;
}

// These two run in the page; each stands alone there.

/** Counts what is being written to the browser's storage, for `leave`. */
function countWrites(): void {
    const { transaction } = IDBDatabase.prototype;
    const counted = window as unknown as { writing: number };
    counted.writing = 0;
    IDBDatabase.prototype.transaction = function (...given) {
        const made = transaction.apply(this, given);
        if (made.mode !== 'readwrite') return made;
        counted.writing++;
        for (const end of ['complete', 'abort']) made.addEventListener(end, () => counted.writing--);
        return made;
    };
}

/**
 * Turns to another window, and waits until the editor has noted everything, as it can write nothing any more when it
 * is closed: a text that is not saved a second after it was typed, what is open when the window loses the focus.
 */
async function leave(): Promise<void> {
    const counted = window as unknown as { writing: number };
    const pass = (time: number) => new Promise((resolve) => setTimeout(resolve, time));
    await pass(1200);
    document.hasFocus = () => false;
    window.dispatchEvent(new Event('blur'));
    do await pass(200);
    while (counted.writing > 0);
}

async function layOut(workspace: WorkbenchOptions['workspace'], folder: string): Promise<void> {
    if (typeof workspace === 'string') {
        await cp(workspace, folder, { recursive: true });
        return;
    }
    await mkdir(folder);
    for (const [name, text] of Object.entries(workspace)) {
        const file = path.join(folder, name);
        await mkdir(path.dirname(file), { recursive: true });
        await writeFile(file, text);
    }
}
