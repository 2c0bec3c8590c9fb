import { readFileSync, statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Baseline, baselineOf, type PathOf, readBaseline, sift } from '../reports/baseline.ts';
import type { Run } from '../reports/checked.ts';
import { ruleNamed } from '../rules/registry.ts';
import { Refusal, reasonOf } from './refusal.ts';
import { terminal } from './terminal.ts';
import { writeWhole } from './writing.ts';

/** Where a team's baseline is when nobody says otherwise. */
export const usualBaseline = 'layback-baseline.json';

/** The run without what the team has known since it took the tool up. */
export function withoutKnown(run: Run, file: string): Run {
    const baseline = read(file);
    const path = resolve(file);
    const [uri, text] = [pathToFileURL(path).href, readFileSync(path, 'utf8')];
    const shown = relative(process.cwd(), path).split(sep).join('/');
    return sift(run, baseline, pathsFrom(file), { uri, path: shown, text, isGone: goneFrom(file) });
}

/** Writes down all that was found; what is known of files that were not looked at stays. */
export function writeBaseline(run: Run, file: string): void {
    const before = existing(file);
    const baseline = baselineOf(
        run,
        pathsFrom(file),
        (rule) => ruleNamed(rule) !== undefined,
        before,
        goneFrom(file),
    );
    writeWhole(resolve(file), `${JSON.stringify(baseline, undefined, 2)}\n`);
    const known = baseline.findings.reduce((sum, { times = 1 }) => sum + times, 0);
    const faults = run.files
        .flatMap(({ findings }) => findings)
        .filter(({ rule }) => !ruleNamed(rule)).length;
    terminal.log(`${file}: ${known} known ${known === 1 ? 'finding' : 'findings'} written down.`);
    if (faults === 0) return;
    const [many, they] =
        faults === 1 ? ['1 fault', 'was left out: it has'] : [`${faults} faults`, 'were left out: they have'];
    terminal.log(`layback: ${many} in the text itself ${they} to be mended.`);
}

function read(file: string): Baseline {
    let text: string;
    try {
        text = readFileSync(resolve(file), 'utf8');
    } catch (error) {
        throw new Refusal(`${file} ${reasonOf(error)}. layback check --write-baseline makes one.`);
    }
    const baseline = readBaseline(text);
    if (typeof baseline === 'string') throw new Refusal(`${file} ${baseline}.`);
    return baseline;
}

/** One that is there is kept where nobody looked; one that cannot be read is not written over. */
function existing(file: string): Baseline | undefined {
    try {
        readFileSync(resolve(file));
    } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    }
    return read(file);
}

/** Only what certainly is no file any more: a disk that is away says something else. */
function goneFrom(file: string): (path: string) => boolean {
    const folder = dirname(resolve(file));
    return (path) => {
        try {
            statSync(resolve(folder, path));
            return false;
        } catch (error) {
            return (error as NodeJS.ErrnoException).code === 'ENOENT';
        }
    };
}

function pathsFrom(file: string): PathOf {
    const folder = dirname(resolve(file));
    return (uri) =>
        uri.startsWith('file:') ? relative(folder, fileURLToPath(uri)).split(sep).join('/') : uri;
}
