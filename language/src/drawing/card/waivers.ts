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

export function waiversOnCard({ waivers, date }: Spread): WaiverOnCard[] {
    return waivers.map(({ rule, positions, because, until }) => {
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
