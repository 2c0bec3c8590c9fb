import { fileURLToPath } from 'node:url';
import { loadCompiled } from './compiled.ts';
import { hurry } from './pace.ts';

/** The bundle beside this file that holds the command; the build names it after its content. */
declare const COMMAND_BUNDLE: string;

export interface CommandBundle {
    readonly run: (args: readonly string[]) => Promise<void>;
}

/** Loads the command so that a short check is over soon: nothing is optimised for a start (see pace.ts). */
export function loadCommand(): CommandBundle {
    hurry();
    return loadCompiled(fileURLToPath(new URL(COMMAND_BUNDLE, import.meta.url))) as CommandBundle;
}
