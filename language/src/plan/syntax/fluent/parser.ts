import {
    type AstNode,
    AstUtils,
    type GrammarAST,
    type LangiumCoreServices,
    type LangiumParser,
    type ParseResult,
    type ParserOptions,
} from 'langium';
import { table } from '../../../../grammar/tabulated/table.ts';
import { createParser } from '../parser.ts';
import { readerBy } from './read.ts';

/**
 * Reads a text straight through as long as everything fits, and leaves a text with a fault, whole, to the toolkit's
 * parser, which knows how to get on and what to say. That one takes longer to make than most plans take to check, so
 * it is made at the first fault.
 */
export class FluentParser {
    private readonly services: LangiumCoreServices;
    private readonly read: (text: string) => ParseResult | undefined;
    private made: LangiumParser | undefined;

    constructor(services: LangiumCoreServices) {
        this.services = services;
        let elements: readonly AstNode[] | undefined;
        this.read = readerBy(table, {
            reflection: services.shared.AstReflection,
            linker: () => services.references.Linker,
            element: (at) => {
                elements ??= AstUtils.streamAst(services.Grammar).toArray();
                return elements[at] as GrammarAST.AbstractElement;
            },
        });
    }

    /** The toolkit's parser, steered (see ../parser.ts). */
    get thorough(): LangiumParser {
        this.made ??= createParser(this.services);
        return this.made;
    }

    parse<T extends AstNode = AstNode>(text: string, options?: ParserOptions): ParseResult<T> {
        const read = options?.rule === undefined ? this.read(text) : undefined;
        return (read as ParseResult<T> | undefined) ?? this.readThoroughly<T>(text, options);
    }

    /** A fault in a plan is no fault in this program: where in it that was noticed costs more than to notice it. */
    private readThoroughly<T extends AstNode>(text: string, options?: ParserOptions): ParseResult<T> {
        const { stackTraceLimit } = Error;
        Error.stackTraceLimit = 0;
        try {
            return this.thorough.parse<T>(text, options);
        } finally {
            Error.stackTraceLimit = stackTraceLimit;
        }
    }
}
