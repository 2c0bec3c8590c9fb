// Prints how long the extension takes to be read and to wake up, ms. The editor around it is a stand-in that answers
// anything at once, so what is measured is the extension's own.
import Module, { createRequire } from 'node:module';
import { join } from 'node:path';

const anything = new Proxy(function stand() {}, {
    get: (_, key) => (key === Symbol.toPrimitive ? () => '' : key === 'then' ? undefined : anything),
    set: () => true,
    apply: () => anything,
    construct: () => anything,
});
const load = Module._load;
Module._load = (request, ...rest) => (request === 'vscode' ? anything : load(request, ...rest));

const extension = join(import.meta.dirname, '../../dist/extension-node.cjs');
const context = { subscriptions: [], extensionUri: anything, asAbsolutePath: (path) => path };
const began = performance.now();
const { activate } = createRequire(import.meta.url)(extension);
const read = performance.now();
activate(context);
const awake = performance.now();
if (context.subscriptions.length < 5) throw new Error('The extension did not wake up.');
process.stdout.write(`${JSON.stringify({ read: read - began, activate: awake - read })}\n`);
process.exit();
