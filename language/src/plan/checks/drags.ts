import type { Definition } from '../../../grammar/generated/ast.ts';
import { printQuantity } from '../../units/print.ts';
import type { Finding } from '../finding.ts';
import type { Measure } from '../measure.ts';
import type { Drag, DragSaid, SpreadLine } from '../model.ts';
import type { Origin } from '../origin.ts';
import { type Gathered, gather } from '../resolve/gather.ts';
import { readDrag } from '../resolve/tackle.ts';
import { one } from '../resolve/values.ts';
import { ownPlace } from './own.ts';
import { problem } from './problem.ts';

const STAGES = ['set', 'hooked', 'full'] as const;

/** Stages of an outfit's or a method's drag that do not follow one another. */
export function checkDrags(definition: Definition, gathered: Gathered, uri: string): Finding[] {
    const table = gather(definition, gathered);
    const said = readDrag(definition.kind === 'outfit' ? one(table, 'drag')?.table : table);
    return (['force', 'share'] as const).flatMap((kind) => checkOrder(ofKind(said, kind), uri, 'error'));
}

/** The same on a line, where a method or its position has the last word over an outfit. */
export function checkDragsOfLine({ drag }: SpreadLine, uri: string): Finding[] {
    return checkOrder(drag, uri, 'warning');
}

function ofKind(said: DragSaid, kind: 'force' | 'share'): Drag {
    return Object.fromEntries(
        STAGES.flatMap((stage) => {
            const measure = said[stage]?.[kind];
            return measure ? [[stage, measure]] : [];
        }),
    );
}

function checkOrder(drag: Drag, uri: string, severity: 'error' | 'warning'): Finding[] {
    const said = STAGES.flatMap((stage): [string, Measure][] => (drag[stage] ? [[stage, drag[stage]!]] : []));
    return said.slice(1).flatMap(([stage, later], index) => {
        const [before, earlier] = said[index]!;
        // Whoever had the last word brought it about.
        const origins = [later.origin, earlier.origin].sort((a, b) => lastWord(b) - lastWord(a));
        const at = later.si < earlier.si && ownPlace(uri, ...origins);
        if (!at || (severity === 'warning' && isToldThere(later.origin, earlier.origin))) return [];
        return [
            problem('value', at, {
                severity,
                what: `${stage === 'full' ? 'Full' : 'Hooked'} drag is ${written(later)}, and ${before} drag is ${written(earlier)}.`,
                why: 'Drag goes up from stage to stage: set while trolling, hooked once the fish is on, full at the end of the lever.',
                remedy: 'Look for a slip in one of the two.',
                related: [{ at: earlier.origin.place, what: `The ${before} drag is said here.` }],
            }),
        ];
    });
}

/** Of an outfit or a method its own definition is told of; a position says its drag nowhere else. */
function isToldThere(a: Origin, b: Origin): boolean {
    return a.definition === b.definition && a.voice !== 'position' && b.voice !== 'position';
}

function lastWord({ voice }: Origin): number {
    return voice === 'position' ? 2 : voice === 'method' ? 1 : 0;
}

function written({ quantity, si }: Measure): string {
    return quantity ? printQuantity(quantity) : `${si} N`;
}
