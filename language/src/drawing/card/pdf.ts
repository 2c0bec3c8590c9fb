import PDFDocument from 'pdfkit';
import { escapeText } from '../pen.ts';
import { isMeasured, textWidth, type Weight } from '../text-width.ts';
import { type Attributes, readDrawing } from './drawn.ts';
import { plainFace } from './faces.ts';

export interface PdfWishes {
    /** Regular, bold and italic of one family. */
    readonly faces: readonly Uint8Array[];
    readonly title: string;
    readonly author?: string;
    /** BCP 47. */
    readonly language: string;
    /** When it is said to have been made; the clock is not asked, so that the same card is the same file. */
    readonly made?: Date;
}

type Doc = PDFKit.PDFDocument;

/** Points in a tenth of a millimetre. */
const point = 72 / 254;

const names = ['regular', 'bold', 'italic'] as const;

/**
 * Pages drawn as SVG of ours, as a PDF file: real text in embedded faces, vectors, bookmarks at `data-mark`, and a
 * structure that readers for the blind follow, by `data-tag`.
 */
export function pdfOf(pages: readonly string[], wishes: PdfWishes): Promise<Uint8Array> {
    const { title, author, language, made, faces } = wishes;
    const doc = new PDFDocument({
        autoFirstPage: false,
        margin: 0,
        pdfVersion: '1.7',
        tagged: true,
        displayTitle: true,
        lang: language,
        // None of the library's own: a card has its faces with it.
        font: null as unknown as string,
        info: {
            Title: title,
            ...(author && { Author: author }),
            CreationDate: made ?? new Date(0),
            Creator: 'Layback',
            Producer: 'Layback',
        },
    });
    if (!made) delete doc.info.CreationDate;
    describe(doc, wishes);
    for (const [index, name] of names.entries()) doc.registerFont(name, plainFace(faces[index]!) as Buffer);
    const whole = collected(doc);
    const document = doc.struct('Document');
    doc.addStructure(document);
    for (const page of pages) drawPage(doc, document, page);
    document.end();
    doc.end();
    return whole;
}

/** What the file says of itself to programs that read XMP; the library would take a title for markup. */
function describe(doc: Doc, { title, author, language, made }: PdfWishes): void {
    const about = [
        `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escapeText(title)}</rdf:li></rdf:Alt></dc:title>`,
        author && `<dc:creator><rdf:Seq><rdf:li>${escapeText(author)}</rdf:li></rdf:Seq></dc:creator>`,
        `<dc:language><rdf:Bag><rdf:li>${escapeText(language)}</rdf:li></rdf:Bag></dc:language>`,
        made && `<xmp:CreateDate>${made.toISOString().slice(0, 19)}Z</xmp:CreateDate>`,
        '<xmp:CreatorTool>Layback</xmp:CreatorTool><pdf:Producer>Layback</pdf:Producer>',
    ];
    const spaces =
        'xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" ' +
        'xmlns:pdf="http://ns.adobe.com/pdf/1.3/"';
    const xml = `<rdf:Description rdf:about="" ${spaces}>${about.filter(Boolean).join('')}</rdf:Description>`;
    const told = doc as Doc & { _addInfo: () => void; appendXML: (xml: string) => void };
    told._addInfo = () => told.appendXML(xml);
}

function collected(doc: Doc): Promise<Uint8Array> {
    return new Promise((resolve, reject) => {
        const parts: Uint8Array[] = [];
        doc.on('data', (part: Uint8Array) => parts.push(part));
        doc.on('error', reject);
        doc.on('end', () => {
            const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
            let at = 0;
            for (const part of parts) {
                bytes.set(part, at);
                at += part.length;
            }
            resolve(bytes);
        });
    });
}

/** A `<g>` that is open: what closing it has to undo. */
interface Open {
    readonly transformed: boolean;
    readonly element?: PDFKit.PDFStructureElement;
    readonly content?: PDFKit.PDFStructureContent | null;
}

/** Elements that hold others and no marks of their own. */
const holders: ReadonlySet<string> = new Set(['Table', 'TR']);

