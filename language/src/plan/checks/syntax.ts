import type { ILexingError, IRecognitionException, IToken } from 'chevrotain';
import type { LangiumDocument } from 'langium';
import type { Finding } from '../finding.ts';
import type { Place } from '../origin.ts';
import { problem } from './problem.ts';

/** What the lexer and the parser could not read, each at the place where a hand would mend it. */
export function checkSyntax(document: LangiumDocument): Finding[] {
    const { lexerErrors, parserErrors } = document.parseResult;
    const text = document.textDocument.getText();
    return [
        ...lexerErrors.map((error) =>
            problem('syntax', lexerPlace(document, error), { what: error.message }),
        ),
        ...parserErrors.map((error) =>
            problem('syntax', parserPlace(document, error as IRecognitionException), { what: error.message }),
        ),
        ...unclosedTexts(document, text),
    ];
}

/** A text without its closing quote still reads, to the end of its line; that it does is said here. */
function unclosedTexts(document: LangiumDocument, text: string): Finding[] {
    const found: Finding[] = [];
    const root = document.parseResult.value.$cstNode;
    if (!root || !text.includes('"')) return found;
    const quoted = /\/\/[^\n\r]*|\/\*[\s\S]*?\*\/|"[^"\n\r]*("?)/g;
    for (const match of text.matchAll(quoted)) {
        if (!match[0].startsWith('"') || match[1] === '"') continue;
        found.push(
            problem('syntax', placeAt(document, match.index, match.index + match[0].trimEnd().length), {
                what: 'The quote that opens here is not closed on its line.',
                remedy: 'Put a `"` where the text ends.',
            }),
        );
    }
    return found;
}

function lexerPlace(document: LangiumDocument, error: ILexingError): Place {
    return placeAt(document, error.offset, error.offset + error.length);
}

/** Something missing at the end of a line is missing there, not at the next word. */
function parserPlace(document: LangiumDocument, error: IRecognitionException): Place {
    const previous = (error as IRecognitionException & { previousToken?: IToken }).previousToken;
    const { token } = error;
    const end = document.textDocument.getText().length;
    if (previous && isReal(previous) && (!isReal(token) || token.startLine !== previous.endLine)) {
        return placeAt(document, previous.startOffset, previous.endOffset! + 1);
    }
    if (isReal(token)) return placeAt(document, token.startOffset, token.endOffset! + 1);
    return placeAt(document, Math.max(0, end - 1), end);
}

function isReal(token: IToken): boolean {
    return Number.isFinite(token.startOffset) && Number.isFinite(token.endOffset) && token.startOffset >= 0;
}

/** A stretch of a document by its offsets. */
export function placeAt(document: LangiumDocument, start: number, end: number): Place {
    const { textDocument, uri } = document;
    return {
        uri: uri.toString(),
        start,
        end,
        range: { start: textDocument.positionAt(start), end: textDocument.positionAt(end) },
    };
}
