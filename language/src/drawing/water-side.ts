import type { WaveFigures } from '../plan/figures.ts';
import type { SideElement, XZ } from './elements-side.ts';
import { inMetres } from './words.ts';

/** The surface on the centreline, as a sine of the height that is estimated; flat where that is not known. */
export function drawWavesFromSide(waves: WaveFigures, reach: number): SideElement[] {
    const { firstCrest, wavelength, height } = waves;
    const half = height?.known ? height.value / 2 : 0;
    const level = (astern: number) => half * Math.cos((2 * Math.PI * (astern - firstCrest)) / wavelength);
    const stretch = (from: number, to: number): XZ[] => {
        const steps = Math.max(8, Math.ceil((24 * (to - from)) / wavelength));
        return Array.from({ length: steps + 1 }, (_, i) => {
            const astern = from + ((to - from) * i) / steps;
            return [-astern, level(astern)] as const;
        });
    };
    const count = Math.max(0, Math.min(30, Math.floor((reach - firstCrest) / wavelength + 0.5) + 1));
    return [
        ...Array.from({ length: count }, (_, i): SideElement => {
            const crest = firstCrest + i * wavelength;
            const from = Math.max(0, crest - wavelength / 2);
            const to = Math.min(reach, crest);
            return {
                id: `face:${i + 1}`,
                role: 'face',
                name: `Wave ${i + 1}: front face, from ${inMetres(from)} to ${inMetres(crest)} astern on the centreline.`,
                wave: i + 1,
                outline: [...stretch(from, to), [-to, -half], [-from, -half]],
                crest: [-Math.min(reach, crest), half],
            };
        }),
        {
            id: 'surface',
            role: 'surface',
            name: half > 0 ? `The boat’s waves, about ${inMetres(2 * half)} high.` : 'The water, drawn flat.',
            curve: stretch(0, reach),
        },
    ];
}
