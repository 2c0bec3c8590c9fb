import { readFileSync } from 'node:fs';

/*
 * What the packages underneath the server bring along and it never runs: other ways of deciding between alternatives,
 * checks of grammars, notebooks, comments as another language writes them. Each is replaced by something of the same
 * names that fails when it is used, so that what is in use after all says so in the first test that gets there. It can
 * be made, since the toolkit makes every service when a client arrives; it can do nothing.
 */

/** Modules all of whose exports are left out. */
const unused = [
    // Our own strategy decides by one token (syntax/lookahead.ts); this one also brings a library of collections.
    'chevrotain-allstar/lib/all-star-lookahead.js',
    // The grammar is checked in development mode by a test; what is shipped takes it as it is.
    'chevrotain/lib/src/parse/grammar/checks.js',
    // Ours speak as a crew does (syntax/messages.ts).
    'chevrotain/lib/src/parse/errors_public.js',
    // Ours come from the lexer (resolve/documentation.ts).
    'langium/lib/documentation/jsdoc.js',
    'langium/lib/documentation/documentation-provider.js',
    // For parsers in another thread, which none of ours is.
    'langium/lib/serializer/hydrator.js',
    // Findings go their own ways (editor/findings.ts).
    'langium/lib/validation/document-validator.js',
    'vscode-languageserver/lib/common/textDocuments.js',
    'vscode-languageserver/lib/node/files.js',
    'vscode-languageserver-protocol/lib/common/protocol.notebook.js',
];

/** For the bundler: leaves out what the server never uses. */
export const leftOut = {
    name: 'left out',
    setup({ onLoad }) {
        const paths = unused.map((path) => path.replaceAll('.', '\\.')).join('|');
        onLoad({ filter: new RegExp(`/node_modules/(${paths})$`) }, ({ path }) => ({
            contents: hollow(readFileSync(path, 'utf8')),
            loader: 'js',
        }));
        onLoad({ filter: /\/vscode-languageserver-types\/lib\/esm\/main\.js$/ }, ({ path }) => ({
            contents: slim(readFileSync(path, 'utf8')),
            loader: 'js',
        }));
        // The one that runs when the package is read: it would add notebooks to what a connection can do.
        onLoad({ filter: /\/vscode-languageserver\/lib\/common\/notebook\.js$/ }, () => ({
            contents: 'exports.NotebookSyncFeature = (Base) => Base; exports.NotebookDocuments = undefined;',
            loader: 'js',
        }));
    },
};

/** The same names, and nothing behind them. */
function hollow(source) {
    const names = (pattern) => [...new Set([...source.matchAll(pattern)].map(([, name]) => name))];
    const exported = names(/^export (?:async )?(?:class|function\*?|const|let|var) (\w+)/gm);
    const assigned = names(/\bexports\.(\w+) = /g);
    return [
        gone,
        ...exported.map((name) => `export { gone as ${name} };`),
        ...assigned.map((name) => `exports.${name} = gone;`),
    ].join('\n');
}

/** The protocol's types without what tells whether something is one, which nobody doubts here, and texts of old. */
function slim(source) {
    const rest = source
        .replace(/^ {4}function is\(value\) \{\n[\s\S]*?^ {4}\}\n {4}(\w+)\.is = is;\n/gm, (whole, type) =>
            asked.has(type) ? whole : `    ${type}.is = gone;\n`,
        )
        .replace(
            /^class TextEditChangeImpl \{[\s\S]*?^export class WorkspaceChange \{[\s\S]*?^\}/m,
            'export { gone as WorkspaceChange };',
        )
        .replace(
            /^export var TextDocument;[\s\S]*?^class FullTextDocument \{[\s\S]*?^\}/m,
            'export { gone as TextDocument };',
        );
    return `${gone}\n${rest}`;
}

const gone =
    "function gone() { if (!new.target) throw new Error('This was left out of the bundle (left-out.mjs).'); }";

/** Those that the other packages ask about. */
const asked = new Set(['DocumentUri', 'URI', 'WorkspaceFolder', 'integer', 'uinteger', 'Position', 'Range']);
