import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { type Press, pngOf } from '../../language/src/drawing/png.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { diamond, makePlan } from './plans.ts';

const fonts = 'node_modules/@expo-google-fonts/arimo';
const press: Press = {
    renderer: readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'),
    faces: [
        '400Regular/Arimo_400Regular.ttf',
        '700Bold/Arimo_700Bold.ttf',
        '400Regular_Italic/Arimo_400Regular_Italic.ttf',
    ].map((face) => readFileSync(`${fonts}/${face}`)),
};

test('a sheet becomes a PNG of its size at the resolution asked for', async () => {
    const svg = svgOf(sceneFromAbove(makePlan(diamond)));
    const { width, height } = readPng(await pngOf(svg, press, { dpi: 100 }));
    // A4 is 210 mm by 297 mm.
    expect(width).toBe(Math.round((210 / 25.4) * 100));
    // The renderer rounds the other side up, so that nothing is cut off.
    expect(height).toBe(Math.ceil((width * 297) / 210));
    expect(readPng(await pngOf(svg, press, { width: 420 })).width).toBe(420);
});

test('letters are set in the faces that we bring, and nothing where there are none', async () => {
    const svg = (words: string) =>
        `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="10mm" viewBox="0 0 500 100">` +
        `<rect width="500" height="100" fill="#ffffff"/>` +
        `<text x="10" y="70" font-size="60" font-family="Arimo, Arial, sans-serif" fill="#000000">${words}</text></svg>`;
    const ink = async (words: string, of: Press) => darkPixels(await pngOf(svg(words), of, { width: 500 }));
    const set = await ink('Hllllllllll', press);
    // An l of Arimo is 222 thousandths wide and its stem about 90 by 729: ten of them and an H, in pixels.
    expect(set).toBeGreaterThan(2000);
    expect(set).toBeLessThan(6000);
    expect(await ink('Hllllllllll', { ...press, faces: [] })).toBe(0);
    expect(await ink('', press)).toBe(0);
});

test('colours come out as the palette says', async () => {
    for (const [palette, paper] of [
        ['light', [255, 255, 255]],
        ['dark', [17, 22, 27]],
        ['high-contrast', [0, 0, 0]],
    ] as const) {
        const png = readPng(
            await pngOf(svgOf(sceneFromAbove(makePlan(diamond)), { palette }), press, { width: 300 }),
        );
        expect([...png.pixels.subarray(0, 3)]).toEqual(paper);
    }
});

test('a drawing without a size in millimetres is refused', async () => {
    await expect(pngOf('<svg xmlns="http://www.w3.org/2000/svg"/>', press)).rejects.toThrow(
        'width in millimetres',
    );
});

interface Png {
    readonly width: number;
    readonly height: number;
    /** RGBA, row by row. */
    readonly pixels: Uint8Array;
}

/** Reads an 8-bit RGBA PNG as the PNG specification (ISO/IEC 15948) lays it out. */
function readPng(bytes: Uint8Array): Png {
    expect([...bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    const [width, height] = [view.getUint32(16), view.getUint32(20)];
    expect([bytes[24], bytes[25]]).toEqual([8, 6]);
    const packed: Uint8Array[] = [];
    for (let at = 8; at < bytes.length; at += 12 + view.getUint32(at)) {
        const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
        if (kind === 'IDAT') packed.push(bytes.subarray(at + 8, at + 8 + view.getUint32(at)));
    }
    const raw = inflateSync(Buffer.concat(packed));
    const pixels = new Uint8Array(width * height * 4);
    const row = width * 4;
    for (let y = 0; y < height; y++) {
        const filter = raw[y * (row + 1)]!;
        for (let i = 0; i < row; i++) {
            const left = i >= 4 ? pixels[y * row + i - 4]! : 0;
            const up = y > 0 ? pixels[(y - 1) * row + i]! : 0;
            const corner = y > 0 && i >= 4 ? pixels[(y - 1) * row + i - 4]! : 0;
            const predicted = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter]!;
            pixels[y * row + i] = raw[y * (row + 1) + 1 + i]! + predicted;
        }
    }
    return { width, height, pixels };
}

function paeth(left: number, up: number, corner: number): number {
    const guess = left + up - corner;
    const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
    return a <= b && a <= c ? left : b <= c ? up : corner;
}

function darkPixels(png: Uint8Array): number {
    const { pixels } = readPng(png);
    let dark = 0;
    for (let i = 0; i < pixels.length; i += 4) if (pixels[i]! < 128) dark++;
    return dark;
}
