import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of this project; found from here and from the bundle that run.mjs makes alike. */
export const project = ((): string => {
    let folder = path.dirname(fileURLToPath(import.meta.url));
    while (!existsSync(path.join(folder, 'package.json'))) folder = path.dirname(folder);
    return folder;
})();

/** The extension of this project, and what of its folder the editor may ask for: what its package ships. */
export const layback = {
    folder: project,
    parts: [
        'package.json',
        'README.md',
        'CHANGELOG.md',
        'dist',
        'extension/language-configuration.json',
        'extension/media',
        'extension/syntaxes',
        'extension/walkthrough',
    ],
} as const;
