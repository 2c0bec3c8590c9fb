import type { LangiumDocument } from 'langium';
import { printNumber } from '../../units/print.ts';
import type { Finding } from '../finding.ts';
import { ENOUGH } from './enough.ts';
import { instead, problem } from './problem.ts';
import { placeAt } from './syntax.ts';

/** A way to write a number that hands know from elsewhere, and how the language has it. */
interface Habit {
    readonly code: 'quantity' | 'syntax';
    readonly written: RegExp;
    readonly meant: (...parts: string[]) => string;
    readonly says: string;
}

const VULGAR = '½¼¾⅓⅔⅛⅜⅝⅞';
const PARTS = [1 / 2, 1 / 4, 3 / 4, 1 / 3, 2 / 3, 1 / 8, 3 / 8, 5 / 8, 7 / 8];

const habits: readonly Habit[] = [
    {
        code: 'quantity',
        written: /(\d+)\s+(\d+)\s*[/⁄]\s*([1-9]\d*)(?![\d/])(\s*[a-z]+)?/gi,
        meant: (_, whole, over, under, unit = '') =>
            `${printNumber(Number(whole) + Number(over) / Number(under), 4)}${unit}`,
        says: 'Fractions are written as decimals',
    },
    {
        code: 'quantity',
        written: new RegExp(`(\\d+)\\s?([${VULGAR}])(\\s*[a-z]+)?`, 'gi'),
        meant: (_, whole, part, unit = '') =>
            `${printNumber(Number(whole) + PARTS[VULGAR.indexOf(part!)]!, 4)}${unit}`,
        says: 'Fractions are written as decimals',
    },
    {
        code: 'quantity',
        written: /(\d+(?:\.\d+)?)\s*([a-z][a-z/]*)?\s*[-–—]\s*(\d+(?:\.\d+)?)\s*([a-z][a-z/]*)/gi,
        meant: (_, from, unit, to, last) => `${from} ${unit ?? last} to ${to} ${last}`,
        says: 'A range is written with `to`',
    },
    {
        code: 'quantity',
        written: /(\d+)(?:\s*·\s*|\s+,)(\d+)\s*([a-z][a-z/]*)/gi,
        meant: (_, whole, part, unit) => `${whole}.${part} ${unit}`,
        says: 'Decimals take a point',
    },
    {
        code: 'quantity',
        written: /(\d+)\s*m\s*(\d\d)(?!\s*\w)/g,
        meant: (_, metres, centimetres) => `${metres}.${centimetres} m`,
        says: 'Metres and centimetres are one number',
    },
    {
        code: 'quantity',
        written: /[０-９]+(?:[.．][０-９]+)?/g,
        meant: (digits) => digits!.normalize('NFKC'),
        says: 'Numbers take plain digits',
    },
    {
        code: 'syntax',
        written: /(?<=\b(?:in|out|at|from)\s+)(\d{1,2})\s*[h.]\s*([0-5]\d)(?!\d)/g,
        meant: (_, hours, minutes) => `${hours!.padStart(2, '0')}:${minutes}`,
        says: 'A time has a colon',
    },
];

/** What is said of the pieces of a number that was written in another way is said of it as one. */
export function asMeant(document: LangiumDocument, findings: Finding[]): Finding[] {
    const torn = findings.filter(
        ({ rule }) => rule === 'quantity' || rule === 'syntax' || rule === 'unknown-word',
    );
    const text = document.textDocument.getText();
    const told = new Set<Finding>();
    const found: Finding[] = [];
    // Of very many only the first are told.
    for (const finding of torn.slice(0, 4 * ENOUGH)) {
        if (told.has(finding)) continue;
        const { start } = finding.at;
        const from = Math.max(start - 30, text.lastIndexOf('\n', start - 1) + 1);
        const [around] = /^[^\r\n]*/.exec(text.slice(from, start + 40))!;
        for (const { code, written, meant, says } of habits) {
            const match = [...around.matchAll(written)].find(
                (each) => from + each.index <= start && start < from + each.index + each[0].length,
            );
            if (!match) continue;
            const at = placeAt(document, from + match.index, from + match.index + match[0].length);
            for (const each of torn) if (at.start <= each.at.start && each.at.start < at.end) told.add(each);
            const text = meant(...match);
            found.push(problem(code, at, { what: `${says}: \`${text}\`.`, fixes: [instead(at, text)] }));
            break;
        }
    }
    return told.size === 0 ? findings : [...findings.filter((each) => !told.has(each)), ...found];
}
