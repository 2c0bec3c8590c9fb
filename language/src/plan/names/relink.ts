import {
    DefaultDocumentBuilder,
    DefaultIndexManager,
    type LangiumDocument,
    type LangiumSharedCoreServices,
    type URI,
} from 'langium';
import type { Reach } from './reach.ts';

/** Knows which files an edit touches by who uses whom, not by who refers to what. */
export class ReachIndex extends DefaultIndexManager {
    private readonly reach: Reach;

    constructor(services: LangiumSharedCoreServices, reach: Reach) {
        super(services);
        this.reach = reach;
    }

    override isAffected(document: LangiumDocument, changedUris: Set<string>): boolean {
        return this.reach.isAffected(document, changedUris);
    }

    /** Who refers to what stands in the documents themselves; without an editor nobody asks the other way round. */
    override async updateReferences(_: LangiumDocument): Promise<void> {}
}

/**
 * Relinks what an edit touches and nothing else. The builder that this replaces relinks, at every edit anywhere,
 * each file that has a broken reference; in a team's folder with many half-done files that is most of them.
 */
export class ReachBuilder extends DefaultDocumentBuilder {
    private readonly reach: Reach;

    constructor(services: LangiumSharedCoreServices, reach: Reach) {
        super(services);
        this.reach = reach;
    }

    protected override emitUpdate(changed: URI[], deleted: URI[]): Promise<void> {
        this.reach.forget();
        return super.emitUpdate(changed, deleted);
    }

    protected override shouldRelink(document: LangiumDocument, changedUris: Set<string>): boolean {
        return this.indexManager.isAffected(document, changedUris);
    }
}
