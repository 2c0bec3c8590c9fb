import type { Figure, LineFigures } from '../plan/figures.ts';
import type { Side, SpreadLine } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';
import type { XY } from './elements.ts';
import type { Mark } from './marks.ts';
import { andList, asWritten, fromWords, gearWords, inMetres, partWords, sideways, titleOf } from './words.ts';

/** What the picture says in words about one position; a drawing places it beside its lure. */
export interface Note {
    readonly id: string;
    readonly position: string;
    readonly title: string;
    readonly side: Side;
    readonly what: SpreadLine['role'];
    readonly at: Place;
    /** `Ink, slant, 330 mm`. */
    readonly gear?: string;
    /** Distance astern in its author's unit. */
    readonly distance?: string;
    /** `wave 2`, or `between waves`. */
    readonly wave?: string;
    /** `front face, lower third`. */
    readonly part?: string;
    readonly onFace?: boolean;
    /** `2.4 m to port`. */
    readonly sideways?: string;
    /** `flat clip, 1.1 m up`. */
    readonly tow?: string;
    /** Of the lure, m; absent where it is not known. */
    readonly astern?: number;
    readonly point?: XY;
    /** The tow point, for a line whose lure cannot be placed. */
    readonly towPoint?: XY;
    /** Why something of this is not drawn: each can be shown as it is. */
    readonly silences: readonly string[];
    readonly marks: readonly Mark[];
    /** What became of it since another version of the plan, in words. */
    readonly changes?: readonly string[];
}

export function noteOf(figures: LineFigures, marks: readonly Mark[]): Note {
    const { line, astern, lateral, wave, towPoint } = figures;
    const name = line.position.name;
    const gear = gearWords(line);
    const standby = line.role === 'standby';
    const back = line.back?.kind === 'distance' ? line.back.distance.quantity : undefined;
    const from = fromWords(line.from);
    const up = towPoint.known && `${inMetres(towPoint.value[2])} up`;
    return {
        id: `note:${name}`,
        position: name,
        title: titleOf(line.position),
        side: line.position.side,
        what: line.role,
        at: line.origin.place,
        ...(gear && { gear }),
        ...(astern.known && { distance: asWritten(astern.value, back), astern: astern.value }),
        ...(wave.known && {
            wave: `wave ${wave.value.wave}`,
            part: partWords(wave.value.part),
            onFace: wave.value.onFace,
        }),
        ...(lateral.known && { sideways: sideways(lateral.value) }),
        ...((from || up) && { tow: [from, up].filter(Boolean).join(', ') }),
        ...(astern.known && lateral.known && { point: [-astern.value, lateral.value] as const }),
        ...(towPoint.known && { towPoint: [towPoint.value[0], towPoint.value[1]] as const }),
        silences: standby ? [] : reasons([astern, lateral, towPoint, wave]),
        marks: marks.filter((mark) => mark.positions.includes(name)),
    };
}

/** The note as one line of plain words. */
export function noteWords(note: Note): string {
    const { title, what, gear, distance, sideways: aside, wave, part, tow, silences, marks } = note;
    const parts = [
        what === 'standby' ? 'standing by' : what === 'teaser' && 'teaser',
        gear,
        distance && `${distance} astern`,
        aside,
        wave && [wave, part].join(', '),
        tow && `from ${tow}`,
        marks.map(({ severity, number }) => `${severity} ${number}`).join(', '),
    ];
    return [`${title}: ${parts.filter(Boolean).join('; ')}.`, ...silences].join(' ');
}

/**
 * Why things are not drawn, each reason once with the positions that it holds for.
 *
 * @param said  reasons that are told elsewhere
 */
export function silencesOf(notes: readonly Note[], said: readonly string[] = []): string[] {
    const titles = new Map<string, string[]>();
    for (const { title, silences } of notes) {
        for (const reason of silences) titles.set(reason, [...(titles.get(reason) ?? []), title]);
    }
    return [...titles]
        .filter(([reason]) => !said.includes(reason))
        .map(([reason, of]) => `${andList(of)}: ${reason}`);
}

function reasons(figures: readonly Figure<unknown>[]): string[] {
    return [...new Set(figures.flatMap((figure) => (figure.known ? [] : [figure.reason])))];
}
