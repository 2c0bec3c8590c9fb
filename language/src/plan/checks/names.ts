import type { AstNode, LangiumDocument, ReferenceInfo } from 'langium';
import type { Definition, Referred, Sheet } from '../../../grammar/generated/ast.ts';
import { library } from '../../library/library.ts';
import { nearest } from '../../units/nearest.ts';
import type { Finding, Fix } from '../finding.ts';
import { type Kind, kindsWanted, one, spoken } from '../names/kinds.ts';
import type { Reach } from '../names/reach.ts';
import { nameOf, type ReachScope } from '../names/scope.ts';
import { usesOf } from '../names/uses.ts';
import { placeOfCst, placeOfProperty } from '../place.ts';
import { baseOf, isTooFarFrom, likeChain, MOST_LIKE } from '../resolve/gather.ts';
import { shorten } from '../wording.ts';
import { ENOUGH } from './enough.ts';
import { instead, problem } from './problem.ts';
import { placeAt } from './syntax.ts';

/**
 * Names that lead nowhere, with the nearest one that would.
 *
 * @param halfBlind  a file in use could not be read: names that may be in it are not called unknown
 */
export function checkReferences(document: LangiumDocument, scope: ReachScope, halfBlind: boolean): Finding[] {
    const known = new Map<string, readonly string[]>();
    const namesOf = (kinds: readonly Kind[]) => {
        const key = kinds.join();
        let names = known.get(key);
        if (!names) {
            names = [...scope.scopeFrom(document, kinds).getAllElements()].map(({ name }) => name);
            known.set(key, names);
        }
        return names;
    };
    let told = 0;
    return document.references.flatMap((reference) => {
        const error = 'ref' in reference ? reference.error : undefined;
        if (!error || !reference.$refNode || reference.$refText === '') return [];
        // Of very many only the first are worth looking for what was meant.
        const finding = unknownName(document, error.info, ++told > 2 * ENOUGH ? () => [] : namesOf);
        return halfBlind && finding.fixes.length === 0 ? [] : [finding];
    });
}

function unknownName(
    document: LangiumDocument,
    info: ReferenceInfo,
    known: (kinds: readonly Kind[]) => readonly string[],
): Finding {
    const kinds = kindsWanted(info.container, info.property);
    const written = info.reference.$refText;
    const at = placeOfCst(document.uri.toString(), info.reference.$refNode!);
    const near =
        info.property === 'base'
            ? nearestBase(info.container as Definition, written, known(kinds), document)
            : nearest(written, known(kinds));
    const kind = kinds.map(spoken).join(' or ');
    const shelf = near === written ? undefined : shelfOf(written, kinds);
    return problem('unknown-name', at, {
        what: `No ${kind} is called \`${shorten(written)}\` in this file or in what it uses.`,
        remedy: shelf
            ? `The library has it: \`use "${shelf}"\`.`
            : near
              ? `Did you mean \`${near}\`?`
              : 'Define it, or `use` the file that does.',
        fixes: shelf ? [useToo(document, shelf)] : near ? [instead(at, near)] : [],
    });
}

/** Never one that is like this very definition: like that, it would be like itself. */
function nearestBase(
    definition: Definition,
    written: string,
    known: readonly string[],
    document: LangiumDocument,
): string | undefined {
    const { definitions } = document.parseResult.value as Sheet;
    let left = known;
    for (let tries = 0; tries < 10; tries++) {
        const near = nearest(written, left);
        if (near === undefined) return undefined;
        const one = definitions.find((each) => each.kind === definition.kind && nameOf(each) === near);
        if (!one || (one !== definition && !likeChain(one).includes(definition))) return near;
        left = left.filter((name) => name !== near);
    }
    return undefined;
}

/** The file of the built-in library that defines a name. */
function shelfOf(name: string, kinds: readonly string[]): string | undefined {
    shelves ??= new Map(
        [...library]
            .reverse()
            .flatMap(([shelf, text]) =>
                [...text.matchAll(/^([a-z]+) ([\w-]+)/gm)].map(([, kind, found]) => [
                    `${kind} ${found}`,
                    shelf,
                ]),
            ),
    );
    for (const kind of kinds) {
        const shelf = shelves.get(`${kind} ${name}`);
        if (shelf) return `layback:${shelf}`;
    }
    return undefined;
}

let shelves: ReadonlyMap<string, string> | undefined;

/** A further `use` line: below the last one, else at the top. */
function useToo(document: LangiumDocument, path: string): Fix {
    const last = usesOf(document.parseResult.value as Sheet).at(-1)?.$cstNode;
    const at = last ? placeAt(document, last.end, last.end) : placeAt(document, 0, 0);
    const text = last ? `\nuse "${path}"` : `use "${path}"\n`;
    return { title: `Add \`use "${path}"\``, edits: [{ at, text }] };
}

