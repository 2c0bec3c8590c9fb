import { existsSync, statSync } from 'node:fs';
import { relative, resolve, sep } from 'node:path';
import type { Finding } from '../plan/finding.ts';
import type { Run } from '../reports/checked.ts';
import type { Version } from '../reports/comparison/comparison.ts';
import { type Asked, fromPaths } from './asking.ts';
import { check } from './checking.ts';
import { Refusal } from './refusal.ts';
import { isRevision, plansAt } from './revisions.ts';

/** Which two versions are meant. */
export type Sides =
    /** Two files, or two folders, by their paths. */
    | { readonly kind: 'paths'; readonly before: string; readonly after: string }
    /** A revision against another, or against the files as they are now; only what lies at these paths. */
    | {
          readonly kind: 'revisions';
          readonly before: string;
          readonly after?: string;
          readonly paths: readonly string[];
      };

/** One version, checked. */
export interface CheckedVersion {
    readonly name: string;
    readonly run: Run;
    readonly plans: readonly Version[];
    /** Of files, and not of a plan. */
    readonly findings: readonly Finding[];
}

/**
 * What the words of the command mean: revisions before a `--` and paths after it; without one, paths where there are
 * such, and else revisions. A path alone is compared with its last commit.
 *
 * @throws Refusal where they could mean nothing
 */
export function sidesOf(words: readonly string[], paths: readonly string[] | undefined, cwd: string): Sides {
    if (paths === undefined) {
        const there = words.filter((word) => existsSync(resolve(cwd, word)));
        const [first, second] = words;
        if (words.length === 2 && there.length === 2)
            return { kind: 'paths', before: first!, after: second! };
        if (words.length === 1 && there.length === 1)
            return { kind: 'revisions', before: 'HEAD', paths: words };
        const path = there[0];
        if (path !== undefined) throw new Refusal(mixed(words, path, cwd));
    }
    // `main..` means up to what there is now.
    const revisions = words.length === 1 ? words[0]!.replace(/\.\.$/, '').split('..') : words;
    if (revisions.length > 2 || revisions.includes(''))
        throw new Refusal(
            `Two versions are compared, and ${words.join(' ')} does not name two: layback compare --help shows how.`,
        );
    const [before = 'HEAD', after] = revisions;
    return { kind: 'revisions', before, ...(after !== undefined && { after }), paths: paths ?? [] };
}

function mixed(words: readonly string[], path: string, cwd: string): string {
    const other = words.find((word) => word !== path) ?? '';
    return isRevision(other, cwd)
        ? `${path} is a path: layback compare ${other} -- ${path} compares it with ${other}.`
        : `${other} is not there, and no revision either.`;
}

/** Both versions, read and checked, the earlier one first. */
export async function checkSides(sides: Sides, cwd: string): Promise<[CheckedVersion, CheckedVersion]> {
    if (sides.kind === 'paths') {
        const [before, after] = [resolve(cwd, sides.before), resolve(cwd, sides.after)];
        const [file, other] = [before, after].map((path) => statSync(path).isFile()) as [boolean, boolean];
        if (file !== other) {
            const folder = file ? sides.after : sides.before;
            throw new Refusal(
                `${folder} is a folder: a file is compared with a file, a folder with a folder.`,
            );
        }
        // Two files that were named are one plan's two versions, whatever they are called.
        const keyIn = (top: string) => (path: string) => (file ? '' : relative(top, resolve(cwd, path)));
        return [
            await checked(sides.before, await check(fromPaths([before], cwd)), keyIn(before)),
            await checked(sides.after, await check(fromPaths([after], cwd)), keyIn(after)),
        ];
    }
    const { before, after, paths } = sides;
    const old = plansAt(before, paths, cwd);
    const now = after === undefined ? undefined : plansAt(after, paths, cwd);
    const asked = now?.asked ?? plansNow(paths, cwd, old.asked);
    if (old.asked.files.length === 0 && asked.files.length === 0)
        throw new Refusal(
            `There is no .spread file in ${paths.join(', ') || 'this repository'}, now or at ${before}.`,
        );
    return [
        await checked(before, await check(old.asked, { read: old.read }), (path) => path),
        await checked(
            after ?? 'the files now',
            await check(asked, now && { read: now.read }),
            (path) => path,
        ),
    ];
}

/** The files as they are; none where all that was named is gone by now. */
function plansNow(paths: readonly string[], cwd: string, before: Asked): Asked {
    const named = paths.length === 0 ? before.folders : paths;
    const there = named.filter((path) => existsSync(resolve(cwd, path)));
    for (const path of named) {
        const known = before.files.some((file) => isAtOrBelow(file.path, resolve(cwd, path)));
        if (!there.includes(path) && !known)
            throw new Refusal(`${path} is not there, and was not there then.`);
    }
    if (there.length === 0) return { cwd, folders: before.folders, files: [], refusals: [] };
    try {
        return fromPaths(there, cwd);
    } catch (error) {
        if (!(error instanceof Refusal) || before.files.length === 0) throw error;
        return { cwd, folders: before.folders, files: [], refusals: [] };
    }
}

function isAtOrBelow(path: string, top: string): boolean {
    return path === top || path.startsWith(top + sep);
}

async function checked(name: string, run: Run, keyOf: (path: string) => string): Promise<CheckedVersion> {
    const plans = run.files.flatMap((file) =>
        file.plans.map(
            (plan): Version => ({
                path: keyOf(file.path),
                shown: file.path,
                plan,
                findings: file.concerning.get(plan.plan.name) ?? [],
            }),
        ),
    );
    const findings = run.files.flatMap((file) => file.findings.filter(({ plan }) => plan === undefined));
    return { name, run, plans, findings };
}
