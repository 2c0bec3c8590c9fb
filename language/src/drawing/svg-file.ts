import { escapeText, FONTS, short } from './pen.ts';

/** A whole file: what it shows in words for who cannot see it, then the drawing. Sizes in tenths of a millimetre. */
export function svgFile(
    { width, height }: { readonly width: number; readonly height: number },
    words: readonly string[],
    body: readonly string[],
    { live, facts }: { readonly live: boolean; readonly facts: Readonly<Record<string, string>> },
): string {
    const [title = '', ...description] = words;
    return [
        `<svg xmlns="http://www.w3.org/2000/svg" width="${short(width / 10)}mm" height="${short(height / 10)}mm"`,
        ` viewBox="0 0 ${short(width)} ${short(height)}" role="${live ? 'group' : 'img'}"`,
        ...Object.entries(facts).map(([name, fact]) => ` data-${name}="${escapeText(fact)}"`),
        `><title>${escapeText(title)}</title><desc>${escapeText(description.join('\n'))}</desc>`,
        `<g font-family="${FONTS}">`,
        ...body,
        '</g></svg>\n',
    ].join('');
}

/** What wraps the shapes of one element; reachable by keyboard where the view is live. */
export type Group = (id: string, name: string, drawn: string, role: string, position?: string) => string;

export function grouper(live: boolean): Group {
    return (id, name, drawn, role, position) => {
        if (!drawn) return '';
        const place = position ? ` data-position="${escapeText(position)}"` : '';
        const reach = live && name ? ` tabindex="0" role="img" aria-label="${escapeText(name)}"` : '';
        const title = name ? `<title>${escapeText(name)}</title>` : '';
        return `<g data-id="${escapeText(id)}" data-role="${role}"${place}${reach}>${title}${drawn}</g>`;
    };
}
