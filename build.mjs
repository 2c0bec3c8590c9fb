// Bundles everything that starts often: unbundled, the language alone takes a second to load.
import {
    chmodSync,
    copyFileSync,
    existsSync,
    mkdirSync,
    readdirSync,
    readFileSync,
    rmSync,
    statSync,
    writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';
import { leftOut } from './language/left-out.mjs';
import { notices, packageOf, packagesIn } from './language/notices.mjs';

const root = dirname(fileURLToPath(import.meta.url));
const inRoot = (path) => join(root, path);

/** Built-in plans, rule pages and what `layback new` writes are text; fonts and the renderer are bytes. */
const loader = {
    '.spread': 'text',
    '.md': 'text',
    '.svg': 'text',
    '.css': 'text',
    '.wasm': 'binary',
    '.ttf': 'binary',
};

const common = {
    absWorkingDir: root,
    bundle: true,
    minify: true,
    // Names of functions stay, so that what a fault report says can be understood.
    keepNames: false,
    sourcemap: false,
    legalComments: 'linked',
    logLevel: 'warning',
    metafile: true,
    // A name that nothing exports would be found out by the first user who gets there.
    logOverride: { 'import-is-undefined': 'error' },
    target: ['node20.20', 'chrome120', 'firefox121', 'safari17'],
    define: { 'process.env.NODE_ENV': '"production"' },
    loader,
};

/** Packages that something was bundled of. */
const bundled = new Set();

async function build(options) {
    const built = await esbuild.build(options);
    for (const folder of packagesIn(built.metafile)) bundled.add(folder);
    return built;
}

/** Pages of the rules, and of the codes that are none, as one module, `layback:rule-pages`: name → Markdown. */
const rulePages = {
    name: 'rule pages',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^layback:rule-pages$/ }, () => ({ path: 'rule-pages', namespace: 'layback' }));
        onLoad({ filter: /^rule-pages$/, namespace: 'layback' }, () => ({
            contents: readPages(),
            loader: 'json',
        }));
    },
};

