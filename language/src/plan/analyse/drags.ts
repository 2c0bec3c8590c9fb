import { type DragAt, dragOverSpool } from '../../physics/drag.ts';
import type { DragFigure, DragStage, SpoolFigure } from '../figures.ts';
import type { Drag, Outfit, Reel, SpreadLine } from '../model.ts';
import { CLASS_NEWTONS } from '../resolve/tackle.ts';

/** The stages of a line's drag, as shares of its class and along the spool. */
export function dragsOf({ drag, outfit }: SpreadLine): readonly DragFigure[] {
    if (!outfit) return figuresOf(drag, undefined);
    const known = lastAsked.get(outfit.value);
    if (known && stages.every((stage) => known.drag[stage] === drag[stage])) return known.figures;
    const figures = figuresOf(drag, outfit.value);
    lastAsked.set(outfit.value, { drag, figures });
    return figures;
}

/** An outfit stays the same while a crew types in its plans, and so do the drags that it was set to. */
const lastAsked = new WeakMap<Outfit, { readonly drag: Drag; readonly figures: readonly DragFigure[] }>();

const stages = ['set', 'hooked', 'full'] as const satisfies readonly DragStage[];

function figuresOf(drag: Drag, outfit: Outfit | undefined): readonly DragFigure[] {
    const lineClass = outfit?.line?.lineClass;
    const classForce = lineClass && lineClass.si * CLASS_NEWTONS;
    const spool = outfit?.reel && spoolOf(outfit.reel);
    const diameter = outfit?.line?.diameter?.si;
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
                ...(outfit?.run && { run: outfit.run.si }),
            });
        const along = over?.kind === 'drag' ? over : undefined;
        const { afterRun } = along ?? {};
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
export function spoolOf({ full, arbor, capacity }: Reel) {
    if (!full || !arbor || !capacity) return undefined;
    return { fullRadius: full.si / 2, arborRadius: arbor.si / 2, capacity: capacity.length.si };
}
