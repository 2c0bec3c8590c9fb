import { createDefaultCoreModule, createDefaultSharedCoreModule, EmptyFileSystem, inject } from 'langium';
import {
    LaybackGeneratedModule,
    LaybackGeneratedSharedModule,
} from '../../../../grammar/generated/module.ts';
import { OverlappingTokens } from '../tokens.ts';
import type { Table } from './table.ts';
import { tabulate } from './tabulate.ts';

/** The table of the language's own grammar, from the grammar itself. */
export function tabulated(): Table {
    const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), LaybackGeneratedSharedModule);
    const services = inject(createDefaultCoreModule({ shared }), LaybackGeneratedModule, {
        parser: { TokenBuilder: () => new OverlappingTokens() },
    });
    return tabulate(services);
}