function readPages() {
    const rules = inRoot('language/src/rules');
    const pages = readdirSync(rules, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .flatMap(({ name }) =>
            readdirSync(join(rules, name))
                .filter((file) => file.endsWith('.md'))
                .map((file) => [basename(file, '.md'), readFileSync(join(rules, name, file), 'utf8')]),
        );
    return JSON.stringify(Object.fromEntries(pages));
}

/** The command's start: without the editor protocol's packages, and without what its parser never uses. */
const lean = {
    name: 'lean start',
    setup({ onResolve }) {
        onResolve({ filter: /^vscode-languageserver(-protocol|-types)?$/ }, () => ({
            path: inRoot('language/src/command/protocol-stub.ts'),
        }));
        onResolve({ filter: /^node:child_process$/ }, ({ importer }) =>
            importer.includes('commander') ? { path: 'child_process', namespace: 'nothing' } : undefined,
        );
    },
};
const nothing = {
    name: 'nothing',
    setup({ onLoad }) {
        onLoad({ filter: /.*/, namespace: 'nothing' }, () => ({
            contents: 'module.exports = {};',
            loader: 'js',
        }));
    },
};

/**
 * The press for PDF, without what reads compressed faces, locks a file or breaks lines: our faces are plain, a card is
 * for all on deck, and its lines are broken already. The last two cost more at a start than a page does.
 */
const pressed = {
    name: 'plain press',
    setup({ onResolve }) {
        onResolve({ filter: /^(brotli|@noble\/ciphers)\/|^linebreak$/ }, ({ path }) => ({
            path,
            namespace: 'nothing',
        }));
    },
};

/** Tables of letters are unpacked by the machine, where there is one beneath. */
const unpacked = {
    name: 'native inflate',
    setup({ onResolve, onLoad }) {
        onResolve({ filter: /^tiny-inflate$/ }, ({ path }) => ({ path, namespace: 'native' }));
        onLoad({ filter: /.*/, namespace: 'native' }, () => ({
            contents: `const { inflateRawSync } = require('node:zlib');
                module.exports = (packed, into) => (into.set(inflateRawSync(packed)), into);`,
            loader: 'js',
        }));
    },
};

/** The command proper, named after its content: what the engine keeps of it must never serve another one. */
async function buildCommand() {
    const { metafile } = await build({
        ...common,
        entryPoints: { command: 'language/src/command/program.ts' },
        outdir: 'dist/layback',
        entryNames: '[name]-[hash]',
        outExtension: { '.js': '.cjs' },
        platform: 'node',
        format: 'cjs',
        target: 'node20.20',
        define: { ...common.define, 'import.meta.url': 'bundleUrl' },
        plugins: [lean, nothing, rulePages],
    });
    const bundle = Object.keys(metafile.outputs).find((path) => path.endsWith('.cjs'));
    spellOut(inRoot(bundle));
    await build({
        ...common,
        entryPoints: ['language/src/command/main.ts'],
        outfile: 'dist/layback.mjs',
        platform: 'node',
        format: 'esm',
        target: 'node20.20',
        define: { ...common.define, COMMAND_BUNDLE: JSON.stringify(`./layback/${basename(bundle)}`) },
    });
    chmodSync(inRoot('dist/layback.mjs'), 0o755);
    // As large as all the rest, and needed by one verb: on its own, so that the others do not carry it.
    await build({
        ...common,
        entryPoints: ['language/src/drawing/card/pdf.ts'],
        outfile: 'dist/press/pdf.cjs',
        platform: 'node',
        format: 'cjs',
        target: 'node20.20',
        define: { ...common.define, 'import.meta.url': 'bundleUrl' },
        plugins: [pressed, unpacked, nothing],
    });
    // Last, so that a command that starts meanwhile finds what it asks for.
    for (const name of readdirSync(inRoot('dist/layback'))) {
        if (!name.startsWith(basename(bundle))) rmSync(inRoot(join('dist/layback', name)));
    }
    console.error(`dist/layback.mjs  ${kilobytes('dist/layback.mjs')} + ${kilobytes(bundle)}`);
}

/** The command takes its bundle byte by byte; the bundler writes characters out in texts, but not in patterns. */
function spellOut(path) {
    const code = readFileSync(path, 'utf8');
    const plain = code.replace(
        /[^\0-\x7f]/g,
        (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
    );
    writeFileSync(path, plain);
}

const node = (entry, outfile, more) => ({
    entry,
    options: {
        entryPoints: [entry],
        outfile,
        platform: 'node',
        format: 'cjs',
        target: 'node20.20',
        external: ['vscode'],
        define: { ...common.define, 'import.meta.dirname': '__dirname' },
        ...more,
    },
});

const browser = (entry, outfile, format, more) => ({
    entry,
    options: {
        entryPoints: [entry],
        outfile,
        platform: 'browser',
        format,
        external: ['vscode'],
        ...more,
    },
});

/** A server that has a disk finds the renderer's own code beside the renderer. */
const rendererBeside = {
    name: 'renderer beside',
    setup({ onResolve }) {
        onResolve({ filter: /^@resvg\/resvg-wasm$/ }, () => ({
            path: './press/renderer.cjs',
            external: true,
        }));
    },
};

const targets = {
    press: [node('node_modules/@resvg/resvg-wasm/index.mjs', 'dist/press/renderer.cjs')],
    // What makes cards for whoever has no command: on its own, since a server starts more often than it prints.
    card: [
        browser('language/src/drawing/card/printer.ts', 'dist/press/card.js', 'iife', {
            globalName: 'laybackCard',
            // Where it lies, the library asks for the sake of archives alone, which a card is not for.
            define: { ...common.define, 'import.meta.url': '"file:///nowhere/"' },
            plugins: [pressed, nothing],
        }),
    ],
    // What draws plans in notes: all of the language, read anew beside a server that keeps its own files.
    fence: [
        browser('language/src/editor/fence-drawing.ts', 'dist/press/fence.js', 'iife', {
            globalName: 'laybackFence',
        }),
    ],
    views: [
        browser('language/src/editor/shown.ts', 'dist/press/views.js', 'iife', {
            globalName: 'laybackViews',
            plugins: [leftOut],
        }),
    ],
    // What a server does now and then: lenses of days, refactorings.
    workshop: [
        browser('language/src/editor/workshop/part.ts', 'dist/press/workshop.js', 'iife', {
            globalName: 'laybackWorkshop',
            plugins: [leftOut],
        }),
    ],
    server: [
        node('language/src/server-node.ts', 'dist/server-node.cjs', { plugins: [leftOut, rendererBeside] }),
        browser('language/src/server-browser.ts', 'dist/server-browser.js', 'iife', { plugins: [leftOut] }),
    ],
    extension: [
        node('extension/src/extension-node.ts', 'dist/extension-node.cjs'),
        browser('extension/src/extension-browser.ts', 'dist/extension-browser.js', 'cjs'),
        browser('extension/view/preview.ts', 'dist/preview.js', 'iife'),
    ],
};

const arimo = 'node_modules/@expo-google-fonts/arimo';

/** What is laid beside the bundles as it is, by its name in dist/. */
const beside = {
    // Schemas of what the command prints as JSON.
    'findings.schema.json': 'language/src/reports/findings.schema.json',
    'figures.schema.json': 'language/src/reports/figures.schema.json',
    'comparison.schema.json': 'language/src/reports/comparison.schema.json',
    'preview.css': 'extension/view/preview.css',
    // What turns a drawing into pixels.
    'press/renderer.wasm': 'node_modules/@resvg/resvg-wasm/index_bg.wasm',
    'press/regular.ttf': `${arimo}/400Regular/Arimo_400Regular.ttf`,
    'press/bold.ttf': `${arimo}/700Bold/Arimo_700Bold.ttf`,
    'press/italic.ttf': `${arimo}/400Regular_Italic/Arimo_400Regular_Italic.ttf`,
    'press/fonts.LICENSE': `${arimo}/LICENSE_FONT`,
};

/** What `layback new` writes, by where it goes: the first plan into a folder of its own. */
const starter = [
    'README.md',
    'boat.spread',
    'tackle.spread',
    'methods.spread',
    'rules.spread',
    'first.spread',
].map((name) => [
    `starter/${name === 'first.spread' ? 'plans/first.spread' : name}`,
    readFileSync(inRoot(`language/src/command/starter/${name}`), 'utf8'),
]);

/** The documents that a team reads, by the name that an editor opens them under. */
const documents = [
    ...readdirSync(inRoot('language/docs')).map((name) => [
        `docs/${basename(name, '.md')}`,
        `language/docs/${name}`,
    ]),
    ['docs/reference', 'language/REFERENCE.md'],
    ['docs/computed', 'language/FIGURES.md'],
    ['docs/rules', 'language/src/rules/README.md'],
];

/** A document as it is opened without the repository: its links lead to other pages, or are words. */
function detached([name, path]) {
    const addresses = new Map(documents.map(([other, source]) => [source, `layback:/${other}.md`]));
    const text = readFileSync(inRoot(path), 'utf8').replace(
        /\[([^\]]+)\]\((?!https?:|#)([^)#\s]+)(#[^)\s]+)?\)/g,
        (_, words, target, anchor = '') => {
            const source = join(dirname(path), target).replaceAll('\\', '/');
            const [, rule] = /^language\/src\/rules\/[\w-]+\/([\w-]+)\.md$/.exec(source) ?? [];
            const address = rule === undefined ? addresses.get(source) : `layback:/rules/${rule}.md`;
            return address === undefined ? words : `[${words}](${address}${anchor})`;
        },
    );
    return [name, text];
}

// `node build.mjs command press server extension`, or any of them; all where none is named.
const wanted = process.argv.length > 2 ? process.argv.slice(2) : ['command', ...Object.keys(targets)];
mkdirSync(inRoot('dist'), { recursive: true });
if (wanted.includes('command')) await buildCommand();
for (const name of wanted) {
    for (const { entry, options } of targets[name] ?? []) {
        if (!existsSync(inRoot(entry))) continue;
        await build({ ...common, ...options });
        console.error(`${options.outfile}  ${kilobytes(options.outfile)}`);
    }
}
for (const [name, source] of Object.entries(beside)) {
    mkdirSync(inRoot(join('dist', dirname(name))), { recursive: true });
    copyFileSync(inRoot(source), inRoot(join('dist', name)));
    if (source.startsWith('node_modules/')) bundled.add(packageOf(source));
}
// A part of the build knows a part of the packages.
if (process.argv.length === 2) writeFileSync(inRoot('dist/THIRD-PARTY-NOTICES.txt'), notices(bundled));
// The servers read it when the first page or document is opened, or a team's folder started.
writeFileSync(
    inRoot('dist/rule-pages.json'),
    JSON.stringify({
        ...JSON.parse(readPages()),
        ...Object.fromEntries([...starter, ...documents.map(detached)]),
    }),
);

// What an earlier build made and this one does not would be shipped for ever.
if (process.argv.length === 2) {
    const made = new Set([
        ...Object.values(targets).flatMap((all) =>
            all.flatMap(({ options: { outfile } }) => [outfile, `${outfile}.LEGAL.txt`]),
        ),
        ...Object.keys(beside).map((name) => `dist/${name}`),
        ...[
            'dist/THIRD-PARTY-NOTICES.txt',
            'dist/rule-pages.json',
            'dist/layback.mjs',
            'dist/layback',
            'dist/press',
            'dist/press/pdf.cjs',
        ],
    ]);
    for (const folder of ['dist', 'dist/press'])
        for (const name of readdirSync(inRoot(folder)).map((each) => `${folder}/${each}`))
            if (!made.has(name) && !made.has(name.replace(/\.LEGAL\.txt$/, '')))
                rmSync(inRoot(name), { recursive: true });
}

function kilobytes(path) {
    return `${Math.ceil(statSync(inRoot(path)).size / 1024)} kB`;
}
