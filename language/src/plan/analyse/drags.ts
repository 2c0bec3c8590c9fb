import { type DragAt, dragOverSpool } from '../../physics/drag.ts';
import type { DragFigure, DragStage, SpoolFigure } from '../figures.ts';
import type { Reel, SpreadLine } from '../model.ts';
import { CLASS_NEWTONS } from '../resolve/tackle.ts';

/** The stages of a line's drag, as shares of its class and along the spool. */
export function dragsOf(line: SpreadLine): DragFigure[] {
    const outfit = line.outfit?.value;
    const lineClass = outfit?.line?.lineClass;
    const classForce = lineClass && lineClass.si * CLASS_NEWTONS;
    const spool = outfit?.reel && spoolOf(outfit.reel);
    const diameter = outfit?.line?.diameter?.si;
    return (['set', 'hooked', 'full'] as const).flatMap((stage: DragStage): DragFigure[] => {
        const force = line.drag[stage];
        if (!force) return [];
        const over =
            spool &&
            dragOverSpool({
                spool,
                setting: force.si,
                ...(classForce && { lineClass: classForce }),
                ...(diameter && { diameter }),
                ...(outfit.run && { run: outfit.run.si }),
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
