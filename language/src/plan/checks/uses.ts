import { type LangiumDocument, type LangiumDocuments, type URI, UriUtils } from 'langium';
import type { Sheet, Use } from '../../../grammar/generated/ast.ts';
import { nearest } from '../../units/nearest.ts';
import type { Finding } from '../finding.ts';
import { LINKED_OUT } from '../names/packages.ts';
import type { Reach } from '../names/reach.ts';
import { pathOf, type UseTarget, usesOf } from '../names/uses.ts';
import { placeOf, placeOfProperty } from '../place.ts';
import { shorten } from '../wording.ts';
import { instead, problem } from './problem.ts';
import { choices } from './words.ts';

/** Why a file that is there was not read: completes `plan.spread …`. */
export type Unread = ReadonlyMap<string, string>;

export interface UseContext {
    readonly documents: LangiumDocuments;
    /** Files that are there, and not among the documents now. */
    readonly others?: readonly URI[] | undefined;
    readonly reach: Reach;
    /** Files that could not be read, by URI. */
    readonly unread: Unread;
    /** Names of the built-in library. */
    readonly library: Iterable<string>;
}

/** `use` lines that lead nowhere, twice to one place, or in a circle. */
export function checkUses(document: LangiumDocument, context: UseContext): Finding[] {
    const seen = new Map<string, Use>();
    return usesOf(document.parseResult.value as Sheet).flatMap((use) => {
        if (use.path === undefined) return [];
        const at = placeOfProperty(use, 'path');
        const target = context.reach.target(document.uri, pathOf(use));
        if (!('uri' in target)) return [problem('use', at, outcomeOf(target))];
        const key = target.uri.toString();
        const before = seen.get(key);
        if (before) return [usedTwice(use, before)];
        seen.set(key, use);
        const refused = refusalOf(target, context);
        if (refused !== undefined) return [unreadUse(use, refused)];
        if (context.documents.hasDocument(target.uri)) return circle(document, use, target.uri, context);
        return [missing(use, target, document.uri, context)];
    });
}

type Outcome = Parameters<typeof problem>[2];

function outcomeOf(target: Exclude<UseTarget, { uri: URI }>): Outcome {
    const path = shorten(target.path);
    if (target.kind !== 'escapes') return OUTCOMES[target.kind](path);
    return {
        what: `\`${path}\` lies outside the folder${target.folder ? ` \`${shorten(target.folder)}\`` : ' that is open'}.`,
        why: 'A plan may use only what is kept with it.',
        remedy: 'Move the file into that folder, or open or name the folder above.',
    };
}

const OUTCOMES: Readonly<Record<'empty' | 'absolute' | 'foreign' | 'unnamed', (path: string) => Outcome>> = {
    empty: () => ({ what: '`use` names no file.', remedy: 'Write for instance `use "tackle.spread"`.' }),
    absolute: (path) => ({
        what: `\`${path}\` is a path from the top of one computer.`,
        why: 'It would lead nowhere on the next one.',
        remedy: 'Write the path from this file, such as `../tackle.spread`.',
    }),
    foreign: (path) => ({
        what: `\`${path}\` is not a file of this folder.`,
        why: 'A plan uses files that lie beside it and the built-in library, and nothing from anywhere else.',
        remedy: 'Write the path from this file, or `layback:` and a name of the library.',
    }),
    unnamed: (path) => ({
        what: `\`${path}\` does not name a package and a file of it.`,
        remedy: 'Write for instance `use "package:reef-pack/lures.spread"`.',
    }),
};

/** Why what a `use` leads to was not read: of the places where a package may lie, the nearest has the say. */
function refusalOf(target: UseTarget & { uri: URI }, { documents, unread }: UseContext): string | undefined {
    const places = 'places' in target ? target.places : [target.uri];
    const first = places.find((uri) => unread.has(uri.toString()) || documents.hasDocument(uri));
    return first && unread.get(first.toString());
}

