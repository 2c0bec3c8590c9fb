import type { Browser } from 'playwright-core';
import { expect, test } from 'vitest';
import { launchBrowser, type Way } from './browser.ts';

const opens: Way = { name: 'one that starts', launch: async () => ({ version: () => '1' }) as Browser };
const fails = (name: string, message: string): Way => ({
    name,
    launch: () => Promise.reject(new Error(message)),
});

test('the first browser that starts is taken', async () => {
    const never = fails('never', 'must not be tried');
    expect((await launchBrowser([opens, never])).version()).toBe('1');
    expect((await launchBrowser([fails('packaged', 'not for this platform'), opens, never])).version()).toBe(
        '1',
    );
});

test('where none starts, each says why, in a line', async () => {
    const ways = [
        fails('packaged', 'not for this platform'),
        fails('an installed chrome', 'not found\nat /opt'),
    ];
    await expect(launchBrowser(ways)).rejects.toThrow(
        'No browser starts.\n  packaged: not for this platform\n  an installed chrome: not found',
    );
});
