import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { build, type Plugin } from 'esbuild';
import { expect, test } from 'vitest';
// @ts-expect-error: a part of the build, without types
import { leftOut } from '../../language/left-out.mjs';

const root = path.join(import.meta.dirname, '../..');
const told = readFileSync(path.join(root, 'dist/THIRD-PARTY-NOTICES.txt'), 'utf8');
const [, ...entries] = told.split(`\n\n${'-'.repeat(80)}\n\n`);
const title = /^(?<name>\S+) (?<version>\d\S*) \((?<licence>[^)]+)\)\n\n/;

/** The press for cards, as it is built: without what reads compressed faces, locks a file or breaks lines. */
const plainPress: Plugin = {
    name: 'plain press',
    setup({ onResolve }) {
        onResolve({ filter: /^(brotli|@noble\/ciphers)\/|^linebreak$/ }, ({ path }) => ({
            path,
            external: true,
        }));
    },
};

/** What each thing that is shipped starts from. */
const starts = [
    ['language/src/command/program.ts', 'node', []],
    ['language/src/drawing/card/pdf.ts', 'node', [plainPress]],
    ['language/src/drawing/card/printer.ts', 'browser', [plainPress]],
    ['language/src/editor/fence-drawing.ts', 'browser', []],
    ['language/src/server-node.ts', 'node', [leftOut]],
    ['language/src/server-browser.ts', 'browser', [leftOut]],
    ['extension/src/extension-node.ts', 'node', []],
    ['extension/src/extension-browser.ts', 'browser', []],
    ['extension/view/preview.ts', 'browser', []],
] as const;

/** Name and version of each package whose code a plain bundle of ours takes in. */
async function packagesOf([entry, platform, plugins]: (typeof starts)[number]): Promise<string[]> {
    const { metafile } = await build({
        entryPoints: [path.join(root, entry)],
        absWorkingDir: root,
        bundle: true,
        write: false,
        metafile: true,
        platform,
        format: 'esm',
        outdir: 'nowhere',
        external: ['vscode', 'layback:*'],
        loader: { '.spread': 'text', '.md': 'text', '.svg': 'text', '.css': 'text', '.wasm': 'empty' },
        plugins: [...plugins],
        logLevel: 'silent',
    });
    return Object.values(metafile.outputs).flatMap(({ inputs }) =>
        Object.entries(inputs).flatMap(([input, { bytesInOutput }]) => {
            const folder = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
            if (!folder || bytesInOutput === 0) return [];
            const manifest = JSON.parse(readFileSync(path.join(root, folder, 'package.json'), 'utf8'));
            return [`${manifest.name} ${manifest.version}`];
        }),
    );
}

test('every package that is bundled is named, and no other', async () => {
    const taken = new Set((await Promise.all(starts.map(packagesOf))).flat());
    const font = JSON.parse(
        readFileSync(path.join(root, 'node_modules/@expo-google-fonts/arimo/package.json'), 'utf8'),
    );
    // The faces are laid beside the bundles.
    taken.add(`${font.name} ${font.version}`);
    const named = entries.map((entry) => title.exec(entry)?.groups).map((of) => `${of?.name} ${of?.version}`);
    expect(named.sort()).toEqual([...taken].sort());
});

test('each on terms that allow it to be passed on, with their text and whose it is', () => {
    // The one without a text of its own says where its source and its terms are.
    const terms = /^(MIT|MIT AND OFL-1\.1|ISC|Apache-2\.0|BlueOak-1\.0\.0|MPL-2\.0)$/;
    for (const entry of entries) {
        expect(title.exec(entry)?.groups?.licence).toMatch(terms);
        expect(entry.replace(title, '').length).toBeGreaterThan(100);
        expect(entry).toMatch(/copyright|Contributors|https:\/\/mozilla\.org\/MPL\/2\.0\//i);
    }
});

test('the package for npm holds the command and what it reads, and nothing else of the house', () => {
    const [packed] = JSON.parse(
        execFileSync('npm', ['pack', '--dry-run', '--ignore-scripts', '--json'], {
            cwd: root,
            encoding: 'utf8',
            stdio: ['ignore', 'pipe', 'ignore'],
            shell: process.platform === 'win32',
        }),
    ) as { readonly files: readonly { readonly path: string }[] }[];
    const files = packed!.files.map((file) => file.path.replace(/command-\w+\.cjs$/, 'command-*.cjs'));
    expect(files.sort()).toEqual(
        [
            'CHANGELOG.md',
            'LICENSE',
            'README.md',
            'dist/THIRD-PARTY-NOTICES.txt',
            'dist/comparison.schema.json',
            'dist/figures.schema.json',
            'dist/findings.schema.json',
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
            'dist/rule-pages.json',
            'dist/server-node.cjs',
            'package.json',
        ].sort(),
    );
    expect(files.filter((file) => !file.includes('*') && !existsSync(path.join(root, file)))).toEqual([]);
});
