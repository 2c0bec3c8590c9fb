import { STANDARD_GRAVITY } from '../constants.ts';

/**
 * Length of the transverse waves that keep pace with a boat.
 *
 * @param speed    through the water, m/s, > 0
 * @param depth    m, > 0; Infinity for deep water
 * @param gravity  m/s²
 * @returns m, or `undefined` where speed² ≥ gravity·depth (no transverse wave keeps pace) or a figure is not
 * positive
 *
 * Linear theory, speed² = (g/k)·tanh(k·depth): Lamb, Hydrodynamics, art. 229.
 */
export function wavelength(
    speed: number,
    depth = Number.POSITIVE_INFINITY,
    gravity = STANDARD_GRAVITY,
): number | undefined {
    if (!(speed > 0 && depth > 0 && gravity > 0) || !Number.isFinite(speed * gravity)) return undefined;
    const deep = (2 * Math.PI * speed * speed) / gravity;
    if (depth === Number.POSITIVE_INFINITY) return deep;
    // With q = k·depth the relation reads tanh(q) = froude²·q. The left side is concave, so Newton's steps from
    // 1/froude² come down to the root without passing it.
    const froude2 = (speed * speed) / (gravity * depth);
    if (froude2 >= 1) return undefined;
    let q = 1 / froude2;
    for (let step = 0; step < 100; step++) {
        const tanh = Math.tanh(q);
        const next = q - (tanh - froude2 * q) / (1 - tanh * tanh - froude2);
        if (!(next > 0) || next >= q) break;
        q = next;
    }
    return (2 * Math.PI * depth) / q;
}

/**
 * Speed of a boat whose transverse waves have a given length: `wavelength` the other way round.
 *
 * @returns m/s
 */
export function speedFor(
    length: number,
    depth = Number.POSITIVE_INFINITY,
    gravity = STANDARD_GRAVITY,
): number {
    // A wave without end travels at the critical speed of its depth.
    if (length === Number.POSITIVE_INFINITY) return Math.sqrt(gravity * depth);
    const tanh = Math.tanh((2 * Math.PI * depth) / length);
    return Math.sqrt(((gravity * length) / (2 * Math.PI)) * tanh);
}
