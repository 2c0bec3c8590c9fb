import type { AnalysedPlan, CleanTurn, SideTurnFigures } from '../../plan/figures.ts';
import { limitWords } from '../../plan/turn-words.ts';
import { print } from '../../units/print.ts';
import type { Speech } from '../figures-speech.ts';

/** A tightest turn that is another one. */
export interface TurnChange {
    readonly to: 'port' | 'starboard';
    /** No two lines touch; or every lure keeps working. */
    readonly what: 'clean' | 'every lure works';
    readonly before: string;
    readonly after: string;
    /** m; absent where none that was looked at is. */
    readonly radius: { readonly before?: number; readonly after?: number };
}

/** Nearer than this two radii are one to a helm, m; about what they are found to. */
const APART = 1;

export function turnsApart(before: AnalysedPlan, after: AnalysedPlan, speech: Speech): TurnChange[] {
    return (['port', 'starboard'] as const).flatMap((to) =>
        (
            [
                ['clean', 'noFoul'],
                ['every lure works', 'allWorking'],
            ] as const
        ).flatMap(([what, key]): TurnChange[] => {
            const [was, is] = [turnOf(before, to, key), turnOf(after, to, key)];
            if (!was && !is) return [];
            const alike = was && is && limitOf(was) === limitOf(is) && isNear(was.radius, is.radius);
            if (alike) return [];
            return [
                {
                    to,
                    what,
                    before: wordsOf(was, speech),
                    after: wordsOf(is, speech),
                    radius: {
                        ...(was?.radius !== undefined && { before: was.radius }),
                        ...(is?.radius !== undefined && { after: is.radius }),
                    },
                },
            ];
        }),
    );
}

function turnOf(
    { turns }: AnalysedPlan,
    to: 'port' | 'starboard',
    key: keyof Pick<SideTurnFigures, 'noFoul' | 'allWorking'>,
): CleanTurn | undefined {
    return turns?.known ? turns.value[to][key] : undefined;
}

function isNear(a: number | undefined, b: number | undefined): boolean {
    return a === undefined || b === undefined ? a === b : Math.abs(a - b) < APART;
}

function limitOf({ limit }: CleanTurn): string {
    return limit ? limitWords(limit) : '';
}

function wordsOf(turn: CleanTurn | undefined, { length }: Speech): string {
    if (!turn) return 'not known';
    const { radius, limit } = turn;
    const trouble = limit ? limitWords(limit) : '';
    if (radius === undefined)
        return trouble ? `none that was looked at (${trouble})` : 'none that was looked at';
    return `${print(radius, length, { digits: 0 })}${trouble ? ` (tighter, ${trouble})` : ''}`;
}
