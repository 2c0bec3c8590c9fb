import { type AstNode, AstUtils, type LangiumDocument, type URI, UriUtils } from 'langium';
import type { Definition, Sheet } from '../../../grammar/generated/ast.ts';
import { referencesIn } from '../../plan/names/link.ts';
import { packageOf } from '../../plan/names/packages.ts';
import { PRELUDE } from '../../plan/names/reach.ts';
import { LIBRARY_SCHEME, nameInLibrary, pathBetween, usesOf } from '../../plan/names/uses.ts';
import { startWithComments } from './pieces.ts';
import { type Refactoring, spliced, type TextChange, type Workplace } from './refactoring.ts';

/** So many files are offered to move something to: the nearest by their path. */
const mostOffered = 6;

/** Moves a definition to another file of the team, and has every file go on reaching what it reached. */
export function move(place: Workplace, allowNewFile: boolean): Refactoring[] {
    const { definition, document, documents } = place;
    const name = 'name' in definition ? definition.name : undefined;
    if (!name || !isTeams(document)) return [];
    // What it uses already comes first: nothing else has to be mended there.
    const used: ReadonlySet<LangiumDocument> = new Set(place.reach(document));
    const others = documents
        .filter((each) => each !== document && isTeams(each) && each.uri.scheme === document.uri.scheme)
        .map((each) => ({ each, path: pathBetween(document.uri, each.uri), isUsed: used.has(each) }))
        .sort(
            (a, b) =>
                Number(b.isUsed) - Number(a.isUsed) ||
                a.path.split('/').length - b.path.split('/').length ||
                (a.path < b.path ? -1 : 1),
        );
    // As many as are offered, and no more: this is asked at every rest of the caret.
    const offered: Refactoring[] = [];
    for (const { each, path } of others) {
        if (offered.length === mostOffered) break;
        offered.push(...(moveTo(each.uri, each, `Move to ${path}`, place) ?? []));
    }
    const own = UriUtils.joinPath(UriUtils.dirname(document.uri), `${name}.spread`);
    const isFree = documents.every(({ uri }) => uri.toString() !== own.toString());
    const anew = allowNewFile && isFree && document.parseResult.value.definitions.length > 1;
    return [
        ...offered,
        ...(anew ? (moveTo(own, undefined, `Move to a new file ${name}.spread`, place) ?? []) : []),
    ];
}

function isTeams({ uri }: LangiumDocument): boolean {
    return uri.scheme !== LIBRARY_SCHEME && !packageOf(uri);
}

/** Undefined where the other file is no place for it. */
function moveTo(
    uri: URI,
    target: LangiumDocument<Sheet> | undefined,
    title: string,
    place: Workplace,
): Refactoring[] | undefined {
    const { definition, document, documents, finds, reach } = place;
    const name = (definition as { name: string }).name;
    if (
        target?.parseResult.value.definitions.some(
            (each) => each.kind === definition.kind && 'name' in each && each.name === name,
        )
    )
        return undefined;
    if (target && (target.parseResult.parserErrors.length > 0 || target.parseResult.lexerErrors.length > 0))
        return undefined;
    const wanted = referencesIn(definition).flatMap(({ reference, container, property }) => {
        const led = 'ref' in reference ? (reference.ref as Definition | undefined) : undefined;
        return led ? [{ led, container, property, name: reference.$refText }] : [];
    });
    // What it names here would have to be used from there, and this file from nowhere else: a circle.
    if (wanted.some(({ led }) => led !== definition && AstUtils.getDocument(led) === document))
        return undefined;
    // From there every name has to lead to what it leads to here, once the files that have it are in use.
    const missing = new Map<string, URI>();
    for (const { led, container, property, name: word } of wanted) {
        const found = target && finds(target, container, property, word);
        if (found === led) continue;
        if (found) return undefined;
        const home = AstUtils.getDocument(led).uri;
        // Always in reach.
        if (home.toString() === PRELUDE.toString()) continue;
        missing.set(home.toString(), home);
    }
    for (const home of missing.values()) {
        const uses = documents.find((each) => each.uri.toString() === home.toString());
        if (packageOf(home) || (uses && target && reach(uses).includes(target))) return undefined;
    }
    // Whoever says it reaches this file; the line that this file gets leads all of them on.
    const isSaid = documents.some((each) =>
        each.references.some(
            (reference) => 'ref' in reference && reference.ref === definition && each !== target,
        ),
    );
    const isReached = target !== undefined && reach(document).includes(target);
    if (target && !isReached && isSaid && reach(target).includes(document)) return undefined;
    const start = startWithComments(definition);
    const text = document.textDocument.getText();
    const end = definition.$cstNode!.end;
    const moved = text.slice(start, end);
    const gap = /^[ \t]*(\r?\n[ \t]*){0,2}/.exec(text.slice(end))![0];
    const uses = isSaid && !isReached ? [useLine(document, pathBetween(document.uri, uri))] : [];
    const here = spliced(document, [{ start, end: end + gap.length, text: '' }, ...uses]);
    const lines = [...missing.values()].map((home) => `use "${homePath(uri, home)}"`);
    const there: TextChange[] = target
        ? spliced(target, [
              ...lines.map((line) => useLine(target, line.slice(5, -1))),
              { start: endOf(target), end: endOf(target), text: `\n\n${moved}` },
          ])
        : [
              {
                  uri: uri.toString(),
                  start: 0,
                  end: 0,
                  text: `${[...lines, ...(lines.length > 0 ? [''] : []), moved].join('\n')}\n`,
              },
          ];
    return [
        {
            title,
            kind: 'refactor.move',
            changes: [...here, ...there],
            ...(!target && { creates: uri.toString() }),
        },
    ];
}

function homePath(from: URI, home: URI): string {
    return home.scheme === LIBRARY_SCHEME
        ? `${LIBRARY_SCHEME}:${nameInLibrary(home)}`
        : pathBetween(from, home);
}

/** A further `use` line: below the last one, else at the top, below the version. */
function useLine(document: LangiumDocument<Sheet>, path: string): Omit<TextChange, 'uri'> {
    const { version } = document.parseResult.value;
    const last =
        (usesOf(document.parseResult.value).at(-1) as AstNode | undefined)?.$cstNode ?? version?.$cstNode;
    return last
        ? { start: last.end, end: last.end, text: `\nuse "${path}"` }
        : { start: 0, end: 0, text: `use "${path}"\n\n` };
}

/** Behind the last thing that is written. */
function endOf(document: LangiumDocument): number {
    return document.textDocument.getText().trimEnd().length;
}
