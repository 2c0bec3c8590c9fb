// Makes the extension's package, a .vsix, from what is built, without asking anybody outside this machine.
import {
    cpSync,
    existsSync,
    mkdirSync,
    mkdtempSync,
    readFileSync,
    rmSync,
    statSync,
    writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createVSIX } from '@vscode/vsce';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/** All that a user of the extension gets beside its manifest. What is not named here does not leave the house. */
export const parts = [
    'CHANGELOG.md',
    'LICENSE',
    'README.md',
    'dist/THIRD-PARTY-NOTICES.txt',
    'dist/extension-browser.js',
    'dist/extension-node.cjs',
    'dist/layback',
    'dist/layback.mjs',
    'dist/press',
    'dist/preview.css',
    'dist/preview.js',
    'dist/rule-pages.json',
    'dist/server-browser.js',
    'dist/server-node.cjs',
    'extension/language-configuration.json',
    'extension/media',
    'extension/syntaxes',
    'extension/walkthrough',
];

/** What the manifest of the extension takes over from that of the project. */
const said = [
    ...['name', 'displayName', 'description', 'version', 'publisher', 'license', 'engines', 'icon'],
    ...['categories', 'keywords', 'main', 'browser', 'activationEvents', 'capabilities', 'contributes'],
];

/** Lays out the extension as it is installed, in a folder that is made afresh. */
export function layOut(folder) {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    const project = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const manifest = Object.fromEntries(said.map((key) => [key, project[key]]));
    // No `type`: editors read the browser's bundle as the module that its manifest says it is.
    manifest.engines = { vscode: project.engines.vscode };
    writeFileSync(join(folder, 'package.json'), `${JSON.stringify(manifest, undefined, 4)}\n`);
    for (const part of parts) {
        const source = join(root, part);
        if (!existsSync(source)) throw new Error(`There is no ${part}: npm run build makes it.`);
        cpSync(source, join(folder, part), { recursive: true, filter: isShipped });
    }
    return manifest;
}

/** What an engine has compiled on this machine is of no use on another one. */
function isShipped(path) {
    return !path.endsWith('.cache');
}

/**
 * @param into  the folder that takes it
 * @returns where the package is
 */
export async function pack(into = root) {
    const folder = mkdtempSync(join(tmpdir(), 'layback-extension-'));
    const { name, version } = layOut(folder);
    const packagePath = join(into, `${name}-${version}.vsix`);
    await createVSIX({
        cwd: folder,
        packagePath,
        dependencies: false,
        allowMissingRepository: true,
        rewriteRelativeLinks: false,
    });
    rmSync(folder, { recursive: true });
    return packagePath;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
    const made = await pack();
    console.error(`${made}  ${Math.ceil(statSync(made).size / 1024)} kB`);
}
