import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Scene } from '../scene.ts';
import { aboutCard } from './about.ts';
import { cardContents } from './contents.ts';
import { cardHtml } from './html.ts';
import { cardPages, cardSheet } from './pages.ts';
import type { PaperName } from './paper.ts';
import { pdfOf } from './pdf.ts';

export interface PrintWishes {
    readonly form: 'pdf' | 'html' | 'svg';
    readonly paper: PaperName;
    /** Regular, bold and italic of one family; for a PDF. */
    readonly faces: readonly Uint8Array[];
}

/** What the bundle of this file holds. */
export interface CardPrinter {
    readonly printCard: typeof printCard;
}

/**
 * A plan's card as the content of a file. A bundle of its own, for whoever makes a card now and then and starts often:
 * with all that it needs it is as large as a language server.
 *
 * @param plan  with its turns, or the card says that they were not looked at
 * @param findings  what concerns this plan
 */
export async function printCard(
    plan: AnalysedPlan,
    findings: readonly Finding[],
    scene: Scene,
    { form, paper, faces }: PrintWishes,
): Promise<string | Uint8Array> {
    const contents = cardContents(plan, findings);
    switch (form) {
        case 'html':
            return cardHtml(contents, scene);
        case 'svg':
            return cardSheet(contents, scene, { paper });
        case 'pdf':
            return pdfOf(cardPages(contents, scene, { paper }), { ...aboutCard(contents, plan.plan), faces });
    }
}
