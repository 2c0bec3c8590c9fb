import type { Log, LogEvent, Spread } from './model.ts';

/** The plan that was fished at an event's hour: the last one taken up by then. */
export function planAt({ using }: Log, { time }: LogEvent): Spread | undefined {
    const begun = using.filter(({ from }) => (from?.value ?? 0) <= time.value);
    const latest = begun.reduce(
        (last: (typeof begun)[number] | undefined, next) =>
            (next.from?.value ?? 0) >= (last?.from?.value ?? 0) ? next : last,
        undefined,
    );
    return latest?.plan.value;
}
