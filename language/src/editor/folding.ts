import type { IToken } from 'chevrotain';
import type { FoldingRangeProvider } from 'langium/lsp';
import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver';
import type { EditorServices } from './services.ts';

/**
 * Blocks, comments and runs of `use` lines, each if it spans lines. Read off the words and not off the syntax
 * tree: a file that is half typed folds as it looks.
 */
export function folding({ parser }: EditorServices): FoldingRangeProvider {
    return {
        getFoldingRanges(document) {
            const { tokens, hidden } = parser.Lexer.tokenize(document.textDocument.getText());
            return [
                ...blocksIn(tokens),
                ...usesIn(tokens),
                ...commentsIn(hidden, tokens),
                ...regionsIn(hidden),
            ].filter(({ startLine, endLine }) => endLine > startLine);
        },
    };
}

/** From a brace to the line before the one that closes it, so that the closing one stays in sight. */
function blocksIn(tokens: readonly IToken[]): FoldingRange[] {
    const open: IToken[] = [];
    return tokens.flatMap((token): FoldingRange[] => {
        if (token.image === '{') open.push(token);
        const opening = token.image === '}' ? open.pop() : undefined;
        if (!opening) return [];
        return [{ startLine: lineOf(opening), endLine: lineOf(token) - 1 }];
    });
}

function usesIn(tokens: readonly IToken[]): FoldingRange[] {
    const lines = tokens
        .filter((token, at) => token.image === 'use' && tokens[at + 1]?.tokenType.name === 'STRING')
        .map(lineOf);
    return runs(lines).map(([startLine, endLine]) => ({
        startLine,
        endLine,
        kind: FoldingRangeKind.Imports,
    }));
}

function commentsIn(hidden: readonly IToken[], tokens: readonly IToken[]): FoldingRange[] {
    const behindCode = new Set(tokens.map(({ endLine }) => endLine! - 1));
    const blocks = hidden
        .filter(({ image }) => image.startsWith('/*'))
        .map((token) => [lineOf(token), token.endLine! - 1] as const);
    const lines = hidden
        .filter(({ image }) => image.startsWith('//') && !region.test(image))
        .map(lineOf)
        .filter((line) => !behindCode.has(line));
    return [...blocks, ...runs(lines)].map(([startLine, endLine]) => ({
        startLine,
        endLine,
        kind: FoldingRangeKind.Comment,
    }));
}

const region = /^\/\/\s*#(region|endregion)\b/;

function regionsIn(hidden: readonly IToken[]): FoldingRange[] {
    const open: IToken[] = [];
    return hidden.flatMap((token): FoldingRange[] => {
        const [, word] = region.exec(token.image) ?? [];
        if (word === 'region') open.push(token);
        const opening = word === 'endregion' ? open.pop() : undefined;
        if (!opening) return [];
        return [{ startLine: lineOf(opening), endLine: lineOf(token), kind: FoldingRangeKind.Region }];
    });
}

/** First and last of each run of neighbouring lines. */
function runs(lines: readonly number[]): (readonly [first: number, last: number])[] {
    const found: [number, number][] = [];
    for (const line of lines) {
        const last = found.at(-1);
        if (last && line <= last[1] + 1) last[1] = line;
        else found.push([line, line]);
    }
    return found;
}

function lineOf({ startLine }: IToken): number {
    return startLine! - 1;
}
