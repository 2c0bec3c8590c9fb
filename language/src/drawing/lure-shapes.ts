import type { LureShape, XY } from './elements.ts';

/** One stroke of a lure's picture. `solid` is filled with ink, `hollow` with paper, `hair` is a thin line. */
export interface ShapePart {
    readonly as: 'solid' | 'hollow' | 'hair' | 'dashed' | 'cut';
    readonly points: readonly XY[];
}

/**
 * Lures as a crew tells them apart, by the face of the head: in profile, towed towards +x, the nose at the
 * origin, one unit long. Fished lures have a solid head, whatever carries no hook is hollow.
 */
export const lureShapes: Readonly<Record<LureShape, readonly ShapePart[]>> = {
    slant: skirted([
        [0.02, 0.12],
        [-0.14, -0.12],
        [-0.32, -0.11],
        [-0.32, 0.11],
    ]),
    plunger: skirted([
        [0.01, 0.13],
        [-0.05, -0.13],
        [-0.32, -0.095],
        [-0.32, 0.095],
    ]),
    pusher: skirted([
        [0, 0.155],
        [0, -0.155],
        [-0.1, -0.155],
        [-0.14, -0.095],
        [-0.32, -0.095],
        [-0.32, 0.095],
        [-0.14, 0.095],
        [-0.1, 0.155],
    ]),
    chugger: skirted([
        [0.02, 0.155],
        [-0.06, 0.11],
        [-0.09, 0],
        [-0.06, -0.11],
        [0.02, -0.155],
        [-0.32, -0.085],
        [-0.32, 0.085],
    ]),
    bullet: skirted(bulletNose()),
    jet: [
        ...skirted(bulletNose()),
        { as: 'cut', points: slot(-0.13, 0.065) },
        { as: 'cut', points: slot(-0.2, 0.085) },
        { as: 'cut', points: slot(-0.27, 0.095) },
    ],
    diver: [
        {
            as: 'hollow',
            points: [
                [0.04, 0.13],
                [0.04, -0.13],
                [-0.12, -0.05],
                [-0.12, 0.05],
            ],
        },
        { as: 'solid', points: fish(-0.06, -0.72, 0.14) },
        { as: 'solid', points: fork(-0.68, -1, 0.14) },
    ],
    bait: [
        { as: 'hollow', points: fish(0, -0.78, 0.15) },
        { as: 'hollow', points: fork(-0.76, -1, 0.15) },
        {
            as: 'hair',
            points: [
                [-0.18, 0.1],
                [-0.22, 0],
                [-0.18, -0.1],
            ],
        },
    ],
    'bridge teaser': pin(),
    teaser: pin(),
    'squid chain': [0, 0.27, 0.54, 0.81].map((along): ShapePart => ({ as: 'hollow', points: squid(-along) })),
    dredge: [
        {
            as: 'hair',
            points: [
                [0, 0],
                [-0.2, 0.32],
                [-0.2, -0.32],
                [0, 0],
            ],
        },
        ...[-0.32, -0.16, 0, 0.16, 0.32].flatMap((y): ShapePart[] => [
            {
                as: 'hair',
                points: [
                    [-0.2, y],
                    [-0.5, y],
                ],
            },
            { as: 'hollow', points: fish(-0.5, -0.95, 0.065).map(([x, dy]): XY => [x, dy + y]) },
        ]),
    ],
    unknown: [
        {
            as: 'dashed',
            points: [
                [0, 0],
                [-0.25, 0.13],
                [-1, 0.13],
                [-1, -0.13],
                [-0.25, -0.13],
            ],
        },
    ],
};

function skirted(head: readonly XY[]): ShapePart[] {
    return [
        {
            as: 'hollow',
            points: [
                [-0.3, 0.1],
                [-0.55, 0.13],
                [-0.97, 0.19],
                [-0.88, 0.11],
                [-1, 0.065],
                [-0.9, 0],
                [-1, -0.065],
                [-0.88, -0.11],
                [-0.97, -0.19],
                [-0.55, -0.13],
                [-0.3, -0.1],
            ],
        },
        ...[0.055, -0.055].map(
            (y): ShapePart => ({
                as: 'hair',
                points: [
                    [-0.36, y * 0.7],
                    [-0.86, y],
                ],
            }),
        ),
        { as: 'solid', points: head },
    ];
}

function slot(x: number, half: number): XY[] {
    return [
        [x, half],
        [x, -half],
    ];
}

function fish(from: number, to: number, half: number): XY[] {
    const along = [0, 0.08, 0.22, 0.4, 0.6, 0.8, 1];
    const out = [0, 0.5, 0.87, 1, 0.85, 0.5, 0.12];
    const upper = along.map((t, i): XY => [from + (to - from) * t, half * out[i]!]);
    return [...upper, ...upper.map(([x, y]): XY => [x, -y]).reverse()];
}

function fork(from: number, to: number, half: number): XY[] {
    return [
        [from, 0.02],
        [to, half],
        [to * 0.93 + from * 0.07, 0],
        [to, -half],
        [from, -0.02],
    ];
}

function pin(): ShapePart[] {
    const along = [0, 0.06, 0.2, 0.32, 0.5, 0.72, 0.9, 1];
    const out = [0.05, 0.1, 0.085, 0.075, 0.15, 0.2, 0.15, 0.05];
    const upper = along.map((t, i): XY => [-t, out[i]!]);
    const lower = upper.map(([x, y]): XY => [x, -y]).reverse();
    return [{ as: 'hollow', points: [...upper, ...lower] }];
}

function squid(from: number): XY[] {
    return [
        [from, 0],
        [from - 0.05, 0.085],
        [from - 0.19, 0.12],
        [from - 0.15, 0],
        [from - 0.19, -0.12],
        [from - 0.05, -0.085],
    ];
}

function bulletNose(): XY[] {
    const upper: XY[] = [
        [0.03, 0],
        [-0.03, 0.045],
        [-0.11, 0.08],
        [-0.2, 0.105],
        [-0.32, 0.11],
    ];
    return [...upper, ...upper.map(([x, y]): XY => [x, -y]).reverse()];
}
