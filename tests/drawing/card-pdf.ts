import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { cardPages } from '../../language/src/drawing/card/pages.ts';
import type { PaperName } from '../../language/src/drawing/card/paper.ts';
import { pdfOf } from '../../language/src/drawing/card/pdf.ts';
import type { Carded } from './card-plans.ts';

const fonts = 'node_modules/@expo-google-fonts/arimo';
export const faces = [
    '400Regular/Arimo_400Regular.ttf',
    '700Bold/Arimo_700Bold.ttf',
    '400Regular_Italic/Arimo_400Regular_Italic.ttf',
].map((face) => readFileSync(`${fonts}/${face}`));

export function printed({ card, scene }: Carded, paper: PaperName = 'a4'): Promise<Uint8Array> {
    return pdfOf(cardPages(card, scene, { paper }), {
        faces,
        title: card.title,
        language: 'en',
        made: new Date('2026-03-07T12:00:00Z'),
    });
}

/** A run of text on a page; points from the page's lower left corner. */
export interface Run {
    readonly words: string;
    readonly x: number;
    readonly width: number;
    readonly size: number;
    readonly baseline: number;
}

export interface ReadPage {
    readonly width: number;
    readonly height: number;
    readonly runs: readonly Run[];
    /** Cells' lines by table, row and column, as the file's own structure says. */
    readonly tables: readonly (readonly (readonly (readonly string[])[])[])[];
    /** Roles of the page's structure, in reading order. */
    readonly roles: readonly string[];
}

export interface ReadPdf {
    readonly title: string;
    readonly language: string | null;
    readonly outline: readonly string[];
    readonly marked: boolean;
    readonly scripted: boolean;
    readonly faces: readonly string[];
    readonly pages: readonly ReadPage[];
}

/** Reads a PDF file with a program that had no part in writing it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
    const task = getDocument({ data: bytes.slice(), verbosity: 0 });
    const file = await task.promise;
    const { info } = (await file.getMetadata()) as unknown as {
        info: { Title: string; Language: string | null };
    };
    const pages: ReadPage[] = [];
    for (let number = 1; number <= file.numPages; number++) pages.push(await readPage(file, number));
    const read: ReadPdf = {
        title: info.Title,
        language: info.Language,
        outline: ((await file.getOutline()) ?? []).map(({ title }) => title),
        marked: (await file.getMarkInfo())?.Marked ?? false,
        scripted: (await file.getJSActions()) !== null,
        faces: [
            ...new Set([
                ...Buffer.from(bytes)
                    .toString('latin1')
                    .matchAll(/\/FontName \/(\S+)/g),
            ]),
        ].map(([, name]) => name!),
        pages,
    };
    await task.destroy();
    return read;
}

type File = Awaited<ReturnType<typeof getDocument>['promise']>;

interface Branch {
    readonly role?: string;
    readonly id?: string;
    readonly type?: string;
    readonly children?: readonly Branch[];
}

async function readPage(file: File, number: number): Promise<ReadPage> {
    const page = await file.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    const byMark = new Map<string, string[]>();
    const runs: Run[] = [];
    const open: (string | undefined)[] = [];
    for (const item of items) {
        if ('type' in item) {
            if (item.type === 'endMarkedContent') open.pop();
            else open.push((item as { id?: string }).id);
            continue;
        }
        if (item.str.trim() === '') continue;
        const [a, b, , , x, y] = item.transform as [number, number, number, number, number, number];
        runs.push({ words: item.str, x, baseline: y, width: item.width, size: Math.hypot(a, b) });
        const mark = open.findLast((id) => id !== undefined);
        if (mark) byMark.set(mark, [...(byMark.get(mark) ?? []), item.str]);
    }
    const tree = (await page.getStructTree()) as Branch | null;
    const all = tree ? branches(tree) : [];
    const tables = all
        .filter(({ role }) => role === 'Table')
        .map((table) =>
            branches(table)
                .filter(({ role }) => role === 'TR')
                .map((row) =>
                    (row.children ?? []).map((cell) =>
                        branches(cell).flatMap(({ type, id }) =>
                            type === 'content' && id ? (byMark.get(id) ?? []) : [],
                        ),
                    ),
                ),
        );
    return { width, height, runs, tables, roles: all.flatMap(({ role }) => role ?? []) };
}

function branches(branch: Branch): Branch[] {
    return [branch, ...(branch.children ?? []).flatMap(branches)];
}
