#!/usr/bin/env node
import { type CommandBundle, loadCommand } from './start.ts';

let command: CommandBundle | undefined;
try {
    command = loadCommand();
} catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    process.stderr.write(`layback is not whole (${reason}). Install it again.\n`);
    process.exitCode = 2;
}
await command?.run(process.argv.slice(2));
