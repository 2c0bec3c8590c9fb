import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';
import { hurry } from './pace.ts';

/** Verbs that should start fast; what they have compiled is what they take. */
const kept: ReadonlySet<string | undefined> = new Set(['check', 'card']);

/**
 * Loads a bundle so that what it is for is over soon. Most of a short run is the engine's, getting to know half a
 * megabyte of code, so:
 *
 * - its text, which the build keeps to ASCII, is taken byte by byte;
 * - what the engine compiled is kept after a first run, where that may be written, and taken from there afterwards.
 *   Its name ties it to this very bundle, engine and machine, a checksum to what was written: the engine itself
 *   would trust a damaged one, and crash.
 *
 * Either is only faster: where a file is missing, all the same happens.
 *
 * @param keptAs  where what was compiled of this text is kept, but for the ending, where the bundle's own name does
 *                not tell it from another version
 * @returns what the bundle exports
 */
export function loadCompiled(path: string, keptAs?: (text: Buffer) => string): unknown {
    const text = readFileSync(path);
    const cache = `${keptAs?.(text) ?? path}.${process.versions.v8}-${process.platform}-${process.arch}.cache`;
    const cachedData = read(cache);
    const script = new Script(`(function(exports,require,module,bundleUrl){${text.toString('latin1')}\n})`, {
        filename: path,
        ...(cachedData && { cachedData }),
    });
    const module = { exports: {} };
    script.runInThisContext()(module.exports, createRequire(path), module, pathToFileURL(path).href);
    if ((!cachedData || script.cachedDataRejected) && kept.has(process.argv[2]))
        process.once('exit', () => keep(script, cache));
    return module.exports;
}

function keep(script: Script, cache: string): void {
    try {
        const draft = `${cache}.${process.pid}`;
        // The engine takes back only what it compiled under the flags that it starts with.
        hurry();
        const content = script.createCachedData();
        const sum = Buffer.alloc(4);
        sum.writeUInt32LE(crc32(content));
        writeFileSync(draft, Buffer.concat([sum, content]), { flag: 'wx' });
        renameSync(draft, cache);
    } catch {
        // Installed where the user may not write: then it starts as it did.
    }
}

function read(cache: string): Buffer | undefined {
    try {
        const bytes = readFileSync(cache);
        const content = bytes.subarray(4);
        return bytes.readUInt32LE(0) === crc32(content) ? content : undefined;
    } catch {
        return undefined;
    }
}
