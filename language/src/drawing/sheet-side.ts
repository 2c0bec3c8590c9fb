import { margins, type PlacedLabel, roundScale } from './chart.ts';
import type { SideElement, XZ } from './elements-side.ts';
import { type Label, labelOfLines, letters, markRoom, place, setTogether, setWords } from './labels.ts';
import type { Spot } from './pen.ts';
import { degrees, type SideScene } from './scene-side.ts';

/** Where a side view goes on paper, tenths of a millimetre. */
export interface SideSheet {
    readonly width: number;
    readonly denominator: number;
    /** Heights are drawn this many times as large as lengths. */
    readonly exaggeration: number;
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly waterline: number;
    readonly toPage: (point: XZ) => Spot;
    readonly labels: readonly PlacedLabel[];
    readonly bottom: number;
}

/** Height on paper that the tow points may take, below which heights are exaggerated. */
const tallest = 620;
const mostExaggeration = 5;

export function layOutSide(scene: SideScene, width: number): SideSheet {
    const { ahead, astern, up } = scene.extent;
    const left = margins.page + margins.band;
    const right = width - margins.page - margins.band;
    const denominator = roundScale(((ahead + astern) / (right - left)) * 10_000);
    const perMetre = 10_000 / denominator;
    const fitting = Math.floor((2 * tallest) / (up * perMetre)) / 2;
    const exaggeration = Math.max(1, Math.min(mostExaggeration, fitting));
    const top = margins.page + 40;
    const waterline = top + up * perMetre * exaggeration;
    const toPage = ([x, z]: XZ): Spot => [
        left + (x + astern) * perMetre,
        waterline - z * perMetre * exaggeration,
    ];
    const labels = row(scene, toPage, waterline + 150, left - margins.band, right + margins.band);
    const bottom = Math.max(waterline + 150, ...labels.map(({ box }) => box.y + box.height));
    return { width, denominator, exaggeration, left, right, top, waterline, toPage, labels, bottom };
}

/** Labels in a row below the water, each under its lure as far as there is room. */
function row(
    { elements, notes }: SideScene,
    toPage: (point: XZ) => Spot,
    y: number,
    from: number,
    to: number,
): PlacedLabel[] {
    const lures = elements.filter((element) => element.role === 'lure');
    const gap = 40;
    const room = Math.min(460, (to - from) / Math.max(1, lures.length) - gap);
    const wanted = lures
        .map((lure) => {
            const towed = elements.find(
                ({ role, position }) => role === 'line' && position === lure.position,
            );
            const label = labelOf(lure.position!, towed, room);
            return { label, spot: toPage(lure.point) };
        })
        .sort((a, b) => a.spot[0] - b.spot[0]);
    const middles = place(
        wanted.map(({ label, spot }) => ({ at: spot[0] - 30 + label.width / 2, size: label.width })),
        from,
        to,
        gap,
    );
    if (!middles) return [];
    return wanted.map(({ label, spot }, i): PlacedLabel => {
        const x = middles[i]! - label.width / 2;
        return {
            label,
            box: { x, y, width: label.width, height: label.height },
            anchor: 'start',
            leader: [
                [x + 30, y - 8],
                [spot[0], y - 90],
                [spot[0], spot[1] + 18],
            ],
            loose: false,
        };
    });

    function labelOf(position: string, towed: SideElement | undefined, most: number): Label {
        const note = notes.find((each) => each.position === position)!;
        const height = towed?.role === 'line' ? towed.air[0]![1] : undefined;
        const figures = [note.distance, note.wave].filter((words) => words !== undefined);
        return labelOfLines(note, [
            ...setWords(note.title, letters.gear, 'bold', most, 3),
            ...setTogether(figures, letters.gear, most),
            ...(towed?.role === 'line' && height !== undefined
                ? setWords(
                      `from ${Math.round(height * 10) / 10} m up, ${degrees(towed.angle)} at the water`,
                      letters.small,
                      'regular',
                      most,
                      3,
                  )
                : []),
            ...(note.marks.length > 0
                ? [
                      {
                          words: '',
                          size: letters.gear,
                          weight: 'bold' as const,
                          marks: note.marks.slice(0, Math.max(1, Math.floor(most / markRoom))),
                      },
                  ]
                : []),
        ]);
    }
}
