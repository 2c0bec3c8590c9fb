import type { Season } from '../../plan/season/bites.ts';
import { printTime } from '../../units/time.ts';
import { type Ink, noColours } from '../ink.ts';
import { table } from '../table.ts';
import { readable, widthFor } from '../width.ts';

/**
 * What an event's radio wants to hear, by day: when, who, which fish, and what became of it. Where it was is not in it,
 * since a place is the crew's own.
 */
export async function callList({ logs, bites }: Season, ink: Ink = noColours): Promise<string> {
    const calls = bites.filter(({ went }) => went.hooked);
    const width = await widthFor(
        calls.flatMap(({ event }) => [event.angler?.value ?? '', event.species?.value ?? '']),
    );
    const days = logs.flatMap((log): string[] => {
        const rows = calls
            .filter((call) => call.log === log)
            .map(({ event }) => [
                printTime(event.time.value),
                event.angler?.value ?? 'no angler named',
                event.species?.value ?? 'no fish named',
                event.outcome
                    .map(({ value }) => value)
                    .filter((word) => word !== 'bite' && word !== 'raise')
                    .join(', '),
            ]);
        if (rows.length === 0) return [];
        const zone = log.zone ? `, ${log.zone.value}` : '';
        const event = bites.find((bite) => bite.log === log)?.plan?.event?.value;
        const how = event?.callIn ? ` Call in: ${event.callIn.value}` : '';
        return [
            [
                ink.strong(readable(`${log.title} (${log.date.value}${zone}).${how}`)),
                ...table(
                    [{ head: 'Time' }, { head: 'Angler' }, { head: 'Fish' }, { head: 'Outcome' }],
                    rows,
                    ink,
                    width,
                ),
            ].join('\n'),
        ];
    });
    return days.length === 0
        ? 'No fish was hooked, so there is nothing to call in.\n'
        : `${days.join('\n\n')}\n`;
}
