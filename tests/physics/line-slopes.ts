import { crossFlowDrag } from '../../language/src/physics/coefficients.ts';
import {
    AIR_VISCOSITY,
    SEA_WATER_VISCOSITY,
    STANDARD_GRAVITY,
} from '../../language/src/physics/constants.ts';
import type { LineQuestion } from '../../language/src/physics/line.ts';
import { cross, dot, norm, scale, type Vec } from '../../language/src/physics/vector.ts';

/** The same physics in another form: drag across by a double vector product, on the line's own direction. */
export function lineSlopes(question: LineQuestion, underWater: boolean, diameter: number, density: number) {
    const [fluid, viscosity] = underWater ? [1025, SEA_WATER_VISCOSITY] : [1.225, AIR_VISCOSITY];
    const [wx, wy, wz] = underWater ? [0, 0, 0] : (question.wind ?? [0, 0, 0]);
    const flow: Vec = [wx! - question.speed, wy!, wz!];
    return (_: number, y: number[]) => {
        const force = [y[0]!, y[1]!, y[2]!] as const;
        const t = scale(force, 1 / norm(force));
        const across = cross(t, cross(flow, t));
        const along = dot(flow, t);
        const cd = crossFlowDrag((norm(across) * diameter) / viscosity!);
        const lateral = scale(across, 0.5 * fluid! * diameter * cd * norm(across));
        const friction = scale(t, 0.5 * fluid! * Math.PI * diameter * 0.005 * Math.abs(along) * along);
        const area = (Math.PI * diameter ** 2) / 4;
        const weight = (density - (underWater ? fluid! : 0)) * area * STANDARD_GRAVITY;
        return [
            -lateral[0] - friction[0],
            -lateral[1] - friction[1],
            weight - lateral[2] - friction[2],
            ...t,
        ];
    };
}
