/** What a rule stands on. Nobody should have to take a tool's word for it. */
export type Standing =
    | { readonly kind: 'physics'; readonly source: string; readonly estimated?: string }
    | { readonly kind: 'written'; readonly edition: string }
    | { readonly kind: 'practice'; readonly reason: string }
    | { readonly kind: 'housekeeping' };

/**
 * Follows from a model.
 *
 * @param source  of the model, in a few words
 * @param estimated  the inputs that nobody measured, where there are such
 */
export function physics(source: string, estimated?: string): Standing {
    return { kind: 'physics', source, ...(estimated !== undefined && { estimated }) };
}

/** Stands in a published rule book. Events have their own: the current edition decides. */
export function written(edition: string): Standing {
    return { kind: 'written', edition };
}

/** Common practice, no source: crews differ, so it can be set, waived and switched off. */
export function practice(reason: string): Standing {
    return { kind: 'practice', reason };
}

/** About the text, not about the fishing. */
export const housekeeping: Standing = { kind: 'housekeeping' };

/** The standing as its page and the index say it. */
export function describe(standing: Standing): string {
    switch (standing.kind) {
        case 'physics':
            return `Physics: ${standing.source}${standing.estimated ? ` Estimated input: ${standing.estimated}` : ''}`;
        case 'written':
            return `Written rule: ${standing.edition}`;
        case 'practice':
            return `Common practice, no source. ${standing.reason}`;
        case 'housekeeping':
            return 'Housekeeping: about the text, not about the fishing.';
    }
}
