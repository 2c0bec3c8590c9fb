import type { Dimension } from '../../units/unit.ts';
import type { Property } from './property.ts';

type Bounds = readonly [least: number, most: number];

const DEGREE = Math.PI / 180;

/** What makes sense for any number of a dimension, SI, where its word says nothing closer. */
const USUAL: Readonly<Record<Dimension, Bounds>> = {
    length: [0, 5000],
    load: [0, 5000],
    speed: [0, 60],
    angle: [-360 * DEGREE, 360 * DEGREE],
    time: [0, 7 * 86_400],
    count: [0, 1000],
    share: [0, 2],
    volume: [0, 1],
    temperature: [263, 323],
};

/** Numbers that are not of their word's own kind: the speed of a pull, the count of a wave. */
const PARTICULAR: Readonly<Record<string, Bounds>> = {
    'Pull.speed': [0.2, 15],
    'Crests.speed': [0.2, 15],
    'Wind.from': [-180 * DEGREE, 360 * DEGREE],
    'From.number': [1, 12],
    'Capacity.diameter': [0.00005, 0.01],
    // Twenty waves are farther back than anybody tows, and the wake is long flat by then.
    'Back.wave': [1, 20],
    'Condition.height': [0, 15],
    'Condition.strength': [0, 40],
};

/**
 * The smallest and largest number that makes sense in a place, SI; outside is surely a slip, and nothing is
 * computed from it.
 *
 * @param place  the kind of syntax and its part: `Pull.speed`
 */
export function boundsOf(place: string, dimension: Dimension, property: Property | undefined): Bounds {
    const particular = PARTICULAR[place];
    if (particular) return particular;
    const own = property?.dimension === dimension ? property.sane : undefined;
    return own ?? USUAL[dimension];
}
