import type { LureMove, Picture, Summary, Trial } from '../../../language/src/editor/protocol.ts';
import type { Room } from './paper.ts';
import {
    type Choice,
    choiceFrom,
    type ShowStrike,
    type ShowTurn,
    strikeFrom,
    turnFrom,
} from './scene-messages.ts';
import { isList, isName, isRecord, isTexts } from './shapes.ts';
import { isView, type View } from './views.ts';

/*
 * All that the panel and the page in it say to each other. Either end takes nothing on trust: a page can be asked
 * by whatever runs in it, and a panel restored by what an older version left behind.
 */

export type { View };

/** A plan on show. */
export interface Shown {
    readonly uri: string;
    readonly plan: string;
    readonly view: View;
    readonly pinned: boolean;
    /** What the view was asked for, where it can be asked for more than a plan. */
    readonly choice?: Choice;
}

/** What the page keeps through a reload, for the panel to begin with. */
export interface Kept {
    readonly shown?: Shown;
}

/** The server's picture, without what is for the panel alone. */
export interface ShowPicture
    extends Pick<Picture, 'svg' | 'summary' | 'moves' | 'version' | 'outdated' | 'partial'> {
    readonly kind: 'picture';
    readonly shown: Shown;
    /** Ids of the elements that the text has a place for. */
    readonly places: readonly string[];
    /** Of a comparison: the earlier plan's title, where it comes from, and every change as a sentence. */
    readonly compared?: {
        readonly before: string;
        readonly from: string;
        readonly told: readonly string[];
    };
    /** Drawn without what stands below it on paper, the caution among it: the page has to say that. */
    readonly bare?: boolean;
}

/**
 * No picture, and what to do about it. A picture that is there stays, with the words above it; but for `choose`, which
 * says what a view wants to know first.
 */
export interface ShowWords {
    readonly kind: 'words';
    readonly state: 'loading' | 'empty' | 'stopped' | 'choose';
    /** Of the view that wants to know something. */
    readonly shown?: Shown;
    readonly words: string;
    readonly offers: readonly Offer[];
}

export interface MarkPosition {
    readonly kind: 'mark';
    /** Ids of elements; none takes the mark away. */
    readonly ids: readonly string[];
}

/** A lure as it would be where the hand holds it. */
export interface ShowTrial extends Trial {
    readonly kind: 'trial';
    readonly position: string;
    /** True while its turns are still being followed. */
    readonly turning: boolean;
}

/** A lure stays where the text has it, and why. */
export interface Unmoved {
    readonly kind: 'unmoved';
    readonly words: string;
}

export type ToPage = ShowPicture | ShowTurn | ShowStrike | ShowWords | MarkPosition | ShowTrial | Unmoved;

/** Commands that the page may have carried out, by what its buttons say. */
export const offers = {
    'New Plan…': 'layback.newPlan',
    'New Team Folder…': 'layback.newTeamFolder',
    'Restart Language Server': 'layback.restart',
    'Show the Log': 'layback.showLog',
    'Compare with Another Plan…': 'layback.compareWithPlan',
    'Compare with the Last Commit': 'layback.compareWithCommit',
} as const;

export type Offer = keyof typeof offers;

export type FromPage =
    | { readonly kind: 'ready' }
    /** How much room there is for a drawing. */
    | ({ readonly kind: 'room' } & Room)
    | { readonly kind: 'reveal'; readonly id: string }
    | { readonly kind: 'view'; readonly view: View }
    /** Another turn, or another bite. */
    | { readonly kind: 'choose'; readonly choice: Choice }
    /** A lure is held at a place, m astern: what would follow? */
    | { readonly kind: 'try'; readonly position: string; readonly astern: number }
    /** It is let go there: the text is to say so. */
    | { readonly kind: 'move'; readonly position: string; readonly astern: number }
    | { readonly kind: 'leave' }
    | { readonly kind: 'offer'; readonly offer: Offer };

