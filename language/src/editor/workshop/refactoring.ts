import type { AstNode, LangiumDocument } from 'langium';
import type { Definition, Sheet } from '../../../grammar/generated/ast.ts';

/** A stretch of one text, and what is put in its place. */
export interface TextChange {
    readonly uri: string;
    readonly start: number;
    readonly end: number;
    readonly text: string;
}

/** Another way to write the same: nothing that is computed changes. */
export interface Refactoring {
    readonly title: string;
    readonly kind: 'refactor.extract' | 'refactor.inline' | 'refactor.move' | 'refactor.rewrite';
    readonly changes: readonly TextChange[];
    /** A file that is made for it, empty before. */
    readonly creates?: string;
    /** Why it cannot be done here: a sentence. */
    readonly disabled?: string;
}

/** Where somebody asks for refactorings, and what can be asked about the rest of the team's files. */
export interface Workplace {
    readonly document: LangiumDocument<Sheet>;
    readonly definition: Definition;
    /** What the caret stands on, within the definition. */
    readonly node: AstNode;
    /** Every file that was read. */
    readonly documents: readonly LangiumDocument<Sheet>[];
    /** What a name leads to from a file. */
    readonly finds: (
        from: LangiumDocument,
        container: AstNode,
        property: string,
        name: string,
    ) => AstNode | undefined;
    readonly reach: (from: LangiumDocument) => readonly LangiumDocument[];
    /** Lays a text out; the same text where that cannot be done. */
    readonly format: (text: string) => string;
}

/** One change of a file from one text to another. What is written anew is laid out, and with it all of a text that was. */
export function rewritten(
    { document, definition, format }: Pick<Workplace, 'document' | 'definition' | 'format'>,
    changes: readonly Omit<TextChange, 'uri'>[],
): TextChange[] {
    const text = document.textDocument.getText();
    const eol = text.includes('\r\n') ? '\r\n' : '\n';
    const within = definition.$cstNode!;
    const [start, end] = [
        Math.min(within.offset, ...changes.map((each) => each.start)),
        Math.max(within.end, ...changes.map((each) => each.end)),
    ];
    const stretch = applied(text.slice(start, end), changes, start);
    const made = text.slice(0, start) + stretch + text.slice(end);
    if (format(text) === text) return apart(document, text, withEnds(format(made), eol));
    return apart(
        document,
        text,
        text.slice(0, start) + withEnds(format(stretch).trimEnd(), eol) + text.slice(end),
    );
}

/** The same where nothing is written anew: as it stands. */
export function spliced(
    document: LangiumDocument,
    changes: readonly Omit<TextChange, 'uri'>[],
): TextChange[] {
    const text = document.textDocument.getText();
    return apart(document, text, withEnds(applied(text, changes, 0), text.includes('\r\n') ? '\r\n' : '\n'));
}

function applied(text: string, changes: readonly Omit<TextChange, 'uri'>[], from: number): string {
    return [...changes]
        .sort((a, b) => b.start - a.start)
        .reduce(
            (made, { start, end, text: put }) => made.slice(0, start - from) + put + made.slice(end - from),
            text,
        );
}

function withEnds(text: string, eol: string): string {
    return text.replaceAll(/\r?\n/g, eol);
}

/** What differs between two texts, in one stretch. */
function apart(document: LangiumDocument, text: string, made: string): TextChange[] {
    let start = 0;
    while (start < text.length && text[start] === made[start]) start++;
    let kept = 0;
    const most = Math.min(text.length, made.length) - start;
    while (kept < most && text.at(-1 - kept) === made.at(-1 - kept)) kept++;
    const put = made.slice(start, made.length - kept);
    const end = text.length - kept;
    return start === end && put === '' ? [] : [{ uri: document.uri.toString(), start, end, text: put }];
}

/** A name that no definition of the kind has in reach. */
export function freeName(wanted: string, { document, definition, finds }: Workplace): string {
    for (let count = 1; ; count++) {
        const name = count === 1 ? wanted : `${wanted}-${count}`;
        if (!finds(document, { ...definition, $type: definition.$type }, 'base', name)) return name;
    }
}
