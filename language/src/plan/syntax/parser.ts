import { type IToken, NoViableAltException, type Rule, type TokenType } from 'chevrotain';
import { type LangiumCoreServices, type LangiumParser, prepareLangiumParser } from 'langium';
import { followsOf } from './follows.ts';
import { parserMessages } from './messages.ts';
import { rememberRecovery } from './recovery.ts';
import { unwindRepetition } from './unwound.ts';

/** The inner hooks of the parser underneath that its start and its recovery are steered by. */
interface RecoveringParser {
    recoveryEnabled: boolean;
    resyncFollows: Record<string, TokenType[]>;
    LA(howFar: number): IToken;
    canRecoverWithSingleTokenDeletion(expected: TokenType): boolean;
    getGAstProductions(): Record<string, Rule>;
    getCurrRuleFullName(): string;
    raiseNoAltException(): never;
    SAVE_ERROR(error: NoViableAltException): NoViableAltException;
}

const EXPENDABLE = new Set(['ID', 'INNER', 'UNIT', 'STRING']);

const PLAIN_NAMES = new Set(['ID', 'INNER']);

/**
 * The parser, with one habit taken away: to get on, it would drop a single token that is in its way, and so
 * read `speed⏎crew 3` as a speed of 3. Only a stray word, unit or text on the same line may be dropped.
 */
export function createParser(services: LangiumCoreServices): LangiumParser {
    const parser = prepareLangiumParser(services);
    const inner = (parser as unknown as { wrapper: RecoveringParser }).wrapper;
    finalize(parser, inner);
    unwindRepetition(parser);
    rememberRecovery(parser);
    tellPlainly(inner);
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

/** To say that nothing fits, the parser would list at every fault all that would: our sentences name the few that matter. */
function tellPlainly(inner: RecoveringParser): void {
    inner.raiseNoAltException = function () {
        const [previous, actual] = [this.LA(0), this.LA(1)];
        const message = parserMessages.buildNoViableAltMessage({
            expectedPathsPerAlt: [],
            actual: [actual],
            previous,
            customUserDescription: '',
            ruleName: this.getCurrRuleFullName(),
        });
        throw this.SAVE_ERROR(new NoViableAltException(message, actual, previous));
    };
}

/** Where to get on after a fault is worked out at the first fault: most plans that are checked have none. */
function finalize(parser: LangiumParser, inner: RecoveringParser): void {
    const { recoveryEnabled } = inner;
    inner.recoveryEnabled = false;
    parser.finalize();
    inner.recoveryEnabled = recoveryEnabled;
    let follows: Record<string, TokenType[]> | undefined;
    Object.defineProperty(inner, 'resyncFollows', {
        get: () => (follows ??= followsOf(Object.values(inner.getGAstProductions()))),
    });
}
