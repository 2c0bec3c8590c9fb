import { type CancellationToken, Uri } from 'vscode';
import {
    type Comparison,
    type ComparisonWanted,
    comparison,
    type NotCompared,
    type Picture,
    type PictureWanted,
    type PlanWanted,
    picture,
    strikeView,
    turnView,
} from '../../../language/src/editor/protocol.ts';
import type { Server } from '../server.ts';
import { lastCommitted } from './git.ts';
import type { Shown, ShowPicture, ShowWords, ToPage } from './messages.ts';
import type { Choice } from './scene-messages.ts';
import type { View } from './views.ts';

/** What a plan is looked at for. */
export interface Wanted extends PlanWanted {
    readonly view: View;
    readonly choice: Choice;
    readonly wishes: NonNullable<PictureWanted['wishes']>;
}

/** A plan as a view shows it. */
export interface Looked extends Pick<Picture, 'uri' | 'version' | 'plan' | 'places'> {
    /** Of the views that are one drawing. */
    readonly picture?: Picture;
    /** The position that a bite is shown on. */
    readonly line?: string;
    readonly message: (shown: Shown) => ToPage;
}

/** @returns undefined where the file has no plan, or nobody wants the answer any more */
export async function look(
    server: Server,
    { view, choice, wishes, ...plan }: Wanted,
    token: CancellationToken,
): Promise<Looked | undefined> {
    switch (view) {
        case 'above':
        case 'side': {
            const answer = await server.ask(picture, { ...plan, view, wishes }, token);
            return answer ? drawn(answer, wishes) : undefined;
        }
        case 'turn': {
            const answer = await server.ask(turnView, { ...plan, ...choice.turn }, token);
            return answer ? numbered('turn', answer, wishes) : undefined;
        }
        case 'strike': {
            const answer = await server.ask(strikeView, { ...plan, ...choice.strike }, token);
            const line = answer ? { line: answer.scene.position } : {};
            return answer ? { ...numbered('strike', answer, wishes), ...line } : undefined;
        }
        case 'compare':
            return compared(server, { view, choice, wishes, ...plan }, token);
    }
}

function drawn(answer: Picture, wishes: Wanted['wishes'], more: Pick<ShowPicture, 'compared'> = {}): Looked {
    const { uri, plan, places, version } = answer;
    return {
        ...{ uri, plan, places, ...(version !== undefined && { version }) },
        picture: answer,
        message: (shown) => ({
            kind: 'picture',
            shown,
            svg: answer.svg,
            summary: answer.summary,
            places: places.map(({ id }) => id),
            moves: answer.moves,
            ...(version !== undefined && { version }),
            ...(answer.outdated !== undefined && { outdated: answer.outdated }),
            ...(answer.partial && { partial: true }),
            ...(wishes.foot === false && { bare: true }),
            ...more,
        }),
    };
}

type Viewed = Pick<Picture, 'uri' | 'version' | 'plan' | 'places' | 'outdated'> & { readonly scene: unknown };

function numbered(kind: 'turn' | 'strike', answer: Viewed, { palette }: Wanted['wishes']): Looked {
    const { uri, plan, places, version, outdated, scene } = answer;
    const told = { ...(version !== undefined && { version }), ...(outdated !== undefined && { outdated }) };
    const ids = places.map(({ id }) => id);
    return {
        ...{ uri, plan, places, ...(version !== undefined && { version }) },
        message: (shown) => ({ kind, shown, scene, palette, places: ids, ...told }) as ToPage,
    };
}

/** A plan over an earlier version of it; before one is chosen, and where it cannot be had, what to do. */
async function compared(
    server: Server,
    wanted: Wanted,
    token: CancellationToken,
): Promise<Looked | undefined> {
    const { choice, wishes } = wanted;
    const answer = await overEarlier(server, wanted, token);
    if (!answer) return undefined;
    if ('reason' in answer) return asks(answer);
    const from =
        choice.earlier === 'commit'
            ? 'as of the last commit; what it uses is as it stands now'
            : fileName(choice.earlier!.uri);
    return drawn(answer, wishes, { compared: { before: answer.before, from, told: answer.told } });
}

async function overEarlier(
    server: Server,
    { choice, wishes, view: _, ...plan }: Wanted,
    token: CancellationToken,
): Promise<Comparison | NotCompared | null | undefined> {
    const earlier = await earlierOf(choice, plan.uri);
    return server.ask(comparison, { ...plan, earlier, wishes }, token);
}

async function earlierOf({ earlier }: Choice, uri: string): Promise<ComparisonWanted['earlier']> {
    if (earlier === undefined)
        return { reason: 'Two versions on one sheet, the earlier one in broken lines. Compare with what?' };
    if (earlier !== 'commit') return earlier;
    const committed = await lastCommitted(Uri.parse(uri, true));
    return 'reason' in committed ? committed : { uri, text: committed.text };
}

/** A view on a sheet of paper. */
export interface Sheet extends Pick<Picture, 'uri' | 'plan' | 'outdated'> {
    readonly view: View;
    readonly svg: string;
}

/**
 * Any of the views as `layback draw` draws it.
 *
 * @returns undefined where the file has no plan; why there is nothing to compare with
 */
export async function sheetOf(
    server: Server,
    wanted: Wanted,
    token: CancellationToken,
): Promise<Sheet | NotCompared | undefined> {
    const { view, choice, wishes, ...plan } = wanted;
    const asked = async () => {
        switch (view) {
            case 'above':
            case 'side':
                return server.ask(picture, { ...plan, view, wishes }, token);
            case 'turn':
                return server.ask(turnView, { ...plan, ...choice.turn, sheet: wishes }, token);
            case 'strike':
                return server.ask(strikeView, { ...plan, ...choice.strike, sheet: wishes }, token);
            case 'compare':
                return overEarlier(server, wanted, token);
        }
    };
    const answer = await asked();
    if (!answer || 'reason' in answer) return answer ?? undefined;
    const { uri, plan: entry, svg, outdated } = answer;
    return svg === undefined
        ? undefined
        : { uri, plan: entry, svg, view, ...(outdated !== undefined && { outdated }) };
}

function asks({ uri, plan, version, reason: words }: NotCompared): Looked {
    const offers: ShowWords['offers'] = ['Compare with Another Plan…', 'Compare with the Last Commit'];
    return {
        ...{ uri, plan, places: [], ...(version !== undefined && { version }) },
        message: (shown) => ({ kind: 'words', state: 'choose', words, offers, shown }),
    };
}

export function fileName(uri: string): string {
    return decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
}
