import type { Measure } from '../../plan/measure.ts';
import type { Origin } from '../../plan/origin.ts';
import { print, printBoth } from '../../units/print.ts';
import { massOf, type Quantity } from '../../units/quantity.ts';
import { type Dimension, type Unit, units, usualUnit } from '../../units/unit.ts';
import type { Settings } from '../protocol.ts';

/** Says numbers as a person set it: in their author's unit, or with the other system's beside. */
export interface Speech {
    length(si: number, like?: Measure): string;
    /** Newtons, told as the weight that pulls as much. */
    load(newtons: number, like?: Measure): string;
    /** Kilograms. */
    mass(si: number, like?: Measure): string;
    speed(si: number, like?: Measure): string;
    angle(si: number): string;
    time(si: number): string;
    share(fraction: number): string;
}

export function speechBy({ units: wanted }: Settings): Speech {
    const say = (value: number, dimension: Dimension, like: Measure | undefined, usual: Unit) => {
        const form: Unit | Quantity = like?.quantity?.unit.dimension === dimension ? like.quantity : usual;
        return wanted === 'both' ? printBoth(value, form) : print(value, form);
    };
    return {
        length: (si, like) => say(si, 'length', like, units.m),
        load: (newtons, like) => say(massOf(newtons), 'load', like, units.kg),
        mass: (si, like) => say(si, 'load', like, si < 1 ? units.g : units.kg),
        speed: (si, like) => say(si, 'speed', like, units.kn),
        angle: (si) => print(si, units.deg),
        time: (si) => print(si, si < 120 ? units.s : usualUnit.time),
        share: (fraction) => print(fraction, units['%'], { digits: 0 }),
    };
}

/** Who had the last word on a value, as a crew would say it. */
export function sourceOf({ voice, definition, inherited }: Origin): string {
    switch (voice) {
        case 'default':
            return 'the usual';
        case 'position':
        case 'spread':
            return inherited ? `as in ${definition}` : 'said here';
        case 'rules':
            return `rules ${definition}`;
        default:
            return definition ? `${voice} ${definition}` : voice;
    }
}
