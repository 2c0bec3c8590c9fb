import type { Measure, Span } from '../measure.ts';
import type { Said } from '../origin.ts';
import type { Defined } from './defined.ts';
import type { Drag, DragSaid } from './tackle.ts';

export interface Method extends Defined {
    /** `direct`: the hook is driven at the bite. `drop-back`: light drag, a slack loop, a wait. */
    readonly style?: Said<'direct' | 'drop-back'>;
    readonly drag: Drag;
    /** The same as it was said: a share becomes a load only on a line of some class. */
    readonly dragSaid: DragSaid;
    readonly loop?: Measure;
    readonly wait?: Measure;
    readonly clip?: Measure;
    readonly wraps?: Measure;
    readonly speed?: Span;
    /** The most that a fish should have to pull to open the clip. */
    readonly opens?: Measure;
}

export interface Species extends Defined {
    readonly speed?: Span;
    readonly weight?: Span;
}
