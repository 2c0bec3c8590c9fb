import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { notInPackage, type Package, versionIn } from '../plan/names/packages.ts';
import { planEnding } from '../plan/names/uses.ts';

/** The version of an installed package, as its `package.json` gives it. */
export function packageVersion({ folder }: Package): { readonly version?: string } {
    const path = join(folder.fsPath, 'package.json');
    try {
        if (statSync(path).size > most) return {};
        const version = versionIn(readFileSync(path, 'utf8'));
        return version === undefined ? {} : { version };
    } catch {
        return {};
    }
}

/** Why a file is not there, where its package is; undefined where the package itself is not. */
export function missingInPackage(own: Package): string | undefined {
    try {
        const names = readdirSync(own.folder.fsPath).filter((name) => name.endsWith(planEnding));
        return notInPackage(own, names.sort());
    } catch {
        return undefined;
    }
}

/** Bytes; the largest that are seen are a hundredth of it. */
const most = 1_000_000;
