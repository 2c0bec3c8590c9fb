// Whose work is bundled, and on what terms: the text that goes out with the bundles.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** The folders of the packages that a bundle holds something of. */
export function packagesIn({ outputs }) {
    const paths = Object.values(outputs).flatMap(({ inputs }) =>
        Object.entries(inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
    );
    return new Set(paths.filter((path) => path.includes('node_modules/')).map(packageOf));
}

/** The folder of the package that a file belongs to; some packages have a manifest without a name inside. */
export function packageOf(path) {
    for (let folder = dirname(join(root, path)); folder !== root; folder = dirname(folder)) {
        const manifest = join(folder, 'package.json');
        if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).version) return folder;
    }
    throw new Error(`${path} belongs to no package.`);
}

/**
 * What is to be said of every package: name, version, licence and its text.
 *
 * @param folders  of the packages
 */
export function notices(folders) {
    const all = new Map([...folders].map(aboutPackage).map((about) => [about.title, about.text]));
    const each = [...all].sort(([a], [b]) => (a < b ? -1 : 1)).map(([title, text]) => `${title}\n\n${text}`);
    return `${[opening, ...each].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`;
}

const opening = `Layback is published under the licence in LICENSE. It holds work of others, whole or in part, on the terms
that follow.`;

function aboutPackage(folder) {
    const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const files = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice|thirdparty)/i.test(name));
    const text = files.map((name) => readFileSync(join(folder, name), 'utf8').trim()).join('\n\n');
    const licence = manifest.license ?? (/\bMIT License\b/i.test(text) ? 'MIT' : undefined);
    if (!licence) throw new Error(`Nothing says on what terms ${manifest.name} may be used.`);
    return {
        title: `${manifest.name} ${manifest.version} (${licence})`,
        text: text || withoutText(manifest, licence),
    };
}

/** Some say their licence by its name alone: then its usual text stands in, or the place where it is. */
function withoutText({ name, author, repository }, licence) {
    const source = (repository?.url ?? repository)
        ?.replace(/^git\+|\.git$/g, '')
        .replace(/^git@([^:]+):/, 'https://$1/');
    if (licence === 'MIT' && author) return mit.replace('{author}', author.name ?? author);
    if (licence === 'MPL-2.0' && source)
        return `Used unchanged. Its source is at ${source}; the terms of the Mozilla Public License 2.0 are at\nhttps://mozilla.org/MPL/2.0/.`;
    throw new Error(`${name} comes without the text of its licence, ${licence}.`);
}

const mit = `Copyright (c) {author}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;