/** A message of the page's, or undefined for anything else. */
export function fromPage(message: unknown): FromPage | undefined {
    if (!isRecord(message)) return undefined;
    switch (message.kind) {
        case 'ready':
            return { kind: 'ready' };
        case 'room': {
            const { width, height } = message;
            return isPixels(width) && isPixels(height) ? { kind: 'room', width, height } : undefined;
        }
        case 'reveal':
            return isName(message.id) ? { kind: 'reveal', id: message.id } : undefined;
        case 'view':
            return isView(message.view) ? { kind: 'view', view: message.view } : undefined;
        case 'choose': {
            const choice = choiceFrom(message.choice);
            return choice && { kind: 'choose', choice };
        }
        case 'try':
        case 'move': {
            const { kind, position, astern } = message;
            return isName(position) && isPlace(astern) ? { kind, position, astern } : undefined;
        }
        case 'leave':
            return { kind: 'leave' };
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
            const { svg, summary, places, moves, version, outdated } = message;
            const shown = shownFrom(message.shown);
            if (!shown || typeof svg !== 'string' || !isSummary(summary)) return undefined;
            if (!isTexts(places) || !isMoves(moves)) return undefined;
            return {
                kind: 'picture',
                shown,
                svg,
                summary,
                places,
                moves,
                ...(typeof version === 'number' && { version }),
                ...(typeof outdated === 'string' && { outdated }),
                ...(message.partial === true && { partial: true }),
                ...(message.bare === true && { bare: true }),
                ...(isCompared(message.compared) && { compared: message.compared }),
            };
        }
        case 'turn':
            return turnFrom(message, shownFrom(message.shown));
        case 'strike':
            return strikeFrom(message, shownFrom(message.shown));
        case 'words': {
            const { state, words, offers } = message;
            const shown = shownFrom(message.shown);
            if (!isState(state) || typeof words !== 'string' || !Array.isArray(offers)) return undefined;
            return { kind: 'words', state, words, offers: offers.filter(isOffer), ...(shown && { shown }) };
        }
        case 'mark':
            return isTexts(message.ids) ? { kind: 'mark', ids: message.ids } : undefined;
        case 'trial':
            return trialFrom(message);
        case 'unmoved':
            return typeof message.words === 'string' ? { kind: 'unmoved', words: message.words } : undefined;
        default:
            return undefined;
    }
}

function trialFrom(message: Record<string, unknown>): ShowTrial | undefined {
    const { position, text, astern, wave, svg, summary, moves, findings, turns, turning } = message;
    if (!isName(position) || typeof text !== 'string' || !isPlace(astern)) return undefined;
    if (typeof svg !== 'string' || !isSummary(summary) || !isMoves(moves)) return undefined;
    if (!isRecord(findings) || !isTexts(findings.here) || !isTexts(findings.gone)) return undefined;
    return {
        kind: 'trial',
        position,
        text,
        astern,
        svg,
        summary,
        moves,
        findings: { here: findings.here, gone: findings.gone },
        turning: turning === true,
        ...(typeof wave === 'number' && { wave }),
        ...(typeof turns === 'string' && { turns }),
    };
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
    const choice = choiceFrom(value.choice);
    return { uri, plan, view, pinned, ...(choice && { choice }) };
}

function isPixels(value: unknown): value is number {
    return typeof value === 'number' && value >= 1 && value <= 20_000;
}

function isState(value: unknown): value is ShowWords['state'] {
    return value === 'loading' || value === 'empty' || value === 'stopped' || value === 'choose';
}

function isCompared(value: unknown): value is ShowPicture['compared'] & object {
    return (
        isRecord(value) &&
        typeof value.before === 'string' &&
        typeof value.from === 'string' &&
        isTexts(value.told)
    );
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

function isMoves(value: unknown): value is readonly LureMove[] {
    const isFace = (face: unknown) => isRecord(face) && isPlace(face.astern) && typeof face.wave === 'number';
    return isList(
        value,
        (move) =>
            isRecord(move) &&
            isName(move.position) &&
            isPlace(move.astern) &&
            (move.counts === 'waves' || move.counts === 'distance') &&
            isList(move.faces, isFace),
    );
}

/** As far as a place astern can sensibly be, m. */
const farthest = 10_000;

function isPlace(value: unknown): value is number {
    return typeof value === 'number' && value >= 0 && value <= farthest;
}
