import { type URI, UriUtils } from 'langium';

/** The scheme of a file of an installed package: `use "package:reef-pack/lures.spread"`. */
export const PACKAGE_SCHEME = 'package';

/** Why a linked package is not read; completes "`package:reef-pack/lures.spread` …". */
export const LINKED_OUT = 'is of a package linked from outside the folder';

/** A file of a package as a `use` names it. */
export interface PackagePath {
    readonly name: string;
    /** Below the package's folder, with forward slashes. */
    readonly file: string;
}

/** An installed package, and where it lies. */
export interface Package {
    readonly name: string;
    readonly folder: URI;
}

const NAME = /^package:((?:@[\w.~-]+\/)?[\w~-][\w.~-]*)(?:\/(.*))?$/;

/** `undefined` where no package is named, or no file of it. */
export function readPackagePath(path: string): PackagePath | undefined {
    const [, name, file] = NAME.exec(path.replaceAll('\\', '/')) ?? [];
    return name && file ? { name, file } : undefined;
}

/**
 * Where a file of a package may lie, the likeliest first: in a `node_modules` beside the file that uses it, or in a
 * folder above, and no higher than the team's own folder.
 *
 * @param top  the team's folder; without one nothing above the file's own folder counts
 */
export function placesOfPackage(from: URI, { name, file }: PackagePath, top: URI | undefined): URI[] {
    const places: URI[] = [];
    let folder = UriUtils.dirname(from);
    for (;;) {
        if (UriUtils.basename(folder) !== 'node_modules')
            places.push(UriUtils.joinPath(folder, 'node_modules', name, file));
        const above = UriUtils.dirname(folder);
        const isTop = top === undefined || withoutSlash(folder.path) === withoutSlash(top.path);
        if (isTop || above.path === folder.path) return places;
        folder = above;
    }
}

/** Whether a path within a package stays there. */
export function staysInside({ file }: PackagePath): boolean {
    let depth = 0;
    for (const step of file.split('/')) {
        if (step === '..') depth--;
        else if (step !== '.' && step !== '') depth++;
        if (depth < 0) return false;
    }
    return true;
}

/** The package that a file is of, by its address alone. */
export function packageOf(uri: URI): Package | undefined {
    const [, folder, name] = IN_PACKAGE.exec(uri.path) ?? [];
    return name && folder ? { name, folder: uri.with({ path: folder }) } : undefined;
}

/** The innermost, where packages bring packages along. */
const IN_PACKAGE = /^(.*\/node_modules\/((?:@[^/]+\/)?[^/]+))\//;

/** The `version` that a package gives itself; undefined where it gives none that can be read. */
export function versionIn(packageJson: string): string | undefined {
    try {
        const { version } = JSON.parse(packageJson) as { version?: unknown };
        return typeof version === 'string' && /^[\w.+-]{1,60}$/.test(version) ? version : undefined;
    } catch {
        return undefined;
    }
}

/**
 * Why there is nothing at a place where a file of a package was sought, although the package is installed.
 *
 * @param plans  names of the plans at the top of the package
 */
export function notInPackage({ name }: Package, plans: readonly string[]): string {
    const held =
        plans.length > 0
            ? `it has ${plans.slice(0, 6).join(', ')}${plans.length > 6 ? ' and more' : ''}`
            : 'it has none at its top';
    return `is not in the package \`${name}\` that is installed here; ${held}`;
}

function withoutSlash(path: string): string {
    return path.length > 1 ? path.replace(/\/$/, '') : path;
}
