import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Hooks } from '../../plan/model.ts';
import { print } from '../../units/print.ts';
import { units } from '../../units/unit.ts';
import type { SettingOnCard } from './handling.ts';
import { type CardRow, rowsOf } from './rows.ts';
import { inWords } from './told.ts';

/** What is done to set one line, in the order in which it is done. */
export interface LineSteps {
    readonly number?: number;
    readonly position: string;
    readonly steps: readonly string[];
}

/** Only what the plan gives numbers or words for becomes a step; the team's own words come last. */
export function stepsOf(analysed: AnalysedPlan, setting: SettingOnCard): LineSteps[] {
    const lines = new Map(analysed.plan.lines.map((line) => [line.position.name, line]));
    return rowsOf(analysed, setting).flatMap((row): LineSteps[] => {
        const { hooks, lure, bait, steps } = lines.get(row.name)!;
        const rig = row.role === 'fished' ? (hooks ?? (lure ?? bait)?.value.hooks) : undefined;
        const all = [
            ...(rig ? [hooksWords(rig)] : []),
            ...(row.role === 'fished' ? rowSteps(row) : []),
            ...steps.map(({ value }) => value),
        ];
        return all.length === 0
            ? []
            : [{ ...(row.number && { number: row.number }), position: row.name, steps: all }];
    });
}

function hooksWords({ title, count, kind, point }: Hooks): string {
    const rig = [
        title,
        `${print(count.si, units.count)} ${kind ? `${kind.value} ` : ''}${count.si === 1 ? 'hook' : 'hooks'}`,
        point && `point ${point.value}`,
    ];
    return `hook sharp and rigged as written: ${rig.filter(Boolean).join(', ')}`;
}

function rowSteps({ clip, wraps, drags, from, back, wave, reading, loop }: CardRow): string[] {
    const place = [back && inWords(back), wave].filter(Boolean).join(', ');
    const out = [place, reading].filter(Boolean).join(': ');
    return [
        ...(clip ? [`clip tried at ${inWords(clip)}`] : []),
        ...(drags.set ? [`lever at set drag, ${inWords(drags.set)}`] : []),
        ...(out ? [`out to ${out}`] : []),
        ...(wraps ? [`${wraps} of the band, on the main line only`] : []),
        ...(from ? [`towed from ${from}`] : []),
        ...(loop ? [`${inWords(loop)} left slack below the clip`] : []),
    ];
}
