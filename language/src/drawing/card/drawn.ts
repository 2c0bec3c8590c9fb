/** One thing in an SVG file of ours, as it is met when reading it. */
export type Drawn =
    | { readonly kind: 'begin' | 'shape'; readonly name: string; readonly attributes: Attributes }
    | { readonly kind: 'end'; readonly name: string }
    | { readonly kind: 'words'; readonly words: string };

export type Attributes = Readonly<Record<string, string>>;

/**
 * Reads SVG that this project drew: elements with attributes in double quotes, text and the five named entities of
 * XML. It is no reader for anybody else's.
 */
export function* readDrawing(svg: string): Generator<Drawn> {
    for (const [, closing, name, inside, empty, words] of svg.matchAll(
        /<(\/?)([a-z]+)((?:[^<>"]|"[^"]*")*?)(\/?)>|([^<]+)/g,
    )) {
        if (words !== undefined) yield { kind: 'words', words: plain(words) };
        else if (closing) yield { kind: 'end', name: name! };
        else yield { kind: empty ? 'shape' : 'begin', name: name!, attributes: attributesIn(inside!) };
    }
}

function attributesIn(inside: string): Attributes {
    const found: Record<string, string> = {};
    for (const [, name, value] of inside.matchAll(/([\w:-]+)="([^"]*)"/g)) found[name!] = plain(value!);
    return found;
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function plain(text: string): string {
    return text.includes('&') ? text.replace(/&(amp|lt|gt|quot|#39);/g, (_, name) => entities[name]!) : text;
}
