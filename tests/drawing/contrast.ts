/** Relative luminance of a colour `#rrggbb`, WCAG 2.2: what is left of it in greyscale. */
export function luminance(colour: string): number {
    const [red, green, blue] = [1, 3, 5].map((at) => {
        const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours, WCAG 2.2: 1 to 21. */
export function contrast(a: string, b: string): number {
    const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
    return (light + 0.05) / (dark + 0.05);
}
