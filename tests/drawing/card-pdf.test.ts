import { beforeAll, describe, expect, test, vi } from 'vitest';
import { plainFace } from '../../language/src/drawing/card/faces.ts';
import { fingerprintOf } from '../../language/src/drawing/card/fingerprint.ts';
import { cardPages } from '../../language/src/drawing/card/pages.ts';
import type { PaperName } from '../../language/src/drawing/card/paper.ts';
import { pdfOf } from '../../language/src/drawing/card/pdf.ts';
import { faces, printed, type ReadPage, type ReadPdf, type Run, readPdf } from './card-pdf.ts';
import { type Carded, cardedText, examples, hostile, sparse } from './card-plans.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const sizes: Readonly<Record<PaperName, readonly [width: number, height: number]>> = {
    // Points: 72 to the inch of 25.4 mm.
    a4: [(210 / 25.4) * 72, (297 / 25.4) * 72],
    letter: [8.5 * 72, 11 * 72],
    half: [(148 / 25.4) * 72, (210 / 25.4) * 72],
};
const papers = Object.keys(sizes) as PaperName[];

let all: Carded[];
let settled: Carded;
let read: ReadPdf;

beforeAll(async () => {
    all = await examples();
    settled = all.find(({ card }) => card.plan === 'bank-settled')!;
    read = await readPdf(await printed(settled));
});

describe('the table, read back from the file', () => {
    test.each(papers)(
        'has every line of the plan with its distance, clip and drags, on %s',
        async (paper) => {
            for (const each of [settled, all.find(({ card }) => card.plan === 'weed-line')!]) {
                const rows = workingRows(await readPdf(await printed(each, paper)));
                const { lines } = each.analysed;
                expect([...rows.keys()].sort()).toEqual(lines.map(({ line }) => line.position.name).sort());
                for (const { line, astern, drags } of lines) {
                    const row = rows.get(line.position.name)!;
                    const lure = (line.lure ?? line.bait ?? line.teaser)!.value.title;
                    expect(row.get('Tows')!.join(' ')).toContain(lure);
                    if (astern.known) expectLength(row.get('Back')!, astern.value);
                    if (line.clip) expectLoad(row.get('Clip')!, line.clip.si);
                    for (const { stage, force } of drags) {
                        expectLoad(
                            row.get({ set: 'Drag set', hooked: 'Hooked', full: 'Full' }[stage])!,
                            force.si,
                        );
                    }
                    const tested = line.outfit?.value.tested;
                    expect(row.get('Scale test')?.join(' ') ?? '').toContain(tested?.date.value ?? '');
                }
            }
        },
    );

    test('stands in the order of setting, numbered', () => {
        const set = [...workingRows(read).values()].map((row) => row.get('Set')!.join(''));
        expect(set).toEqual(['1', '2', '3', '4', '5', '', '']);
        expect([...workingRows(read).keys()].slice(0, 5)).toEqual(
            settled.card.setting.order.map(({ position }) => position),
        );
    });

    test('is on the first sheet, whole, and its distances and drags are the largest of its letters', () => {
        const [page] = read.pages;
        const table = page!.tables[0]!;
        expect(table).toHaveLength(1 + settled.card.rows.length);
        const sizeOf = (words: string) => page!.runs.findLast((run) => run.words === words)!.size;
        for (const words of ['66.4 m', '10.4 kg', '19 kg'])
            expect(sizeOf(words)).toBeGreaterThan(sizeOf('Heavy 4') * 1.3);
        // 11 points and more for what is read at arm's length.
        expect(sizeOf('66.4 m')).toBeGreaterThan(11);
    });

    test('says who is cleared after a strike at each position, first to last', () => {
        const [clearing] = read.pages[1]!.tables;
        for (const [index, { hooked, order }] of settled.card.clearing.after.entries()) {
            const row = clearing!.find(([cell]) => lower(cell!) === hooked)!;
            expect(row, `${index}`).toBeDefined();
            for (const [place, { position, reason }] of order.entries())
                expect(lower(row[place + 1]!)).toBe(`${position} ${reason}`);
        }
    });
});

