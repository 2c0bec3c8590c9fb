import type { Summary } from '../../../language/src/editor/protocol.ts';

/*
 * All that the panel and the page in it say to each other. Either end takes nothing on trust: a page can be asked
 * by whatever runs in it, and a panel restored by what an older version left behind.
 */

export type View = 'above' | 'side';

/** A plan on show. */
export interface Shown {
    readonly uri: string;
    readonly plan: string;
    readonly view: View;
    readonly pinned: boolean;
}

/** What the page keeps through a reload, for the panel to begin with. */
export interface Kept {
    readonly shown?: Shown;
}

export interface ShowPicture {
    readonly kind: 'picture';
    readonly shown: Shown;
    readonly svg: string;
    readonly summary: Summary;
    /** Ids of the elements that the text has a place for. */
    readonly places: readonly string[];
    /** Why it is not the text as it stands. */
    readonly outdated?: string;
    /** Less than is meant, for want of a text that could be read: any other picture of the plan is better. */
    readonly partial?: boolean;
}

/** No picture, and what to do about it. A picture that is there stays, with the words above it. */
export interface ShowWords {
    readonly kind: 'words';
    readonly state: 'loading' | 'empty' | 'stopped';
    readonly words: string;
    readonly offers: readonly Offer[];
}

export interface MarkPosition {
    readonly kind: 'mark';
    /** Ids of elements; none takes the mark away. */
    readonly ids: readonly string[];
}

export type ToPage = ShowPicture | ShowWords | MarkPosition;

/** Commands that the page may have carried out, by what its buttons say. */
export const offers = {
    'New Plan…': 'layback.newPlan',
    'New Team Folder…': 'layback.newTeamFolder',
    'Restart Language Server': 'layback.restart',
    'Show the Log': 'layback.showLog',
} as const;

export type Offer = keyof typeof offers;

export type FromPage =
    | { readonly kind: 'ready' }
    | { readonly kind: 'reveal'; readonly id: string }
    | { readonly kind: 'view'; readonly view: View }
    | { readonly kind: 'offer'; readonly offer: Offer };

/** A message of the page's, or undefined for anything else. */
export function fromPage(message: unknown): FromPage | undefined {
    if (!isRecord(message)) return undefined;
    switch (message.kind) {
        case 'ready':
            return { kind: 'ready' };
        case 'reveal':
            return isName(message.id) ? { kind: 'reveal', id: message.id } : undefined;
        case 'view':
            return isView(message.view) ? { kind: 'view', view: message.view } : undefined;
        case 'offer':
            return isOffer(message.offer) ? { kind: 'offer', offer: message.offer } : undefined;
        default:
            return undefined;
    }
}

/** A message of the panel's, or undefined for anything else. */
export function toPage(message: unknown): ToPage | undefined {
    if (!isRecord(message)) return undefined;
    switch (message.kind) {
        case 'picture': {
            const { svg, summary, places, outdated } = message;
            const shown = shownFrom(message.shown);
            if (!shown || typeof svg !== 'string' || !isSummary(summary) || !isTexts(places))
                return undefined;
            const told = typeof outdated === 'string' ? { outdated } : {};
            const part = message.partial === true ? { partial: true } : {};
            return { kind: 'picture', shown, svg, summary, places, ...told, ...part };
        }
        case 'words': {
            const { state, words, offers } = message;
            const isState = state === 'loading' || state === 'empty' || state === 'stopped';
            if (!isState || typeof words !== 'string' || !Array.isArray(offers)) return undefined;
            return { kind: 'words', state, words, offers: offers.filter(isOffer) };
        }
        case 'mark':
            return isTexts(message.ids) ? { kind: 'mark', ids: message.ids } : undefined;
        default:
            return undefined;
    }
}

/** What a page kept, as far as it can still be made sense of. */
export function keptFrom(state: unknown): Kept {
    const shown = isRecord(state) ? shownFrom(state.shown) : undefined;
    return shown ? { shown } : {};
}

function shownFrom(value: unknown): Shown | undefined {
    if (!isRecord(value)) return undefined;
    const { uri, plan, view, pinned } = value;
    if (!isName(uri) || !isName(plan) || !isView(view) || typeof pinned !== 'boolean') return undefined;
    return { uri, plan, view, pinned };
}

/** As long as an address or a name in a plan can sensibly be. */
const longest = 4096;

function isName(value: unknown): value is string {
    return typeof value === 'string' && value !== '' && value.length <= longest;
}

function isView(value: unknown): value is View {
    return value === 'above' || value === 'side';
}

function isOffer(value: unknown): value is Offer {
    return typeof value === 'string' && Object.hasOwn(offers, value);
}

function isSummary(value: unknown): value is Summary {
    if (!isRecord(value)) return false;
    const { title, facts, columns, rows, findings, unknown, remarks, caution } = value;
    return (
        [title, caution].every((text) => typeof text === 'string') &&
        [columns, findings, unknown, remarks].every(isTexts) &&
        isList(facts, isTexts) &&
        isList(rows, (row) => isRecord(row) && typeof row.position === 'string' && isTexts(row.cells))
    );
}

function isTexts(value: unknown): value is readonly string[] {
    return isList(value, (each) => typeof each === 'string');
}

function isList(value: unknown, holds: (each: unknown) => boolean): boolean {
    return Array.isArray(value) && value.every(holds);
}

function isRecord(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null;
}
