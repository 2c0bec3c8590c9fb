import { URI, UriUtils } from 'langium';
import type { Sheet, Use } from '../../../grammar/generated/ast.ts';
import { PACKAGE_SCHEME, packageOf, placesOfPackage, readPackagePath, staysInside } from './packages.ts';

/** The scheme under which the built-in library is read, in `use "layback:species"` and as a document. */
export const LIBRARY_SCHEME = 'layback';

/** How the name of every plan ends. */
export const planEnding = '.spread';

/** What a `use` points at, or why it points at nothing. */
export type UseTarget =
    | { readonly kind: 'file' | 'library'; readonly uri: URI }
    /** `uri` is the nearest place where the file may lie, `places` all of them, that one first. */
    | { readonly kind: 'package'; readonly uri: URI; readonly places: readonly URI[]; readonly name: string }
    | { readonly kind: 'empty' | 'absolute' | 'foreign' | 'unnamed'; readonly path: string }
    /** `folder` is the name of the one that it leaves. */
    | { readonly kind: 'escapes'; readonly path: string; readonly folder: string };

/** The path as written, without its quotes. */
export function pathOf(use: Use): string {
    return use.path ?? '';
}

/**
 * Where a `use` leads from a file.
 *
 * @param roots  folders that a path may not leave; none: anything relative goes
 */
export function targetOf(from: URI, path: string, roots: readonly URI[]): UseTarget {
    if (path.trim() === '') return { kind: 'empty', path };
    if (path.startsWith(`${LIBRARY_SCHEME}:`)) return { kind: 'library', uri: libraryUri(path) };
    if (path.startsWith(`${PACKAGE_SCHEME}:`)) return packageTarget(from, path, roots);
    if (/^([/\\]|[A-Za-z]:[/\\])/.test(path)) return { kind: 'absolute', path };
    if (/^[A-Za-z][\w+.-]*:/.test(path)) return { kind: 'foreign', path };
    const uri = UriUtils.resolvePath(UriUtils.dirname(from), path.replaceAll('\\', '/'));
    const around = roots.filter((root) => isInside(from, root));
    if (around.length > 0 && !around.some((root) => isInside(uri, root)))
        return { kind: 'escapes', path, folder: UriUtils.basename(around[0]!) };
    const own = packageOf(from);
    // What a package means hangs on nothing that happens to lie beside it.
    if (own && !isInside(uri, own.folder)) return { kind: 'escapes', path, folder: own.name };
    return { kind: 'file', uri };
}

function packageTarget(from: URI, path: string, roots: readonly URI[]): UseTarget {
    const named = readPackagePath(path);
    if (!named) return { kind: 'unnamed', path };
    if (!staysInside(named)) return { kind: 'escapes', path, folder: named.name };
    // The widest of folders in folders.
    const [top] = roots.filter((root) => isInside(from, root)).sort((a, b) => a.path.length - b.path.length);
    const places = placesOfPackage(from, named, top);
    return { kind: 'package', uri: places[0]!, places, name: named.name };
}

/** `layback:species` as the document that an editor can open. */
export function libraryUri(path: string): URI {
    const name = path.slice(path.indexOf(':') + 1).replace(/^\/+/, '');
    return URI.from({
        scheme: LIBRARY_SCHEME,
        path: `/${name.endsWith(planEnding) ? name : `${name}${planEnding}`}`,
    });
}

/** The name in the library of a document under its scheme, `species` of `layback:/species.spread`. */
export function nameInLibrary(uri: URI): string {
    return uri.path.replace(/^\//, '').replace(/\.spread$/, '');
}

/** The path of a file as another one may use it, without `./` before what lies beside it. */
export function pathBetween(from: URI, to: URI): string {
    return UriUtils.relative(UriUtils.dirname(from), to).replace(/^\.\//, '');
}

export function isInside(uri: URI, root: URI): boolean {
    const folder = root.path.endsWith('/') ? root.path : `${root.path}/`;
    return uri.scheme === root.scheme && uri.authority === root.authority && uri.path.startsWith(folder);
}

/** The `use` lines of a file; none for one that is not parsed yet. */
export function usesOf(sheet: Sheet): readonly Use[] {
    return sheet.uses ?? [];
}
