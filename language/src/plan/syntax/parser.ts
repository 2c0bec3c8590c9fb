import type { IToken, TokenType } from 'chevrotain';
import { createLangiumParser, type LangiumCoreServices, type LangiumParser } from 'langium';

/** The protected hooks of the parser underneath that recovery is steered by. */
interface RecoveringParser {
    LA(howFar: number): IToken;
    canRecoverWithSingleTokenDeletion(expected: TokenType): boolean;
}

const EXPENDABLE = new Set(['ID', 'INNER', 'UNIT', 'STRING']);

const PLAIN_NAMES = new Set(['ID', 'INNER']);

/**
 * The parser, with one habit taken away: to get on, it would drop a single token that is in its way, and so
 * read `speed⏎crew 3` as a speed of 3. Only a stray word, unit or text on the same line may be dropped.
 */
export function createParser(services: LangiumCoreServices): LangiumParser {
    const parser = createLangiumParser(services);
    const inner = (parser as unknown as { wrapper: RecoveringParser }).wrapper;
    const original = inner.canRecoverWithSingleTokenDeletion;
    inner.canRecoverWithSingleTokenDeletion = function (expected) {
        const [before, doomed, next] = [this.LA(0), this.LA(1), this.LA(2)];
        // The property behind a stray text is not the name that the text stands in the place of.
        if (expected.name === 'NAME' && !PLAIN_NAMES.has(next.tokenType.name)) return false;
        return (
            EXPENDABLE.has(doomed.tokenType.name) &&
            before?.endLine === doomed.startLine &&
            original.call(this, expected)
        );
    };
    return parser;
}
