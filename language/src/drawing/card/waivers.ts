import type { Spread } from '../../plan/model.ts';
import { listed } from '../../plan/wording.ts';

/** A finding that the team accepts. */
export interface WaiverOnCard {
    readonly rule: string;
    /** `on port short corner`, `between … and …`; absent where it holds for the whole plan. */
    readonly where?: string;
    readonly because?: string;
    readonly until?: string;
    /** Its day is over on the plan's date. */
    readonly runOut?: true;
}

export function waiversOnCard({ waivers, lines, date }: Spread): WaiverOnCard[] {
    const there = new Set(lines.map(({ position }) => position.name));
    // Taken over from another plan for a line that is not out in this one, it accepts nothing.
    const held = waivers.filter(
        ({ inherited, positions }) => !inherited || positions.every(({ value }) => there.has(value.name)),
    );
    return held.map(({ rule, positions, because, until }) => {
        const names = positions.map(({ value }) => value.name);
        const where = `${names.length > 1 ? 'between' : 'on'} ${listed(names)}`;
        return {
            rule: rule.value,
            ...(names.length > 0 && { where }),
            ...(because && { because: because.value }),
            ...(until && { until: until.value }),
            ...(until && date && until.value < date.value && { runOut: true as const }),
        };
    });
}