function drawPage(doc: Doc, document: PDFKit.PDFStructureElement, svg: string): void {
    const open: Open[] = [];
    let lettering: Attributes | undefined;
    let told = '';
    const parents = [document];
    for (const drawn of readDrawing(svg)) {
        if (drawn.kind === 'begin' && drawn.name === 'svg') {
            const [, , width = 0, height = 0] = drawn.attributes.viewBox!.split(' ').map(Number);
            doc.addPage({ size: [width * point, height * point], margin: 0 });
            doc.scale(point);
        } else if (drawn.kind === 'begin' && drawn.name === 'g') {
            open.push(begin(doc, parents, drawn.attributes));
        } else if (drawn.kind === 'end' && drawn.name === 'g') {
            end(doc, parents, open.pop()!);
        } else if (drawn.kind === 'begin') {
            told = drawn.name;
            lettering = drawn.name === 'text' ? drawn.attributes : undefined;
        } else if (drawn.kind === 'end') {
            told = '';
            lettering = undefined;
        } else if (drawn.kind === 'words') {
            if (told === 'text' && lettering) letter(doc, drawn.words, lettering);
        } else {
            shape(doc, drawn.name, drawn.attributes);
        }
    }
}

function begin(doc: Doc, parents: PDFKit.PDFStructureElement[], attributes: Attributes): Open {
    const { transform, 'data-tag': tag, 'data-mark': mark, 'data-alt': alt } = attributes;
    if (transform) {
        const [x, y, scale] = [...transform.matchAll(/-?[\d.]+/g)].map(Number) as [number, number, number];
        doc.save().translate(x, y).scale(scale);
    }
    if (mark) doc.outline.addItem(mark);
    const transformed = transform !== undefined;
    if (!tag) return { transformed };
    if (tag === 'Artifact') {
        doc.markContent('Artifact', { type: 'Pagination' });
        return { transformed, content: null };
    }
    const element = doc.struct(tag as 'P', alt ? { alt } : {});
    parents.at(-1)!.add(element);
    if (holders.has(tag)) {
        parents.push(element);
        return { transformed, element };
    }
    return { transformed, element, content: doc.markStructureContent(tag) };
}

function end(doc: Doc, parents: PDFKit.PDFStructureElement[], { transformed, element, content }: Open): void {
    if (content !== undefined) doc.endMarkedContent();
    if (element) {
        if (content) element.add(content);
        element.end();
        if (parents.at(-1) === element) parents.pop();
    }
    if (transformed) doc.restore();
}

function shape(doc: Doc, name: string, attributes: Attributes): void {
    const number = (key: string) => Number(attributes[key]);
    if (name === 'path') doc.path(attributes.d!);
    else if (name === 'circle') doc.circle(number('cx'), number('cy'), number('r'));
    else if (name === 'rect') doc.rect(number('x'), number('y'), number('width'), number('height'));
    else throw new RangeError(`A drawing of ours has no <${name}>.`);
    const { fill, stroke } = attributes;
    if (stroke) {
        doc.lineWidth(number('stroke-width'));
        const round = attributes['stroke-linecap'] === 'round';
        doc.lineCap(round ? 'round' : 'butt').lineJoin(round ? 'round' : 'miter');
        const dash = attributes['stroke-dasharray'];
        // The library knows dashes of many lengths only as they are written in the file itself.
        if (dash) doc.addContent(`[${dash}] 0 d`);
        else doc.undash();
    }
    if (fill && fill !== 'none' && stroke) doc.fillAndStroke(fill, stroke);
    else if (stroke) doc.stroke(stroke);
    else doc.fill(fill === 'none' ? undefined : fill);
}

/** Text at its baseline; where it has a band around it, on a patch of the band's colour. */
function letter(doc: Doc, words: string, attributes: Attributes): void {
    const size = Number(attributes['font-size']);
    const face =
        attributes['font-weight'] === 'bold' ? 'bold' : attributes['font-style'] ? 'italic' : 'regular';
    doc.font(face).fontSize(size);
    const anchor = attributes['text-anchor'];
    const weight = face as Weight;
    const wide = isMeasured(words, weight) ? textWidth(words, size, weight) : doc.widthOfString(words);
    const x = Number(attributes.x) - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0);
    const y = Number(attributes.y);
    if (attributes['aria-hidden']) {
        // The letters themselves follow: written twice they would be read and copied twice.
        const edge = size / 6;
        doc.rect(x - edge, y - size * 0.74 - edge / 2, wide + 2 * edge, size * 0.76 + edge).fill(
            attributes.fill,
        );
        return;
    }
    doc.fillColor(attributes.fill!).text(words, x, y, { lineBreak: false, baseline: 'alphabetic' });
}
