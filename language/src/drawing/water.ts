import { crestCurve, WEDGE_HALF_ANGLE } from '../physics/waves/crest.ts';
import type { AnalysedPlan, WaveFigures } from '../plan/figures.ts';
import type { Place } from '../plan/origin.ts';
import type { Crest, Face, Wash, Wedge, XY } from './elements.ts';
import { clipCurve, clipOutline, type Extent } from './extent.ts';
import { inMetres } from './words.ts';

/** More waves than this are a pattern that nobody counts, nor sets a lure by. */
const mostWaves = 30;

/** The wake: wash, wedge and the numbered waves with the faces that look at the boat. */
export function drawWater(analysed: AnalysedPlan, extent: Extent): (Wash | Wedge | Face | Crest)[] {
    const { plan, waves, wash } = analysed;
    const at = (plan.boat?.value.crests ?? plan.speed ?? plan.boat)?.origin.place;
    const drawn: (Wash | Wedge | Face | Crest)[] = [];
    if (waves.known) {
        const numbered = waveDistances(waves.value, extent);
        drawn.push(
            ...numbered.map((astern, i) => drawFace(i + 1, astern, waves.value.wavelength, extent, at)),
        );
        drawn.push(...numbered.map((astern, i) => drawCrest(i + 1, astern, waves.value, extent, at)));
        drawn.push(drawWedge(extent, at));
    }
    if (wash?.known) {
        const { halfWidth: near, endHalfWidth: far, length } = wash.value;
        drawn.push({
            id: 'wash',
            role: 'wash',
            name: `Propeller wash: ${inMetres(length)} long, ${inMetres(2 * near)} wide at the transom.`,
            ...(plan.boat && { at: plan.boat.origin.place }),
            outline: [
                [0, near],
                [-length, far],
                [-length, -far],
                [0, -near],
            ],
        });
    }
    return drawn;
}

/** Astern of the transom, m, of every crest whose front face begins on the water shown. */
function waveDistances({ firstCrest, wavelength }: WaveFigures, { astern }: Extent): number[] {
    const count = Math.floor((astern - firstCrest) / wavelength + 0.5) + 1;
    return Array.from(
        { length: Math.max(0, Math.min(mostWaves, count)) },
        (_, i) => firstCrest + i * wavelength,
    );
}

function drawCrest(wave: number, astern: number, waves: WaveFigures, extent: Extent, at?: Place): Crest {
    return {
        id: `crest:${wave}`,
        role: 'crest',
        name: `Wave ${wave}: crest ${inMetres(astern)} astern on the centreline.`,
        ...(at && { at }),
        wave,
        curve: clipCurve(curveThrough(astern), extent),
        astern,
        doubtful: waves.doubt !== undefined,
    };
}

/** From the trough, half a wave nearer the boat, up to the crest; both curves are one shape at two sizes. */
function drawFace(wave: number, crest: number, wavelength: number, extent: Extent, at?: Place): Face {
    const foot = Math.max(0, crest - 0.5 * wavelength);
    const third = Math.max(0, crest - lowerThird * wavelength);
    return {
        id: `face:${wave}`,
        role: 'face',
        name: `Wave ${wave}: front face, from ${inMetres(foot)} to ${inMetres(crest)} astern on the centreline.`,
        ...(at && { at }),
        wave,
        outline: clipOutline(band(foot, crest), extent),
        lower: clipOutline(band(foot, third), extent),
    };
}

/** Where the lower third by height of a sine's front face ends, wavelengths before the crest. */
const lowerThird = Math.acos(-1 / 3) / (2 * Math.PI);

function drawWedge(extent: Extent, at?: Place): Wedge {
    const reach = Math.min(extent.astern, extent.half / Math.tan(WEDGE_HALF_ANGLE));
    const out = reach * Math.tan(WEDGE_HALF_ANGLE);
    return {
        id: 'wedge',
        role: 'wedge',
        name: 'The wedge that holds the boat\u2019s waves, 19.5° to either side of her track.',
        ...(at && { at }),
        arms: [
            [
                [0, 0],
                [-reach, out],
            ],
            [
                [0, 0],
                [-reach, -out],
            ],
        ],
    };
}

function band(near: number, far: number): XY[] {
    return [...curveThrough(near).reverse(), ...curveThrough(far)];
}

function curveThrough(astern: number): XY[] {
    return unitCurve.map(([x, y]) => [x * astern, y * astern]);
}

/** From starboard to port, for a crest 1 m astern: crests are similar curves. */
const unitCurve: readonly XY[] = crestCurve({ firstCrest: 1, length: 1 }, 1, 10).map(([astern, lateral]) => [
    -astern,
    lateral,
]);
