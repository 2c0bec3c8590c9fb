import { readdirSync, readFileSync } from 'node:fs';
import { URI } from 'langium';
import { expect } from 'vitest';
import { type Edit, type Finding, messageOf } from '../../language/src/plan/finding.ts';
import { type FileText, load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { type CheckedSheet, checkAll } from '../../language/src/rules/check.ts';
import { ruleNamed } from '../../language/src/rules/registry.ts';

/**
 * Holds a text to the expectations that stand in it, each under the words that it is about:
 *
 *     port long rigger { lure broad  back 47 m }
 *     //                      ^^^^^ size-order: runs outside Dart
 *
 * Carets cover what is underlined (of several lines, the first); behind them the code and a part of the message.
 * Nothing may be missing and nothing may be left over.
 *
 * @param only  the rules that the text is about; faults in the text itself always count
 */
export async function expectMarked(text: string, ...only: string[]): Promise<CheckedSheet> {
    const sheet = await checkText(text);
    const found = sheet.findings
        .filter(({ rule }) => only.length === 0 || only.includes(rule) || !ruleNamed(rule))
        .map((finding) => asMark(finding, text));
    const expected = marksIn(text);
    for (const mark of found) {
        // A part of the message is enough: the one who wrote the mark chose which.
        const wanted = expected.find((other) => isMet(other, mark));
        if (wanted) mark.message = wanted.message;
    }
    expect(found.map(written).sort()).toEqual(expected.map(written).sort());
    return sheet;
}

// One set of services reads the shared files once; every text is a file of its own beside them.
const services = createServices();
let texts = 0;

/** Checks a text as a file of its own, beside the files that tests share. */
export async function checkText(text: string): Promise<CheckedSheet> {
    const uri = URI.file(`/deck/plan-${++texts}.spread`);
    const loaded = await load(services, [uri], (asked): FileText => {
        if (asked.toString() === uri.toString()) return { kind: 'text', text };
        const shared = sharedFiles.get(asked.path.split('/').at(-1)!);
        return shared === undefined ? { kind: 'missing' } : { kind: 'text', text: shared };
    });
    return checkAll(loaded, { turns: true })[0]!;
}

/** A plan for the shared boat at 8 kn; further definitions may stand above it. */
export function today(lines: string, above = ''): string {
    return `use "cockpit.spread"\n${above}\nspread today {\n    boat fulmar\n    speed 8 kn\n${lines}\n}\n`;
}

/** The text with the first fix of a rule's first finding applied. */
export async function mended(text: string, rule: string, fix = 0): Promise<string> {
    const sheet = await checkText(text);
    const finding = sheet.findings.find((one) => one.rule === rule && one.fixes[fix]);
    if (!finding) throw new Error(`${rule} offers no fix here: ${sheet.findings.map(messageOf).join('\n')}`);
    return applied(text, finding.fixes[fix]!.edits, sheet.uri);
}

/** The messages of one rule, in the order of the text. */
export async function messagesOf(text: string, rule: string): Promise<string[]> {
    const { findings } = await checkText(text);
    return findings.filter((finding) => finding.rule === rule).map(messageOf);
}

/** How severe the first finding of a rule is. */
export async function severityOf(text: string, rule: string): Promise<string | undefined> {
    return (await checkText(text)).findings.find((finding) => finding.rule === rule)?.severity;
}

/** What the first finding of a rule points at besides, in words. */
export async function relatedOf(text: string, rule: string): Promise<string[] | undefined> {
    const first = (await checkText(text)).findings.find((finding) => finding.rule === rule);
    return first?.related.map(({ what }) => what);
}

function applied(text: string, edits: readonly Edit[], uri: string): string {
    expect(edits.every(({ at }) => at.uri === uri)).toBe(true);
    return [...edits]
        .sort((a, b) => b.at.start - a.at.start)
        .reduce((rest, { at, text: put }) => rest.slice(0, at.start) + put + rest.slice(at.end), text);
}

const sharedFiles = new Map(
    ['../fixtures/rules/', '../rules/sound/'].flatMap((folder) =>
        readdirSync(new URL(folder, import.meta.url)).map((name) => [
            name,
            readFileSync(new URL(folder + name, import.meta.url), 'utf8'),
        ]),
    ),
);

interface Mark {
    readonly line: number;
    readonly from: number;
    readonly to: number;
    readonly rule: string;
    message: string;
}

const MARK = /^(\s*\/\/\s*)(\^+)\s+([\w-]+): (.*)$/;

function marksIn(text: string): Mark[] {
    const marks: Mark[] = [];
    let line = -1;
    for (const [index, row] of text.split('\n').entries()) {
        const [, before, carets, rule, message] = MARK.exec(row) ?? [];
        if (before === undefined) line = index;
        else {
            const from = before.length;
            marks.push({ line, from, to: from + carets!.length, rule: rule!, message: message! });
        }
    }
    return marks;
}

function asMark(finding: Finding, text: string): Mark {
    const { start, end } = finding.at.range;
    const whole = text.split('\n')[start.line] ?? '';
    const to = end.line === start.line ? end.character : whole.trimEnd().length;
    return { line: start.line, from: start.character, to, rule: finding.rule, message: messageOf(finding) };
}

function isMet(wanted: Mark, mark: Mark): boolean {
    const same = (['line', 'from', 'to', 'rule'] as const).every((key) => wanted[key] === mark[key]);
    return same && mark.message.includes(wanted.message);
}

function written({ line, from, to, rule, message }: Mark): string {
    return `${String(line + 1).padStart(3)}:${from + 1}-${to + 1} ${rule}: ${message}`;
}

/** Two rods, each where the other one's line is towed from, so that each line sweeps across the other on its way. */
export function crossedRods(left = 'left', order = ''): string {
    return today(
        `
    port inner { outfit medium-1  lure broad  back 20 m  from ${left} }
    port outer { outfit medium-2  lure dart  back 34 m  from right }
    ${order}`,
        `boat knot like fulmar {
    position inner "Inner" { ahead 0.5 m  out 0.5 m  up 1 m }
    position outer "Outer" { ahead 0.5 m  out 4.4 m  up 1 m }
    holder port inner { ahead 0.5 m  out 0.5 m  up 1 m }
    holder port outer { ahead 0.5 m  out 4.4 m  up 1 m }
    point left { ahead 0 m  out 4.6 m  up 2.2 m }
    point right { ahead 0 m  out 0.2 m  up 2.2 m }
}`,
    ).replace('boat fulmar\n    speed', 'boat knot\n    speed');
}
