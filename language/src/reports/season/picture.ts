import type { Scene } from '../../drawing/scene.ts';
import type { Season } from '../../plan/season/bites.ts';
import { type Tally, tallies } from '../../plan/season/tally.ts';
import { summaryOf } from './table.ts';
import { readingNotes, tenHoursWords } from './words.ts';

/** A plan’s picture with what each position has seen beside it. */
export function withRecord(scene: Scene, season: Season): Scene {
    const seen = new Map(tallies(season, 'position').map((tally) => [tally.of, tally]));
    return {
        ...scene,
        title: { ...scene.title, title: `${scene.title.title}, with the season on it` },
        notes: scene.notes.map((note) => {
            const tally = seen.get(note.position);
            return tally ? { ...note, changes: [...(note.changes ?? []), recordWords(tally)] } : note;
        }),
        remarks: [summaryOf(season), readingNotes[3], ...scene.remarks],
    };
}

/** `9 raised, 5 bit, 3 hooked; 2.1 bites in 10 h (0.6 to 5.4)` */
export function recordWords(tally: Tally): string {
    const { raised, bit, hooked } = tally;
    const often = tenHoursWords(tally);
    return `${raised} raised, ${bit} bit, ${hooked} hooked${often === '' ? '' : `; ${often.replace(' ', ' bites in 10 h ')}`}`;
}
