import { createLangiumParser, DefaultLinker, type LangiumCoreServices, type LangiumDocument } from 'langium';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { parserConfig } from '../../language/grammar/generated/module.ts';

/** The toolkit's own parser and linker in the place of ours, and a check that is asked for each document. */
export function defaultModule(found: (document: LangiumDocument<Sheet>) => unknown[]) {
    return {
        parser: {
            ParserConfig: () => parserConfig,
            LangiumParser: (services: LangiumCoreServices) => createLangiumParser(services),
        },
        references: { Linker: (services: LangiumCoreServices) => new DefaultLinker(services) },
        validation: {
            DocumentValidator: () => ({
                async validateDocument(document: LangiumDocument<Sheet>) {
                    return found(document);
                },
            }),
        },
    };
}