/** Two definitions of one kind and name in one file, or in two files that it reaches. */
export function checkDuplicateNames(document: LangiumDocument, reach: Reach): Finding[] {
    const found: Finding[] = [];
    const seen = new Map<string, Definition>();
    for (const definition of (document.parseResult.value as Sheet).definitions ?? []) {
        const name = nameOf(definition);
        if (!name) continue;
        const key = `${definition.kind} ${name}`;
        const first = seen.get(key);
        if (!first) seen.set(key, definition);
        else {
            const related = [{ at: placeOfProperty(first, 'name'), what: 'The first one, which counts.' }];
            found.push(
                problem('duplicate', placeOfProperty(definition, 'name'), {
                    what: `There is already ${one(definition.kind)} called \`${shorten(name)}\` in this file.`,
                    why: 'Whoever names it would not know which one is meant.',
                    remedy: 'Rename one of the two.',
                    related,
                }),
            );
        }
    }
    return [...found, ...shadowed(document, reach, seen)];
}

function shadowed(document: LangiumDocument, reach: Reach, own: ReadonlyMap<string, Definition>): Finding[] {
    const found: Finding[] = [];
    for (const other of reach.from(document)) {
        if (other === document || other.uri.scheme === 'layback') continue;
        for (const definition of other.parseResult.value.definitions ?? []) {
            const here = own.get(`${definition.kind} ${nameOf(definition)}`);
            if (!here) continue;
            found.push(
                problem('duplicate', placeOfProperty(here, 'name'), {
                    severity: 'warning',
                    what: `A file in use already has ${one(here.kind)} called \`${shorten(nameOf(here)!)}\`.`,
                    why: 'The one in this file counts here, the other one elsewhere.',
                    remedy: 'Rename one of the two, or write this one `like` the other under a name of its own.',
                    related: [{ at: placeOfProperty(definition, 'name'), what: 'The other one.' }],
                }),
            );
        }
    }
    return found;
}

/** A definition that is like itself, directly or in a round, or like one of another kind. */
export function checkLike(definition: Definition): Finding | undefined {
    if (!('base' in definition) || !definition.base?.$refNode) return undefined;
    const at = placeOfProperty(definition, 'base');
    if (isTooFarFrom(definition)) {
        return problem('like', at, {
            what: `\`${shorten(nameOf(definition) ?? '')}\` is at the end of more than ${MOST_LIKE} definitions, one like the next.`,
            why: 'Nobody can tell what it says, so nothing is taken over from them.',
            remedy: 'Write it like one nearer the beginning.',
        });
    }
    const round: string[] = [];
    const seen = new Set<Definition>();
    for (let base = baseOf(definition); base && !seen.has(base); base = baseOf(base)) {
        seen.add(base);
        round.push(nameOf(base) ?? '');
        if (base !== definition) continue;
        const path = [nameOf(definition), ...round].join(' → ');
        return problem('like', at, {
            what: `\`${shorten(nameOf(definition) ?? '')}\` is like itself: ${path}.`,
            why: 'A preset in a circle has no beginning to take its values from.',
            remedy: 'Take out one `like` of the circle.',
        });
    }
    return undefined;
}

/** `written` lines of a rule pack that lead back to it. */
export function checkWritten(pack: Definition): Finding[] {
    return writtenBy(pack).flatMap(({ line, of }) => {
        const way = of && wayBack(of, pack, new Set());
        if (!way) return [];
        const name = shorten(nameOf(pack) ?? '');
        const path = [pack, ...way].map((each) => nameOf(each) ?? '').join(' → ');
        return [
            problem('like', placeOfProperty(line, 'of'), {
                what: `\`${name}\` is written over itself: ${path}.`,
                why: 'Which of its packs is the nearer one, and has the last word, depends on where one begins.',
                remedy: 'Take out one `written` of the circle.',
            }),
        ];
    });
}

function writtenBy({ kind, entries = [] }: Definition): { line: Referred; of: Definition | undefined }[] {
    if (kind !== 'rules') return [];
    return (entries as readonly AstNode[])
        .filter((entry): entry is Referred => (entry as { word?: string }).word === 'written')
        .map((line) => ({ line, of: line.of?.ref }));
}

/** From one pack over those that it is written over to another; of very many only the first are looked at. */
function wayBack(from: Definition, to: Definition, seen: Set<Definition>): Definition[] | undefined {
    if (from === to) return [to];
    if (seen.has(from) || seen.size > MOST_LIKE) return undefined;
    seen.add(from);
    for (const { of } of writtenBy(from)) {
        const rest = of && wayBack(of, to, seen);
        if (rest) return [from, ...rest];
    }
    return undefined;
}
