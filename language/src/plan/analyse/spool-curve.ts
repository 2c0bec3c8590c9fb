import { dragOverSpool } from '../../physics/drag.ts';
import type { DragStage, Figure } from '../figures.ts';
import type { SpreadLine } from '../model.ts';
import { spoolOf } from './drags.ts';
import { known, silent } from './figure.ts';

/** The drag of one stage as the spool empties. */
export interface SpoolCurve {
    readonly stage: DragStage;
    /** Line off the spool, m. */
    readonly off: readonly number[];
    /** At the reel, N. */
    readonly force: readonly number[];
    /** At the fish, with what the water holds on to the line, N; absent without a diameter. */
    readonly atFish?: { readonly low: readonly number[]; readonly high: readonly number[] };
}

/** So many stretches from the full spool to the bare arbor. */
const STRETCHES = 24;

/** Drag against line off the spool, a curve for each stage that the line has. */
export function spoolCurvesOf({ drag, outfit, position }: SpreadLine): Figure<readonly SpoolCurve[]> {
    const reel = outfit?.value.reel;
    const spool = reel && spoolOf(reel, outfit?.value.line);
    if (!spool) {
        return silent(
            `The spool of the ${position.name} was not measured: \`full\` and \`arbor\` diameter, and the \`capacity\`.`,
        );
    }
    const diameter = outfit?.value.line?.diameter?.si;
    const curves: SpoolCurve[] = [];
    for (const stage of ['set', 'hooked', 'full'] as const) {
        const setting = drag[stage]?.si;
        if (setting === undefined) continue;
        const off = Array.from({ length: STRETCHES + 1 }, (_, index) => (spool.capacity * index) / STRETCHES);
        const rows = off.map((run) => {
            const over = dragOverSpool({ spool, setting, run, ...(diameter && { diameter }) });
            return over.kind === 'drag' && over.afterRun !== 'spooled' ? over.afterRun : undefined;
        });
        const sound = rows.filter((row) => row !== undefined);
        if (sound.length < rows.length)
            return silent(
                `The spool of the ${position.name} cannot be: its arbor is not smaller than the full spool.`,
            );
        const atFish = sound.flatMap((row) => row.atFish ?? []);
        curves.push({
            stage,
            off,
            force: sound.map(({ force }) => force),
            ...(atFish.length === sound.length && {
                atFish: { low: atFish.map(({ low }) => low), high: atFish.map(({ high }) => high) },
            }),
        });
    }
    return curves.length > 0 ? known(curves) : silent(`No \`drag\` of the ${position.name} is said.`);
}
