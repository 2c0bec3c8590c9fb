import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { asModule, pure } from './as-modules.mjs';

const root = join(import.meta.dirname, '..');

/*
 * What the packages underneath the server bring along and it never runs: other ways of deciding between alternatives,
 * checks of grammars, notebooks, comments as another language writes them. Each is replaced by something of the same
 * names that fails when it is used, so that what is in use after all says so in the first test that gets there. It can
 * be made, since the toolkit makes every service when a client arrives; it can do nothing.
 */

/** Modules all of whose exports are left out. */
export const unused = [
    // Our own strategy decides by one token (syntax/lookahead.ts); this one also brings a library of collections.
    'chevrotain-allstar/lib/all-star-lookahead.js',
    // The grammar is checked in development mode by a test; what is shipped takes it as it is.
    'chevrotain/lib/src/parse/grammar/checks.js',
    // Ours speak as a crew does (syntax/messages.ts).
    'chevrotain/lib/src/parse/errors_public.js',
    'chevrotain/lib/src/parse/cst/cst_visitor.js',
    // Names are found by reach (names/scope.ts).
    'langium/lib/references/scope-computation.js',
    'langium/lib/references/scope-provider.js',
    'langium/lib/lsp/workspace-symbol-provider.js',
    // Ours come from the lexer (resolve/documentation.ts).
    'langium/lib/documentation/jsdoc.js',
    'langium/lib/documentation/documentation-provider.js',
    // For parsers in another thread, which none of ours is.
    'langium/lib/serializer/hydrator.js',
    // Findings go their own ways (editor/findings.ts).
    'langium/lib/validation/document-validator.js',
    'vscode-languageserver/lib/common/textDocuments.js',
    'vscode-languageserver/lib/node/files.js',
    ...['callHierarchy', 'colorProvider', 'inlineCompletion', 'inlineValue', 'moniker', 'notebook'].map(
        (feature) => `vscode-languageserver-protocol/lib/common/protocol.${feature}.js`,
    ),
    'vscode-languageserver-protocol/lib/common/protocol.textDocumentContent.js',
];

export const features = [
    'callHierarchy',
    'inlineCompletion',
    'inlineValue',
    'moniker',
    'notebook',
    'textDocumentContent',
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
        // What looks for faults in the patterns of tokens; like the grammar they are taken as they are.
        onLoad({ filter: /\/chevrotain\/lib\/src\/scan\/lexer\.js$/ }, ({ path }) => ({
            contents: `${gone}\n${readFileSync(path, 'utf8').replace(
                /^export function (find\w+|validatePatterns|perform\w*Checks)\([\s\S]*?^\}$/gm,
                'export { gone as $1 };',
            )}`,
            loader: 'js',
        }));
        onLoad({ filter: /\/langium\/lib\/lsp\/normalized-text-documents\.js$/ }, ({ path }) => ({
            contents: `${gone}\n${readFileSync(path, 'utf8').replace(
                /^export class NormalizedNotebookDocuments \{[\s\S]*?^\}$/m,
                'export { gone as NormalizedNotebookDocuments };',
            )}`,
            loader: 'js',
        }));
        onLoad({ filter: /\/language\/src\/.*\.ts$/ }, ({ path }) => ({
            contents: gathered(readFileSync(path, 'utf8')),
            loader: 'ts',
        }));
        onLoad({ filter: /\/node_modules\/string-width\/index\.js$/ }, () => ({
            contents: roughWidth,
            loader: 'js',
        }));
        // These run when the package is read: each would add to what a connection can do.
        onLoad(
            { filter: new RegExp(`/vscode-languageserver/lib/common/(${features.join('|')})\\.js$`) },
            ({ path }) => ({
                contents: hollow(readFileSync(path, 'utf8')).replace(
                    /^export \{ gone as (\w+Feature) \};$/gm,
                    'export const $1 = (Base) => Base;',
                ),
                loader: 'js',
            }),
        );
        // Last: what is left of these packages can then be left out name by name.
        onLoad({ filter: new RegExp(`/node_modules/(${protocol.join('|')})/lib/.*\\.js$`) }, ({ path }) => {
            const contents = asModule(readFileSync(path, 'utf8'));
            if (contents === undefined) return undefined;
            // Which way a message goes and what a client declares for it: for documentation made from these files.
            const told = contents.replace(/^ {4}\w+\.(messageDirection|capabilities) = .*;\n/gm, '');
            return { contents: told, loader: 'js' };
        });
    },
};

