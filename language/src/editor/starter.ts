import boat from '../command/starter/boat.spread';
import first from '../command/starter/first.spread';
import methods from '../command/starter/methods.spread';
import readme from '../command/starter/README.md';
import rules from '../command/starter/rules.spread';
import tackle from '../command/starter/tackle.spread';
import type { StarterFile } from './protocol.ts';

/** What `layback new` writes, for an editor that has no command at hand. */
export const starterFiles: readonly StarterFile[] = [
    { path: 'README.md', text: readme },
    { path: 'boat.spread', text: boat },
    { path: 'tackle.spread', text: tackle },
    { path: 'methods.spread', text: methods },
    { path: 'rules.spread', text: rules },
    { path: 'plans/first.spread', text: first },
];