function unreadUse(use: Use, reason: string): Finding {
    return problem('use', placeOfProperty(use, 'path'), {
        what: `\`${shorten(pathOf(use))}\` ${reason}.`,
        remedy: reason.startsWith(LINKED_OUT)
            ? 'Install it without a link, or allow linked packages: `--linked-packages`, in the editor `layback.linkedPackages`.'
            : 'Nothing in it is known here.',
    });
}

function notInstalled({ name, uri }: UseTarget & { kind: 'package' }): Outcome {
    const isOnDisk = uri.scheme === 'file';
    return {
        what: isOnDisk
            ? `The package \`${shorten(name)}\` is not installed in this folder.`
            : `There is no package \`${shorten(name)}\` here: these files are on no disk that packages are installed on.`,
        why: 'Packages are read from the team’s own `node_modules`, and never fetched.',
        remedy: isOnDisk
            ? 'Install it here, or take this line out.'
            : 'Open the folder from a disk where it is installed, or keep what is needed of it beside the plans.',
    };
}

function missing(use: Use, target: UseTarget & { uri: URI }, from: URI, context: UseContext): Finding {
    const at = placeOfProperty(use, 'path');
    const path = shorten(pathOf(use));
    if (target.kind === 'package') return problem('use', at, notInstalled(target));
    if (target.kind === 'library') {
        const known = [...context.library].map((name) => `layback:${name}`);
        const near = nearest(pathOf(use), known);
        return problem('use', at, {
            what: `The library has no \`${path}\`.`,
            remedy: near ? `Did you mean \`${near}\`?` : `It has ${choices(known)}.`,
            fixes: near ? [instead(at, `"${near}"`)] : [],
        });
    }
    const near = nearestFile(target.uri, from, context);
    return problem('use', at, {
        what: `There is no file \`${path}\` here.`,
        remedy: near ? `Did you mean \`${near}\`?` : 'Check its name, or make it.',
        fixes: near ? [instead(at, `"${near}"`)] : [],
    });
}

function nearestFile(wanted: URI, from: URI, { documents, others = [] }: UseContext): string | undefined {
    const folder = UriUtils.dirname(from);
    const stem = (uri: URI) => UriUtils.basename(uri).replace(/\.spread$/, '');
    const known = [...documents.all.map(({ uri }) => uri), ...others]
        .filter(({ scheme, path }) => scheme === from.scheme && path !== from.path)
        .map((uri) => ({ stem: stem(uri), path: UriUtils.relative(folder, uri) }))
        .sort((a, b) => (a.path < b.path ? -1 : 1));
    // By its name alone: a file that is one folder off is the likeliest of all.
    const near = nearest(
        stem(wanted),
        known.map((each) => each.stem),
    );
    return known.find((each) => each.stem === near)?.path;
}

function usedTwice(use: Use, before: Use): Finding {
    const at = placeOf(use);
    return problem('use', at, {
        severity: 'warning',
        what: 'This file is already in use.',
        remedy: 'Take this line out.',
        related: [{ at: placeOf(before), what: 'The first line that uses it.' }],
        fixes: [{ title: 'Take this line out', edits: [{ at, text: '' }], safe: true }],
        unnecessary: true,
    });
}

/** A circle of files is harmless to the names in them, and a sign that they belong together. */
function circle(document: LangiumDocument, use: Use, target: URI, context: UseContext): Finding[] {
    const used = context.documents.getDocument(target)!;
    const itself = used === document;
    if (!itself && !context.reach.from(used).includes(document as never)) return [];
    return [
        problem('use', placeOfProperty(use, 'path'), {
            severity: itself ? 'warning' : 'hint',
            what: itself ? 'This file uses itself.' : 'These two files use each other in a circle.',
            remedy: itself
                ? 'Take this line out.'
                : 'It works; still, what both need is better kept in a third file that uses neither.',
            unnecessary: itself,
        }),
    ];
}