/** What the toolkit's entry hands on whole, and where each of it is: asked there, the rest of it is left out. */
const gathering = {
    AstUtils: 'utils/ast-utils.js',
    CstUtils: 'utils/cst-utils.js',
    GrammarAST: 'languages/generated/ast.js',
    GrammarUtils: 'utils/grammar-utils.js',
};

function gathered(source) {
    return source.replace(/^import \{([^}]*)\} from 'langium';$/m, (_, names) => {
        const list = names.split(',').map((name) => name.trim());
        const asked = list.filter((name) => name in gathering);
        const path = (name) => JSON.stringify(join(root, 'node_modules/langium/lib', gathering[name]));
        return [
            `import { ${list.filter((name) => !asked.includes(name)).join(', ')} } from 'langium';`,
            ...asked.map((name) => `import * as ${name} from ${path(name)};`),
        ].join(' ');
    });
}

const protocol = ['vscode-jsonrpc', 'vscode-languageserver', 'vscode-languageserver-protocol'];

/**
 * An editor shows a table in whatever font it has. Letters that are two columns wide in most are told by their script,
 * without a list of them all.
 */
const roughWidth = `
const wide = /\\p{Emoji_Presentation}|\\p{Script=Han}|\\p{Script=Hiragana}|\\p{Script=Katakana}|\\p{Script=Hangul}/u;
const letters = new Intl.Segmenter();
export default (text) => {
    let width = 0;
    for (const { segment } of letters.segment(text)) width += wide.test(segment) ? 2 : 1;
    return width;
};`;

/** The same names, and nothing behind them. */
function hollow(source) {
    const names = (pattern) => [...new Set([...source.matchAll(pattern)].map(([, name]) => name))];
    const exported = names(/^export (?:async )?(?:class|function\*?|const|let|var) (\w+)/gm);
    const assigned = names(/\bexports\.(\w+) = /g);
    return [gone, ...[...exported, ...assigned].map((name) => `export { gone as ${name} };`)].join('\n');
}

/** The protocol's types that some text speaks of, without what tells whether something is one: nobody doubts it. */
function slim(source) {
    const spoken = wordsOf(['language/src', ...speakers.map((path) => `node_modules/${path}/lib`)]);
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
        )
        .replace(
            /^export var (\w+);\n\(function \(\1\) \{\n([\s\S]*?)^\}\)\(\1 \|\| \(\1 = \{\}\)\);$/gm,
            (_, type, body) => (spoken.has(type) ? pure(type, body) : `export { gone as ${type} };`),
        );
    return `${gone}\n${rest}`;
}

const speakers = ['langium', 'vscode-jsonrpc', 'vscode-languageserver', 'vscode-languageserver-protocol'];

/** Every word of the sources in some folders. */
function wordsOf(folders) {
    const words = new Set();
    for (const folder of folders) {
        for (const name of readdirSync(join(root, folder), { recursive: true })) {
            if (!/\.(js|ts)$/.test(name) || name.endsWith('.d.ts') || name.startsWith('grammar/')) continue;
            for (const [word] of readFileSync(join(root, folder, name), 'utf8').matchAll(/\w+/g))
                words.add(word);
        }
    }
    return words;
}

const gone =
    "function gone() { if (!new.target) throw new Error('This was left out of the bundle (left-out.mjs).'); }";

/** Those that the other packages ask about. */
const asked = new Set(['DocumentUri', 'URI', 'WorkspaceFolder', 'integer', 'uinteger', 'Position', 'Range']);
