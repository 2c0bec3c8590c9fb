import type { ILexingError, IRecognitionException, IToken } from 'chevrotain';
import type { LangiumDocument } from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import type { Finding } from '../finding.ts';
import type { Place } from '../origin.ts';
import { feetMarkAt } from '../syntax/feet-mark.ts';
import { OPEN_COMMENT } from '../syntax/lexer.ts';
import { opaqueParts } from '../syntax/opaque.ts';
import { shorten } from '../wording.ts';
import { instead, problem } from './problem.ts';

/** What the lexer and the parser could not read, each at the place where a hand would mend it. */
export function checkSyntax(document: LangiumDocument): Finding[] {
    const { lexerErrors, parserErrors, value } = document.parseResult;
    const texts = misquoted(document);
    const text = document.textDocument.getText();
    const strays = lexerErrors.map((error) => ({ error, mark: feetMarkAt(text, error.offset) }));
    const marks = strays.flatMap(({ mark }) => mark ?? []);
    /** Behind a mark for feet its inches and their mark mean nothing of their own. */
    const isMarked = ({ start }: { readonly start: number }) =>
        marks.some((mark) => mark.start <= start && start < mark.end);
    let unopened = 0;
    const hasStrays = (value as Sheet).strays?.length > 0;
    return [
        ...strays.map(({ error, mark }) => {
            const at = mark ? placeAt(document, mark.start, mark.end) : lexerPlace(document, error);
            return problem('syntax', at, {
                what: error.message,
                fixes: mark ? [instead(at, mark.text)] : [],
            });
        }),
        ...texts.filter(({ at }) => !isMarked(at)),
        ...parserErrors.flatMap((error, index) => {
            if (followsFrom(error, parserErrors[index - 1]) || isSwallowed(error, lexerErrors)) return [];
            // What a stray property says about a brace too many above it need not be said again at the end.
            const outside = (error as IRecognitionException).context.ruleStack.length < 2;
            if (hasStrays && outside && error.token.image === '}') return [];
            // Who forgot both braces of a block is told of the first.
            if (opens.test(error.message)) unopened++;
            else if (closes.test(error.message) && unopened > 0) {
                unopened--;
                return [];
            }
            const at = parserPlace(document, error as IRecognitionException);
            // The mark for inches opens a text, which may swallow a brace.
            if (isMarked(at) || (marks.length > 0 && !isReal(error.token))) return [];
            // An unclosed text swallows what follows it; that it does is said once.
            if (texts.some((text) => text.at.start <= at.start && at.start < text.at.end)) return [];
            return [problem('syntax', at, { what: error.message })];
        }),
    ];
}

const opens = /^`\{` is missing/;
const closes = /^A `\}` is missing/;

/** What an open comment swallowed is not missing. */
function isSwallowed({ token }: IRecognitionException, errors: readonly ILexingError[]): boolean {
    return !isReal(token) && errors.some(({ message }) => message === OPEN_COMMENT);
}

/** Whether a fault is what the parser made of the one before it, on the same line. */
function followsFrom(error: IRecognitionException, before: IRecognitionException | undefined): boolean {
    const { previousToken } = error as IRecognitionException & { previousToken?: IToken };
    return before !== undefined && previousToken === before.token && isReal(before.token);
}

/** Texts in quotes that are not straight, or not closed. They still read, to the end of their line at most. */
function misquoted(document: LangiumDocument): Finding[] {
    const text = document.textDocument.getText();
    const found: Finding[] = [];
    for (const { kind, start, end } of opaqueParts(text)) {
        const written = text.slice(start, end);
        if (kind !== 'quoted' || (written.length > 1 && /^".*"$/.test(written))) continue;
        const closed = written.length > 1 && /["“”]$/.test(written);
        const at = placeAt(document, start, start + written.trimEnd().length);
        const inner = written
            .replace(/^["“”„]/, '')
            .replace(/["“”]$/, '')
            .trimEnd();
        found.push(
            closed
                ? problem('syntax', at, {
                      what: 'These are not the quotes that the language knows.',
                      remedy: `Use straight ones: \`"${shorten(inner)}"\`.`,
                      fixes: [{ ...instead(at, `"${inner}"`), title: 'Use straight quotes' }],
                  })
                : problem('syntax', at, {
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
