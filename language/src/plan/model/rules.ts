import type { Severity } from '../finding.ts';
import type { Measure } from '../measure.ts';
import type { Origin, Said } from '../origin.ts';
import type { Defined } from './defined.ts';

export interface RuleSetting {
    readonly rule: Said<string>;
    readonly severity?: Said<Severity>;
    readonly settings: ReadonlyMap<
        string,
        Said<unknown> & { readonly si?: number; readonly measure?: Measure }
    >;
    readonly origin: Origin;
}

/** Limits of one written edition, for lines up to and including a class. */
export interface TackleLimits {
    /** Kilograms of class; absent on the row for everything heavier. */
    readonly upTo?: Measure;
    readonly double?: Measure;
    readonly leader?: Measure;
    readonly combined?: Measure;
    readonly origin: Origin;
}

export interface WrittenRules {
    readonly edition?: Said<string>;
    readonly limits: readonly TackleLimits[];
    /** Kilograms of class, with the greatest load in newtons at which a test sample may break. */
    readonly classes: readonly {
        readonly lineClass: Measure;
        readonly tests?: Measure;
        readonly customary?: Measure;
    }[];
    readonly rodTip?: Measure;
    readonly rodButt?: Measure;
    readonly gaff?: Measure;
    readonly gaffRope?: Measure;
    readonly lureHooks?: Measure;
    readonly lureHookSpacing?: Measure;
    readonly baitHooks?: Measure;
    readonly baitHookSpacing?: Measure;
    readonly plugHooks?: Measure;
    readonly topLength?: Measure;
    readonly wireLine?: Said<boolean>;
}

export interface Rules extends Defined {
    /** Written packs that this one stands on, nearest first. */
    readonly written: readonly (Defined & WrittenRules)[];
    readonly own: WrittenRules;
    readonly mostLines?: Measure;
    readonly mostLinesPerAngler?: Measure;
    readonly classes?: { readonly among: readonly Measure[]; readonly origin: Origin };
    readonly baitHook?: Said<string>;
    readonly teasersHookless?: Said<boolean>;
    readonly settings: readonly RuleSetting[];
    readonly stretchMargin?: Measure;
    readonly linesIn?: Said<string>;
    readonly linesOut?: Said<string>;
    readonly callIn?: Said<string>;
    readonly notes: readonly Said<string>[];
}
