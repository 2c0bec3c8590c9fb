import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** One way to come by a browser. */
export interface Way {
    name: string;
    launch(): Promise<Browser>;
}

/**
 * Starts the browser that comes with the packages; where that does not run, an installed Chrome or Edge.
 *
 * Nothing is switched off that guards a page in a real browser: same-origin rules, site isolation and content-security
 * policies hold as they do for a user.
 *
 * @throws if no way leads to a browser, with what each one said
 */
export async function launchBrowser(ways: readonly Way[] = usualWays): Promise<Browser> {
    const refusals: string[] = [];
    for (const { name, launch } of ways) {
        try {
            return await launch();
        } catch (error) {
            refusals.push(`${name}: ${(error as Error).message.split('\n')[0]}`);
        }
    }
    throw new Error(`No browser starts.\n${refusals.map((refusal) => `  ${refusal}`).join('\n')}`);
}

const usualWays: readonly Way[] = [
    {
        name: 'the packaged Chromium (Linux, x64)',
        async launch() {
            if (process.platform !== 'linux' || process.arch !== 'x64')
                throw new Error('not for this platform');
            // In a container the tests may run as root, for whom Chromium's sandbox does not start.
            return chromium.launch({ executablePath: await unpackedChromium(), chromiumSandbox: false });
        },
    },
    ...['chrome', 'msedge'].map((channel) => ({
        name: `an installed ${channel}`,
        launch: () => chromium.launch({ channel }),
    })),
];

const require = createRequire(import.meta.url);

/**
 * Unpacks the browser once, beside the packages.
 *
 * The package itself unpacks to fixed names in the folder for temporary files and trusts whatever stands there, a half
 * of it included. Here it unpacks to a folder of its own that gets its name when it is whole: test files that start at
 * the same time, and a run that was broken off, leave either all of it or nothing.
 */
async function unpackedChromium(): Promise<string> {
    const manifest = path.join(path.dirname(require.resolve('@sparticuz/chromium')), '../../package.json');
    const { version } = require(manifest) as { version: string };
    const cache = path.resolve('node_modules/.cache');
    const home = path.join(cache, `chromium-${version}`);
    const binary = path.join(home, 'chromium');
    if (existsSync(binary)) return binary;

    await mkdir(cache, { recursive: true });
    const fresh = await mkdtemp(path.join(cache, 'unpacking-'));
    const temporary = process.env.TMPDIR;
    process.env.TMPDIR = fresh;
    try {
        const packed = await import('@sparticuz/chromium');
        await packed.default.executablePath();
    } finally {
        if (temporary === undefined) delete process.env.TMPDIR;
        else process.env.TMPDIR = temporary;
    }
    // Someone else may have been faster, in which case the name is taken.
    await rename(fresh, home).catch(() => rm(fresh, { recursive: true }));
    return binary;
}
