import {
    createDefaultCoreModule,
    createDefaultSharedCoreModule,
    DefaultServiceRegistry,
    EmptyFileSystem,
    type IParserConfig,
    inject,
    type LangiumCoreServices,
    type LangiumParser,
    type LangiumSharedCoreServices,
    type Module,
    type PartialLangiumCoreServices,
    type PartialLangiumSharedCoreServices,
} from 'langium';
import {
    LaybackGeneratedModule,
    LaybackGeneratedSharedModule,
    parserConfig,
} from '../../grammar/generated/module.ts';
import { SheetLinker } from './names/link.ts';
import { Reach } from './names/reach.ts';
import { ReachBuilder, ReachIndex } from './names/relink.ts';
import { NoSymbols, ReachScope } from './names/scope.ts';
import { FluentParser } from './syntax/fluent/parser.ts';
import { PlaceAwareLexer } from './syntax/lexer.ts';
import { lazyLookahead } from './syntax/lookahead.ts';
import { lexerMessages, parserMessages } from './syntax/messages.ts';
import { createParser } from './syntax/parser.ts';
import { OverlappingTokens } from './syntax/tokens.ts';
import { PlainValues } from './syntax/values.ts';

export interface LaybackSharedAdditions {
    readonly names: { readonly Reach: Reach };
}

export type LaybackSharedServices = LangiumSharedCoreServices & LaybackSharedAdditions;
export type LaybackServices = LangiumCoreServices & { shared: LaybackSharedServices };

/** What the language puts in place of the toolkit's own services; the same for the command and the editor. */
export const sharedModule: Module<
    LaybackSharedServices,
    PartialLangiumSharedCoreServices & LaybackSharedAdditions
> = {
    ServiceRegistry: (services) => new OneLanguage(services),
    names: { Reach: (services) => new Reach(services) },
    workspace: {
        IndexManager: (services) => new ReachIndex(services, services.names.Reach),
        DocumentBuilder: (services) => new ReachBuilder(services, services.names.Reach),
    },
};

/** Whatever a file is called: a name that is nothing but its ending is no name of another language. */
class OneLanguage extends DefaultServiceRegistry {
    override getServices(): LangiumCoreServices {
        const [only] = this.all;
        if (!only) throw new Error('No language is registered yet.');
        return only;
    }

    override hasServices(): boolean {
        return true;
    }
}

export const languageModule: Module<LaybackServices, PartialLangiumCoreServices> = {
    parser: {
        // Typed as what the toolkit hands on to the parser library, which takes a strategy too.
        ParserConfig: () =>
            ({
                ...parserConfig,
                lookaheadStrategy: lazyLookahead(),
            }) as IParserConfig,
        TokenBuilder: () => new OverlappingTokens(),
        Lexer: (services) => new PlaceAwareLexer(services),
        LangiumParser: (services) => createParser(services),
        ParserErrorMessageProvider: () => parserMessages,
        LexerErrorMessageProvider: () => lexerMessages,
        ValueConverter: () => new PlainValues(),
    },
    references: {
        Linker: (services) => new SheetLinker(services),
        ScopeProvider: (services) => new ReachScope(services, services.shared.names.Reach),
        ScopeComputation: () => new NoSymbols(),
    },
};

/**
 * For texts that are read once, and most of which have no fault. A text that somebody types into has one at every
 * other keystroke: an editor starts with the parser that gets on.
 */
const fluentModule: Module<LaybackServices, PartialLangiumCoreServices> = {
    parser: {
        // Of the toolkit's parser only `parse` is ever asked for.
        LangiumParser: (services) =>
            new FluentParser(services) as Pick<LangiumParser, 'parse'> as LangiumParser,
    },
};

/** The language without an editor: parse, link, resolve. */
export function createServices(): LaybackServices {
    return servicesWith(fluentModule);
}

/** The same in a world beside an editor's, with the parser that the editor brings along anyway. */
export function createServicesBeside(): LaybackServices {
    return servicesWith({});
}

function servicesWith(parser: typeof fluentModule): LaybackServices {
    const shared = inject(
        createDefaultSharedCoreModule(EmptyFileSystem),
        LaybackGeneratedSharedModule,
        sharedModule,
    );
    const services = inject(
        createDefaultCoreModule({ shared }),
        LaybackGeneratedModule,
        languageModule,
        parser,
    );
    shared.ServiceRegistry.register(services);
    return services as LaybackServices;
}
