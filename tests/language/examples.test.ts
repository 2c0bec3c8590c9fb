import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { URI } from 'langium';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { format } from '../../language/src/editor/format.ts';
import { withTurns } from '../../language/src/plan/analyse/turns.ts';
import { messageOf } from '../../language/src/plan/finding.ts';
import { type FileText, load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { type CheckedSheet, checkAll } from '../../language/src/rules/check.ts';

const folder = new URL('../../examples/', import.meta.url);
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.spread'))
    .sort();
const gone = files.filter((name) => /what-.*-look-like/.test(name));
const sound = files.filter((name) => !gone.includes(name));
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');

const services = createServices();
const sheets = new Map<string, CheckedSheet>();

beforeAll(async () => {
    const onDisk = (uri: URI): FileText => {
        try {
            return { kind: 'text', text: readFileSync(uri.fsPath, 'utf8') };
        } catch {
            return { kind: 'missing' };
        }
    };
    const uris = files.map((name) => URI.file(fileURLToPath(new URL(name, folder))));
    const loaded = await load(services, uris, onDisk, [URI.file(fileURLToPath(folder))]);
    for (const [index, sheet] of checkAll(loaded).entries()) sheets.set(files[index]!, sheet);
});

/** Findings as `line: rule`, in the order of the text. */
function foundIn(name: string): string[] {
    return sheets.get(name)!.findings.map(({ at, rule }) => `${at.range.start.line + 1}: ${rule}`);
}

test('the folder holds what it is meant to show', () => {
    expect(sound.length).toBeGreaterThanOrEqual(10);
    expect(gone).toHaveLength(2);
    const plans = sound.flatMap((name) => sheets.get(name)!.resolved.spreads);
    expect(plans.length).toBeGreaterThanOrEqual(7);
    expect(new Set(plans.map(({ boat }) => boat?.value.name))).toEqual(new Set(['marram', 'dabchick']));
    const heads = new Set(textOf('lures.spread').match(/(?<=^lure .*" )\w+/gm));
    expect([...heads].sort()).toEqual(['bullet', 'chugger', 'diver', 'jet', 'plunger', 'pusher', 'slant']);
});

describe.each(files)('%s', (name) => {
    test('parses without an error', () => {
        const { lexerErrors, parserErrors } = services.parser.LangiumParser.parse<Sheet>(textOf(name));
        expect([...lexerErrors, ...parserErrors].map((error) => error.message)).toEqual([]);
    });

    test('is formatted', () => {
        expect(format(textOf(name), services)).toBe(textOf(name));
    });
});

test.each(sound)('%s checks clean', (name) => {
    expect(sheets.get(name)!.findings.map(messageOf)).toEqual([]);
});

test.each(gone)('%s has the faults that its margin names, and no others', (name) => {
    const marked = textOf(name)
        .split('\n')
        .flatMap((line, index) => {
            const rules = /\/\/ ! (.+)$/.exec(line)?.[1]?.split(', ') ?? [];
            return rules.map((rule) => `${index + 1}: ${rule}`);
        });
    expect(marked.length).toBeGreaterThan(9);
    expect(foundIn(name).sort()).toEqual(marked.sort());
});

test('waivers in sound plans have reasons, and are needed: an idle one would be an error here', () => {
    const plans = sound.flatMap((name) => sheets.get(name)!.resolved.spreads);
    const own = plans.flatMap(({ waivers }) => waivers.filter(({ inherited }) => !inherited));
    expect(own.length).toBeGreaterThanOrEqual(2);
    expect(own.every(({ because }) => because?.value)).toBe(true);
    expect(textOf('rules/house.spread')).toContain('rule waiver-idle { severity error }');
});

test('every clip in a sound plan holds against the pull with a surge, and opens below hooked drag', () => {
    const held: number[] = [];
    for (const { plans } of sound.map((name) => sheets.get(name)!)) {
        for (const { plan, lines } of plans) {
            // Surge on a pull: 1.2 in a slight sea rising to 1.5 at 1.5 m (estimate).
            const surge = 1.2 + 0.3 * Math.min(1, (plan.sea?.si ?? 0) / 1.5);
            for (const { line, pull } of lines) {
                if (line.role !== 'fished') continue;
                expect(line.clip && pull.known, line.position.name).toBeTruthy();
                if (!line.clip || !pull.known) continue;
                held.push(line.clip.si / pull.value);
                expect(line.clip.si, `${plan.name}: ${line.position.name}`).toBeGreaterThan(
                    pull.value * surge,
                );
                expect(line.clip.si).toBeLessThan(line.drag.hooked!.si);
            }
        }
    }
    expect(held.length).toBeGreaterThan(20);
});

test('every sound plan keeps its lines apart and its lures working in the turn that it allows', () => {
    const plans = sound.flatMap((name) => sheets.get(name)!.plans);
    for (const { plan, turns } of plans.map(withTurns)) {
        expect(turns?.known, plan.name).toBe(true);
        if (!turns?.known) continue;
        for (const { noFoul, allWorking } of [turns.value.port, turns.value.starboard]) {
            expect(noFoul.radius, plan.name).toBeLessThanOrEqual(plan.turn!.si);
            expect(allWorking.radius, plan.name).toBeLessThanOrEqual(plan.turn!.si);
        }
    }
});
