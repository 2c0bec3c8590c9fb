import { type DragAt, dragOverSpool, EXPECTED_RUN } from '../../physics/drag.ts';
import type { DragFigure, DragStage, SpoolFigure } from '../figures.ts';
import type { Drag, Line, Outfit, Reel, SpreadLine } from '../model.ts';
import { CLASS_NEWTONS } from '../resolve/tackle.ts';

/**
 * The stages of a line's drag, as shares of its class and along the spool.
 *
 * @param out  line off the spool while trolling, m: a run begins with that
 */
export function dragsOf({ drag, outfit }: SpreadLine, out = 0): readonly DragFigure[] {
    if (!outfit) return figuresOf(drag, undefined, out);
    const known = lastAsked.get(outfit.value);
    if (known?.out === out && stages.every((stage) => known.drag[stage] === drag[stage]))
        return known.figures;
    const figures = figuresOf(drag, outfit.value, out);
    lastAsked.set(outfit.value, { drag, out, figures });
    return figures;
}

/** An outfit stays the same while a crew types in its plans, and so do the drags that it was set to. */
const lastAsked = new WeakMap<
    Outfit,
    { readonly drag: Drag; readonly out: number; readonly figures: readonly DragFigure[] }
>();

const stages = ['set', 'hooked', 'full'] as const satisfies readonly DragStage[];

function figuresOf(drag: Drag, outfit: Outfit | undefined, out: number): readonly DragFigure[] {
    const lineClass = outfit?.line?.lineClass;
    const classForce = lineClass && lineClass.si * CLASS_NEWTONS;
    const spool = outfit?.reel && spoolOf(outfit.reel, outfit.line);
    const diameter = outfit?.line?.diameter?.si;
    const off = out + (outfit?.run?.si ?? EXPECTED_RUN);
    const isSpent = off > (outfit?.line?.length?.si ?? Number.POSITIVE_INFINITY);
    return stages.flatMap((stage): DragFigure[] => {
        const force = drag[stage];
        if (!force) return [];
        const over =
            spool &&
            dragOverSpool({
                spool,
                setting: force.si,
                ...(classForce && { lineClass: classForce }),
                ...(diameter && { diameter }),
                run: off,
            });
        const along = over?.kind === 'drag' ? over : undefined;
        const afterRun = along && isSpent ? 'spooled' : along?.afterRun;
        return [
            {
                stage,
                force,
                ...(classForce && { share: force.si / classForce }),
                spool: along?.rows.map(spoolFigure) ?? [],
                ...(afterRun && { afterRun: afterRun === 'spooled' ? afterRun : spoolFigure(afterRun) }),
            },
        ];
    });
}

function spoolFigure({ fraction, force, ofClass, atFish }: DragAt): SpoolFigure {
    return {
        left: fraction,
        force,
        ...(ofClass !== undefined && { share: ofClass }),
        ...(atFish && { atFish }),
    };
}

/** A reel as the drag model needs it; undefined while the team has not measured all of it. */
export function spoolOf(reel: Reel, line: Line | undefined) {
    const { full, arbor } = reel;
    const capacity = capacityFor(reel, line);
    if (!full || !arbor || capacity === undefined) return undefined;
    return { fullRadius: full.si / 2, arborRadius: arbor.si / 2, capacity };
}

/** Line on the full spool, m. A spool holds a volume: of a thinner line than its side plate names it takes more. */
export function capacityFor({ capacity }: Reel, line: Line | undefined): number | undefined {
    if (!capacity) return undefined;
    const [named, own] = [capacity.diameter?.si, line?.diameter?.si];
    return capacity.length.si * (named && own ? (named / own) ** 2 : 1);
}
