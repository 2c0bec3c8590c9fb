import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Day } from '../../plan/model.ts';
import type { Scene } from '../scene.ts';
import { aboutCard } from './about.ts';
import { cardContents } from './contents.ts';
import { cardHtml } from './html.ts';
import { cardPages, cardSheet, isCurtailed } from './pages.ts';
import type { PaperName } from './paper.ts';
import { pdfOf } from './pdf.ts';

export interface PrintWishes {
    readonly form: 'pdf' | 'html' | 'svg';
    readonly paper: PaperName;
    /** Regular, bold and italic of one family; for a PDF. */
    readonly faces: readonly Uint8Array[];
    /** Those of the plan's file. */
    readonly days: readonly Day[];
}

export interface PrintedCard {
    readonly content: string | Uint8Array;
    /** Whether letters of the plan are counted on it instead of printed. */
    readonly curtailed: boolean;
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
    { form, paper, faces, days }: PrintWishes,
): Promise<PrintedCard> {
    const contents = cardContents(plan, findings, days);
    if (form === 'html') return { content: cardHtml(contents, scene), curtailed: false };
    const about = { ...aboutCard(contents, plan.plan), faces };
    const content =
        form === 'svg'
            ? cardSheet(contents, scene, { paper })
            : await pdfOf(cardPages(contents, scene, { paper }), about);
    return { content, curtailed: isCurtailed(contents) };
}