describe('the file', () => {
    test('has a title, a language, bookmarks and a structure', () => {
        expect(read.title).toBe('Settled day on the bank');
        expect(read.language).toBe('en');
        expect(read.marked).toBe(true);
        expect(read.scripted).toBe(false);
        expect(read.outline.slice(0, 3)).toEqual([
            'Settled day on the bank',
            'From above',
            'Clearing after a strike',
        ]);
        for (const part of ['Turns', 'Setting, first to last', 'Roles', 'Limits to keep', 'Cautions'])
            expect(read.outline).toContain(part);
        expect(new Set(read.pages.flatMap(({ roles }) => roles))).toEqual(
            new Set(['Root', 'Document', 'H1', 'Figure', 'Table', 'TR', 'TH', 'TD', 'H2', 'P']),
        );
    });

    test('brings its own faces, and no others', () => {
        expect(read.faces.map((name) => name.replace(/^[A-Z]{6}\+/, '')).sort()).toEqual([
            'Arimo-Bold',
            'Arimo-Italic',
            'Arimo-Regular',
        ]);
    });

    test('is the same, byte for byte, whenever it is made', async () => {
        const first = await printed(settled);
        vi.useFakeTimers({ now: new Date('2031-01-01T00:00:00Z'), toFake: ['Date'] });
        const second = await printed(settled);
        vi.useRealTimers();
        expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
        expect(Buffer.from(first).toString('latin1')).not.toMatch(/D:2031|2031-01/);
        const undated = { faces, title: 'Undated', language: 'en' };
        const pages = cardPages(settled.card, settled.scene);
        expect(Buffer.from(await pdfOf(pages, undated)).toString('latin1')).not.toContain('Date');
    });

    test('says everything that the plan gives', () => {
        const text = read.pages.map(wordsOf).join(' ');
        const { card } = settled;
        expect(card.fingerprint).toBe(fingerprintOf(settled.analysed.plan));
        const told = [
            ...card.facts.map(({ value }) => value),
            card.fingerprint,
            ...card.speeds,
            ...card.event,
            ...card.times.map(({ value }) => value),
            ...card.steps.all,
            ...card.roles.map(({ name }) => name),
            ...card.fallbacks.flatMap(({ steps }) => steps),
            ...card.spares,
            ...card.drills.flatMap(({ steps }) => steps),
            ...card.notes,
            ...card.remarks,
            ...card.cautions,
            ...card.turns.sides.flatMap(({ clean }) => [clean!.radius.own, clean!.halfTurn!]),
        ];
        expect(told.length).toBeGreaterThan(60);
        for (const words of told) expect(text.toLowerCase()).toContain(words.toLowerCase());
    });

    test('tells open findings and waivers with their reasons', async () => {
        const gone = all.find(({ card }) => card.plan === 'too-much')!;
        expect(gone.card.findings.length).toBeGreaterThan(5);
        const text = (await readPdf(await printed(gone, 'letter'))).pages.map(wordsOf).join(' ');
        for (const { message } of gone.card.findings) expect(text).toContain(message.replace(/\s+/g, ' '));
        const waived = all.find(({ card }) => card.plan === 'weed-line')!;
        const accepted = (await readPdf(await printed(waived))).pages.map(wordsOf).join(' ');
        expect(waived.card.waivers.length).toBeGreaterThan(0);
        for (const { because } of waived.card.waivers)
            expect(accepted.toLowerCase()).toContain(because!.toLowerCase());
    });

    test('leaves no hole for what a plan does not say', async () => {
        const bare = await readPdf(await printed(await cardedText(sparse)));
        expect(bare.pages).toHaveLength(1);
        expect(bare.outline).not.toContain('Roles');
        expect(bare.outline).not.toContain('Limits to keep');
        expect(bare.pages[0]!.tables[0]![0]!.flat()).toEqual(['Position', 'Back']);
        expect(wordsOf(bare.pages[0]!)).not.toMatch(/undefined|NaN|null|not stated/);
    });

    test('keeps markup in names as words', async () => {
        const ugly = await readPdf(await printed(await cardedText(hostile)));
        expect(ugly.title).toMatch(/^<script>alert\(1\)<\/script> /);
        expect(ugly.scripted).toBe(false);
        expect(ugly.pages.map(wordsOf).join(' ')).toContain('<script>alert(1)</script>');
        const bytes = Buffer.from(await printed(await cardedText(hostile))).toString('latin1');
        // What the file says of itself is the one place in it where words stand in markup.
        const about = /<\?xpacket begin[\s\S]*<\?xpacket end/.exec(bytes)![0];
        expect(about).toContain('&lt;script&gt;');
        expect(about).not.toContain('<script>');
    });
});

describe('on paper', () => {
    test.each(papers)(
        'every example has the size of %s, and nothing runs off it or into another',
        async (paper) => {
            expect(all.length).toBeGreaterThanOrEqual(9);
            for (const each of all)
                expectTidy(await readPdf(await printed(each, paper)), paper, each.card.plan);
        },
    );

    test.each(papers)('hostile names stay on %s and out of each other', async (paper) => {
        expectTidy(await readPdf(await printed(await cardedText(hostile), paper)), paper, 'hostile');
    });

    test('the check finds runs that cross and runs that leave the sheet', () => {
        const run = (x: number, baseline: number): Run => ({ words: 'x', x, baseline, width: 20, size: 10 });
        const page = (...runs: Run[]): ReadPage => ({ width: 100, height: 100, runs, tables: [], roles: [] });
        expect(untidy(page(run(10, 10), run(25, 12)))).toHaveLength(1);
        expect(untidy(page(run(90, 10)))).toHaveLength(1);
        expect(untidy(page(run(10, 10), run(10, 22), run(31, 10)))).toEqual([]);
    });
});

