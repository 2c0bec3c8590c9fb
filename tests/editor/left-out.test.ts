import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
// @ts-expect-error: a part of the build, without types
import { asModule } from '../../language/as-modules.mjs';
// @ts-expect-error: a part of the build, without types
import { features, unused } from '../../language/left-out.mjs';

const root = join(import.meta.dirname, '../..');

test.each(unused as string[])('%s is still there to be left out of the servers', (path) => {
    expect(existsSync(join(root, 'node_modules', path))).toBe(true);
});

test.each(features as string[])('a connection can still do without %s', (feature) => {
    const source = readFileSync(
        join(root, `node_modules/vscode-languageserver/lib/common/${feature}.js`),
        'utf8',
    );
    expect(source.match(/exports\.\w+Feature = (?!void 0)/)).not.toBeNull();
});

test('the protocol can be written as modules, save what finds packages on a disk', () => {
    const packages = ['vscode-jsonrpc', 'vscode-languageserver', 'vscode-languageserver-protocol'];
    const modules = packages.flatMap((name) =>
        readdirSync(join(root, 'node_modules', name, 'lib'), { recursive: true, encoding: 'utf8' })
            .filter((path) => path.endsWith('.js'))
            .map((path) => join(name, 'lib', path)),
    );
    const unsaid = modules.filter(
        (path) => asModule(readFileSync(join(root, 'node_modules', path), 'utf8')) === undefined,
    );
    expect(unsaid).toEqual([
        'vscode-languageserver/lib/node/files.js',
        'vscode-languageserver/lib/node/resolve.js',
    ]);
});

test.each(['server-node.cjs', 'server-browser.js'])('what is left out of %s is not in it', (name) => {
    const bundle = readFileSync(join(root, 'dist', name), 'utf8');
    expect(bundle).toContain('This was left out of the bundle');
    // A word of each: of the other way to decide, of faults in grammars and in patterns, of notebooks, of who calls whom.
    for (const word of [
        'Ambiguous Alternatives Detected',
        'can never be matched',
        'notebookDocument/didOpen',
        'callHierarchy/incomingCalls',
    ])
        expect(bundle).not.toContain(word);
});
