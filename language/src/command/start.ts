import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';
import { hurry } from './pace.ts';

/** The bundle beside this file that holds the command; the build names it after its content. */
declare const COMMAND_BUNDLE: string;

export interface CommandBundle {
    readonly run: (args: readonly string[]) => Promise<void>;
}

/**
 * Loads the command so that a short check is over soon. Most of its time is the engine's, getting to know half a
 * megabyte of code, so:
 *
 * - its text, which the build keeps to ASCII, is taken byte by byte;
 * - nothing is optimised for a start (see pace.ts);
 * - what the engine compiled is kept beside the bundle after a first check, where that may be written, and taken
 *   from there afterwards. The name ties it to this very bundle, engine and machine, a checksum to what was
 *   written: the engine itself would trust a damaged one, and crash.
 *
 * Either is only faster: where a flag or a file is missing, all the same happens.
 */
export function loadCommand(): CommandBundle {
    hurry();
    const path = fileURLToPath(new URL(COMMAND_BUNDLE, import.meta.url));
    const kept = `${path}.${process.versions.v8}-${process.platform}-${process.arch}.cache`;
    const cachedData = read(kept);
    const script = new Script(
        `(function(exports,require,module,bundleUrl){${readFileSync(path, 'latin1')}\n})`,
        {
            filename: path,
            ...(cachedData && { cachedData }),
        },
    );
    const module = { exports: {} };
    script.runInThisContext()(
        module.exports,
        createRequire(path),
        module,
        new URL(COMMAND_BUNDLE, import.meta.url).href,
    );
    if (!cachedData || script.cachedDataRejected) process.once('exit', () => keep(script, kept));
    return module.exports as CommandBundle;
}

/** After a check, since that is what should start fast and has compiled what it takes. */
function keep(script: Script, kept: string): void {
    if (process.argv[2] !== 'check') return;
    try {
        const draft = `${kept}.${process.pid}`;
        // The engine takes back only what it compiled under the flags that it starts with.
        hurry();
        const content = script.createCachedData();
        const sum = Buffer.alloc(4);
        sum.writeUInt32LE(crc32(content));
        writeFileSync(draft, Buffer.concat([sum, content]), { flag: 'wx' });
        renameSync(draft, kept);
    } catch {
        // Installed where the user may not write: then it starts as it did.
    }
}

function read(kept: string): Buffer | undefined {
    try {
        const bytes = readFileSync(kept);
        const content = bytes.subarray(4);
        return bytes.readUInt32LE(0) === crc32(content) ? content : undefined;
    } catch {
        return undefined;
    }
}
