import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
// @ts-expect-error The scripts that try changes are plain JavaScript: they run without a build.
import { listed, pageOf } from './listed.mjs';
// @ts-expect-error See above.
import { reasonFor } from './reasons.mjs';

interface Tried {
    readonly changes: number;
    readonly noticed: number;
    readonly survivors: readonly { readonly was: string; readonly became: string; readonly kind: string }[];
}

const root = new URL('../../', import.meta.url);
const list = Object.entries(listed(root.pathname) as Record<string, Tried>);

test('the list names files that are there', () => {
    expect(list.length).toBeGreaterThan(40);
    for (const [path] of list) expect(existsSync(new URL(path, root)), path).toBe(true);
});

test('whatever was tried was noticed or is listed, and few are listed without a reason', () => {
    let [tried, bare] = [0, 0];
    for (const [path, { changes, noticed, survivors }] of list) {
        expect(changes - noticed, path).toBe(survivors.length);
        tried += changes;
        bare += survivors.filter((one) => reasonFor(path, one) === undefined).length;
    }
    expect(bare / tried).toBeLessThan(0.06);
});

test('of a hundred changes to the rules, and of a hundred to the physics, eighty-five are noticed', () => {
    for (const room of ['/rules/', '/physics/']) {
        const there = list.filter(([path]) => path.includes(room));
        const sum = (key: 'changes' | 'noticed') => there.reduce((total, [, one]) => total + one[key], 0);
        expect(sum('noticed') / sum('changes'), room).toBeGreaterThanOrEqual(0.85);
    }
});

test('the page says what the list says', () => {
    // The formatter sets tables and ticks its own way.
    const words = (text: string) => text.replace(/[\s`:-]+/g, '');
    const page = readFileSync(new URL('SURVIVORS.md', import.meta.url), 'utf8');
    expect(words(page)).toBe(words(pageOf(listed(root.pathname), root.pathname)));
});