test('a face keeps its letters without the tables that move them', () => {
    const plain = plainFace(faces[0]!);
    const tables = (face: Uint8Array) => {
        const view = new DataView(face.buffer, face.byteOffset);
        return Array.from({ length: view.getUint16(4) }, (_, i) =>
            String.fromCharCode(...face.subarray(12 + 16 * i, 16 + 16 * i)),
        );
    };
    expect(tables(faces[0]!)).toContain('GPOS');
    expect(tables(plain)).not.toContain('GPOS');
    expect(tables(plain)).toEqual(expect.arrayContaining(['cmap', 'glyf', 'hmtx', 'loca']));
    expect(plainFace(new Uint8Array([1, 2, 3]))).toEqual(new Uint8Array([1, 2, 3]));
});

/** Rows of the working table by position, each cell by its column's head; in parts where it was set in parts. */
function workingRows({ pages }: ReadPdf): Map<string, Map<string, readonly string[]>> {
    const rows = new Map<string, Map<string, readonly string[]>>();
    for (const [head, ...body] of pages.flatMap(({ tables }) => tables)) {
        const heads = head!.map((cell) => cell.join(' '));
        if (heads[1] !== 'Position') continue;
        for (const cells of body) {
            const names = settledNames(cells[1]!);
            const row = rows.get(names) ?? new Map<string, readonly string[]>();
            for (const [index, cell] of cells.entries()) row.set(heads[index]!, cell);
            rows.set(names, row);
        }
    }
    return rows;
}

/** The position's name without the angler's below it. */
function settledNames(cell: readonly string[]): string {
    const words = lower(cell);
    const named = all
        .flatMap(({ card }) => card.rows)
        .filter(({ name, angler }) => words === [name, angler].filter(Boolean).join(' '));
    expect(named.length, words).toBeGreaterThan(0);
    return named[0]!.name;
}

function lower(cell: readonly string[]): string {
    const words = cell.join(' ');
    return words.charAt(0).toLowerCase() + words.slice(1);
}

/** Both systems: the metre and the international foot of 0.3048 m. */
function expectLength(cell: readonly string[], metres: number): void {
    const [m] = numbers(cell, 'm');
    const [ft] = numbers(cell, 'ft');
    expect(Math.abs(m! - metres)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(ft! - metres / 0.3048)).toBeLessThanOrEqual(0.51);
}

/** Kilograms and pounds of 0.45359237 kg, as a scale shows them at 9.80665 m/s². */
function expectLoad(cell: readonly string[], newtons: number): void {
    const kg = newtons / 9.80665;
    const [own] = numbers(cell, 'kg');
    const [lb] = numbers(cell, 'lb');
    expect(Math.abs(own! - kg)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(lb! - kg / 0.45359237)).toBeLessThanOrEqual(0.51);
}

function numbers(cell: readonly string[], unit: string): number[] {
    return [...cell.join(' ').matchAll(new RegExp(`([\\d.]+) ${unit}\\b`, 'g'))].map(([, n]) => Number(n));
}

/** As it is read: a line's words after each other, lines one below the other. */
function wordsOf({ runs }: ReadPage): string {
    return runs
        .map(({ words }) => words)
        .join(' ')
        .replace(/\s+/g, ' ');
}

function expectTidy({ pages }: ReadPdf, paper: PaperName, plan: string): void {
    for (const [index, page] of pages.entries()) {
        const [width, height] = sizes[paper];
        expect(page.width).toBeCloseTo(width, 1);
        expect(page.height).toBeCloseTo(height, 1);
        expect(page.runs.length).toBeGreaterThan(3);
        expect(untidy(page), `${plan}, ${paper}, page ${index + 1}`).toEqual([]);
    }
}

/** Runs that leave the sheet, and runs that lie on each other by more than half a point. */
function untidy({ width, height, runs }: ReadPage): string[] {
    const boxes = runs.map(({ words, x, baseline, width, size }) => ({
        words,
        left: x,
        right: x + width,
        bottom: baseline - 0.15 * size,
        top: baseline + 0.7 * size,
    }));
    const off = boxes.filter(
        ({ left, right, bottom, top }) => left < 0 || bottom < 0 || right > width || top > height,
    );
    const crossing = boxes.flatMap((a, index) =>
        boxes
            .slice(index + 1)
            .filter(
                (b) =>
                    Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 &&
                    Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom) > 0.5,
            )
            .map((b) => `${a.words} | ${b.words}`),
    );
    return [...off.map(({ words }) => `off the sheet: ${words}`), ...crossing];
}
