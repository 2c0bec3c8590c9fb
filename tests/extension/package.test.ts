import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { layOut, pack } from '../../extension/package.mjs';
import { engines, devDependencies as tools } from '../../package.json';

const folder = mkdtempSync(path.join(tmpdir(), 'layback-package-'));
afterAll(() => rmSync(folder, { recursive: true }));
const manifest = layOut(folder);
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(path.join(folder, name)).isFile())
    .map((name) => name.replaceAll('\\', '/'))
    .sort();

test('the package holds what it needs, and nothing else of the house', () => {
    // One bundle of the command, named after what is in it.
    const named = files.map((name) => name.replace(/command-\w+\.cjs$/, 'command-*.cjs'));
    expect(named).toEqual(
        [
            'CHANGELOG.md',
            'LICENSE',
            'README.md',
            'dist/THIRD-PARTY-NOTICES.txt',
            'dist/extension-browser.js',
            'dist/extension-node.cjs',
            'dist/layback.mjs',
            'dist/layback/command-*.cjs',
            'dist/press/bold.ttf',
            'dist/press/card.js',
            'dist/press/card.js.LEGAL.txt',
            'dist/press/fence.js',
            'dist/press/fonts.LICENSE',
            'dist/press/italic.ttf',
            'dist/press/pdf.cjs',
            'dist/press/pdf.cjs.LEGAL.txt',
            'dist/press/regular.ttf',
            'dist/press/renderer.cjs',
            'dist/press/renderer.wasm',
            'dist/press/views.js',
            'dist/press/workshop.js',
            'dist/preview.css',
            'dist/preview.js',
            'dist/rule-pages.json',
            'dist/server-browser.js',
            'dist/server-node.cjs',
            'extension/language-configuration.json',
            'extension/media/icon.png',
            'extension/media/icon.svg',
            'extension/media/markdown.css',
            'extension/media/spread-dark.svg',
            'extension/media/spread-light.svg',
            'extension/syntaxes/layback.tmLanguage.json',
            'extension/walkthrough/boat.md',
            'extension/walkthrough/clean.md',
            'extension/walkthrough/diagram.svg',
            'extension/walkthrough/findings.md',
            'extension/walkthrough/folder.md',
            'extension/walkthrough/plan.md',
            'package.json',
        ].sort(),
    );
});

test('the .vsix holds just that, and the two lists that its form asks for', async () => {
    const into = mkdtempSync(path.join(tmpdir(), 'layback-vsix-'));
    try {
        const vsix = await pack(into);
        const inside = namesIn(readFileSync(vsix));
        // The form writes these in its own way.
        const asLaidOut = inside
            .filter((name) => name.startsWith('extension/'))
            .map((name) => name.slice('extension/'.length))
            .map(
                (name) =>
                    ({ 'changelog.md': 'CHANGELOG.md', 'LICENSE.txt': 'LICENSE', 'readme.md': 'README.md' })[
                        name
                    ] ?? name,
            );
        expect(asLaidOut.sort()).toEqual(files);
        expect(inside.filter((name) => !name.startsWith('extension/')).sort()).toEqual([
            '[Content_Types].xml',
            'extension.vsixmanifest',
        ]);
        expect(readdirSync(into)).toEqual([path.basename(vsix)]);
    } finally {
        rmSync(into, { recursive: true });
    }
}, 60_000);

/** Names in a zip file, from its central directory (PKWARE's APPNOTE, 4.3.12 and 4.3.16). */
function namesIn(zip: Buffer): string[] {
    const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
    const names: string[] = [];
    let at = zip.readUInt32LE(end + 16);
    for (let left = zip.readUInt16LE(end + 10); left > 0; left--) {
        const [name, extra, comment] = [28, 30, 32].map((offset) => zip.readUInt16LE(at + offset)) as [
            number,
            number,
            number,
        ];
        names.push(zip.toString('utf8', at + 46, at + 46 + name));
        at += 46 + name + extra + comment;
    }
    return names.filter((name) => !name.endsWith('/'));
}

test('what is promised of engines is what it is built and written for', () => {
    const oldestNode = /^>=(\d+\.\d+)\.0$/.exec(engines.node)![1]!;
    const targets = [...readFileSync('build.mjs', 'utf8').matchAll(/'node(\d+\.\d+)'/g)].map(([, of]) => of);
    expect(targets.length).toBeGreaterThan(2);
    expect([...new Set(targets)]).toEqual([oldestNode]);
    // Types know what is there: of nothing newer than the oldest that is promised.
    expect(Number.parseInt(tools['@types/node'], 10)).toBe(Number.parseInt(oldestNode, 10));
    expect(engines.vscode).toBe(`^${tools['@types/vscode']}`);
});

test('its manifest says what an editor has to know, and nothing of how it is made', () => {
    expect(manifest).not.toHaveProperty('scripts');
    expect(manifest).not.toHaveProperty('devDependencies');
    expect(manifest).not.toHaveProperty('type');
    expect(manifest.engines).toEqual({ vscode: '^1.91.0' });
    expect(manifest.capabilities).toEqual({
        untrustedWorkspaces: { supported: true },
        virtualWorkspaces: true,
    });
    for (const entry of [manifest.main, manifest.browser]) {
        expect(files).toContain(String(entry).replace('./', ''));
    }
});

test('no address in what is shipped leads out to the network by itself', () => {
    for (const name of ['dist/preview.js', 'dist/preview.css', 'extension/walkthrough/diagram.svg']) {
        const addresses = [
            ...readFileSync(path.join(folder, name), 'utf8').matchAll(/https?:\/\/[^"'\s)]+/g),
        ];
        const outside = addresses
            .map(([address]) => address)
            .filter((a) => !a.startsWith('http://www.w3.org/'));
        expect(outside).toEqual([]);
    }
});

test('the page in the panel stays small', () => {
    expect(statSync(path.join(folder, 'dist/preview.js')).size).toBeLessThan(120_000);
});
