import { readdirSync, readFileSync } from 'node:fs';
import { URI } from 'langium';
import { briefOf } from '../../language/src/drawing/card/brief.ts';
import { cardContents } from '../../language/src/drawing/card/contents.ts';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { svgOfSide } from '../../language/src/drawing/svg-side.ts';
import { format } from '../../language/src/editor/format.ts';
import { messageOf } from '../../language/src/plan/finding.ts';
import { type FileText, load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { figuresJson } from '../../language/src/reports/figures.ts';
import { figuresTable } from '../../language/src/reports/figures-table.ts';
import { checkAll } from '../../language/src/rules/check.ts';

const folder = new URL('../../examples/', import.meta.url);

/** The example team's files by name, as they stand. */
export const sound: ReadonlyMap<string, string> = new Map(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.spread'))
        .sort()
        .map((name) => [name.replaceAll('\\', '/'), readFileSync(new URL(name, folder), 'utf8')]),
);

const words = [...sound.values()].flatMap((text) => text.match(/"[^"]*"|[\w.-]+|\S/g) ?? []);
const numbersAstray = [
    '0',
    '-1',
    '1e9',
    '99999999',
    '0.0000001',
    '9'.repeat(400),
    '3,5',
    '-0',
    '.5',
    '5.',
    '400 deg',
];
const marks = [...'{}"/*,;\n\r\t€😀%', '*/', '/*', '//'];

/** The same numbers from 0 to 1 in the same order every time. */
export function dice(seed: number): () => number {
    let state = seed >>> 0;
    return () => {
        state = (state + 0x6d2b79f5) >>> 0;
        let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
        mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
    };
}

/** A text with one to four slips of the kind that hands make: a word lost, doubled, swapped, another in its place. */
export function torn(text: string, roll: () => number): string {
    let now = text;
    for (let slips = 1 + Math.floor(roll() * 4); slips > 0; slips--) now = slipped(now, roll);
    return now;
}

function slipped(text: string, roll: () => number): string {
    const one = <T>(of: readonly T[]): T => of[Math.floor(roll() * of.length)]!;
    const spans = [...text.matchAll(/"[^"\n]*"|[\w.-]+|[^\s\w]/g)].map((found): [number, number] => [
        found.index,
        found.index + found[0].length,
    ]);
    if (spans.length === 0) return one(words);
    const [start, end] = one(spans);
    const [before, word, after] = [text.slice(0, start), text.slice(start, end), text.slice(end)];
    const anywhere = Math.floor(roll() * (text.length + 1));
    const near = Math.min(text.length, anywhere + Math.floor(roll() * 300));
    switch (Math.floor(roll() * 9)) {
        case 0:
        case 1:
            return before + after;
        case 2:
            return before + one(words) + after;
        case 3:
            return `${before}${word} ${one(words)} ${after}`;
        case 4: {
            const [from, to] = one(spans);
            if (from < end) return before + after;
            return before + text.slice(from, to) + text.slice(end, from) + word + text.slice(to);
        }
        case 5: {
            const numbers = [...text.matchAll(/\d+(\.\d+)?/g)];
            if (numbers.length === 0) return before + after;
            const number = one(numbers);
            return (
                text.slice(0, number.index) + one(numbersAstray) + text.slice(number.index + number[0].length)
            );
        }
        case 6:
            return text.slice(0, anywhere) + one(marks) + text.slice(anywhere);
        case 7:
            return text.slice(0, anywhere) + text.slice(near);
        default:
            return text.slice(0, near) + text.slice(anywhere, near) + text.slice(near);
    }
}

/**
 * Everything that the command says about a file: what it finds, figures, pictures, card, the formatted text.
 *
 * @param texts  the files by name, those that it uses among them
 * @param turns  also what comes from turns, which takes a second a plan
 * @returns what people would read, in one piece
 */
export async function allThatIsSaid(
    asked: string,
    texts: ReadonlyMap<string, string>,
    turns = false,
): Promise<string> {
    const services = createServices();
    const uriOf = (name: string) => URI.file(`/team/${name}`);
    const byUri = new Map([...texts].map(([name, text]) => [uriOf(name).toString(), text]));
    const loaded = await load(services, [uriOf(asked)], (uri): FileText => {
        const text = byUri.get(uri.toString());
        return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
    });
    const sheets = checkAll(loaded, { turns, once: true });
    const said = sheets.flatMap(({ findings }) =>
        findings.flatMap(({ at, related, fixes, ...finding }) => [
            `${at.start}-${at.end} ${messageOf(finding)}`,
            ...related.map(({ what }) => what),
            ...fixes.flatMap(({ title, edits }) => [title, ...edits.map(({ text }) => text)]),
        ]),
    );
    const plans = sheets.map(({ uri, plans }) => ({ path: uri, plans }));
    said.push(figuresJson(plans, '1'), await figuresTable(plans));
    for (const { plans, judgement } of sheets) {
        for (const plan of plans) {
            const findings = judgement.plans.get(plan.plan.name) ?? [];
            said.push(
                svgOf(sceneFromAbove(plan, findings), { palette: 'light', fans: true }),
                svgOfSide(sceneFromSide(plan, findings), { palette: 'light' }),
                briefOf(cardContents(plan, findings), 'text'),
            );
        }
    }
    said.push(format(texts.get(asked)!, services));
    return said.join('\n');
}
