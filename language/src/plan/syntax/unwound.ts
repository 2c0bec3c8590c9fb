import type { LangiumParser } from 'langium';

/** The inner hooks of the parser underneath that a repetition gets on by after a fault. */
interface RepeatingParser {
    manyInternal: Repetition;
    doSingleRepetition(once: () => void): boolean;
    attemptInRepetitionRecovery(
        again: Repetition,
        args: RepetitionArguments,
        goesOn: () => boolean,
        ...rest: RepetitionPlace
    ): void;
}

type Repetition = (...args: RepetitionArguments) => void;
type RepetitionArguments = [occurrence: number, once: (() => void) | { DEF: () => void }];
type RepetitionPlace = [kind: number, occurrence: number, walker: unknown, moved: boolean];

/**
 * Gets on after a fault in a loop. The parser underneath starts the whole repetition anew inside the old one,
 * at every fault one deeper, and thousands of faults in one block end its stack.
 */
export function unwindRepetition(parser: LangiumParser): void {
    const inner = (parser as unknown as { wrapper: RepeatingParser }).wrapper;
    const original = inner.attemptInRepetitionRecovery;
    inner.attemptInRepetitionRecovery = function (again, args, goesOn, kind, occurrence, walker, moved) {
        if (again !== this.manyInternal) {
            original.call(this, again, args, goesOn, kind, occurrence, walker, moved);
            return;
        }
        const once = typeof args[1] === 'function' ? args[1] : args[1].DEF;
        let caught = true;
        let advanced = moved;
        const catchUp = () => {
            caught = true;
        };
        while (caught) {
            caught = false;
            original.call(this, catchUp, args, goesOn, kind, occurrence, walker, advanced);
            if (!caught) return;
            advanced = true;
            while (goesOn.call(this) && advanced) advanced = this.doSingleRepetition(once);
        }
    };
}
