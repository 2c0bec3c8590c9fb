import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import Draft4 from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import { annotations } from '../../language/src/reports/annotations.ts';
import findingsSchema from '../../language/src/reports/findings.schema.json' with { type: 'json' };
import { jsonReport } from '../../language/src/reports/json.ts';
import { type RuleEntry, sarifReport } from '../../language/src/reports/sarif.ts';
import { layback } from './layback.ts';
import { fileOf, finding, placeIn, runOf } from './report-example.ts';

const tackle = fileOf('tackle.spread', 'lure ink-pusher "Ink" pusher {\n    length 330 mm\n}\n');
const text = 'note "🐟"\nport long rigger { lure ink-pusher  back 47 m }\n';
const plan = fileOf('plans/a b: 100%,é.spread', text, (file) => [
    finding(file, 'ink-pusher', {
        rule: 'size-order',
        severity: 'error',
        plan: 'friday',
        positions: ['port long rigger', 'port short rigger'],
        what: 'Ink is 100% too long: 330 mm,\nnot 210 mm.',
        why: 'Larger lures work closer in.',
        related: [{ at: placeIn(tackle, 'length 330 mm'), what: 'Its length.' }],
        fixes: [
            {
                title: 'Swap them',
                safe: true,
                edits: [
                    { at: placeIn(file, 'ink-pusher'), text: 'slim' },
                    { at: placeIn(tackle, '330'), text: '210' },
                ],
            },
        ],
    }),
    finding(file, '🐟', { rule: 'syntax', severity: 'hint' }),
    finding(file, text.trimEnd(), { rule: 'syntax' }),
]);
const run = runOf([plan, tackle], ['plans/other.spread is not there.']);

const rules: RuleEntry[] = [
    {
        name: 'stagger',
        group: 'layout',
        summary: 'Two lines touch.',
        standing: 'Physics.',
        severity: 'warning',
        page: '# stagger',
        link: 'https://layback.example/rules/stagger',
    },
    { name: 'size-order', group: 'layout', summary: 'Larger in.', standing: 'Practice.', severity: 'off' },
];

describe('JSON', () => {
    const report = JSON.parse(jsonReport(run, '0.1.0'));

    test('follows its own schema', () => {
        const valid = new Ajv({ allErrors: true }).compile(findingsSchema);
        expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
    });

    test('the schema would notice a finding without a rule', () => {
        const valid = new Ajv().compile(findingsSchema);
        const { rule: _, ...rest } = report.files[0].findings[0];
        expect(valid({ ...report, files: [{ ...report.files[0], findings: [rest] }] })).toBe(false);
    });

    test('counts lines and columns from 1 and columns in UTF-16 code units', () => {
        const fish = report.files[0].findings[1].at;
        expect(fish.start).toEqual({ line: 1, column: 7, offset: 6 });
        expect(fish.end).toEqual({ line: 1, column: 9, offset: 8 });
        expect(text.slice(fish.start.offset, fish.end.offset)).toBe('🐟');
    });

    test('lists files without findings and what could not be looked at', () => {
        expect(report.files.map((file: { path: string }) => file.path)).toEqual([plan.path, tackle.path]);
        expect(report.refusals).toEqual(['plans/other.spread is not there.']);
        expect(report.summary).toEqual({ files: 2, filesWithFindings: 1, errors: 1, warnings: 1, hints: 1 });
    });
});

describe('SARIF', () => {
    const options = { version: '0.1.0', rules, root: 'file:///team/' };
    const log = JSON.parse(sarifReport(run, options)) as Log;
    const { results = [], tool } = log.runs[0]!;

    test('follows the schema of version 2.1.0', () => {
        const valid = sarifSchema();
        expect(valid(log), JSON.stringify(valid.errors, undefined, 1)).toBe(true);
    });

    test('the schema would notice a region that counts from 0', () => {
        const broken = structuredClone(log);
        broken.runs[0]!.results![0]!.locations![0]!.physicalLocation!.region!.startLine = 0;
        expect(sarifSchema()(broken)).toBe(false);
    });

    test('every result points at the rule that it names, with its level', () => {
        expect(results.map((result) => tool.driver.rules![result.ruleIndex!]!.id)).toEqual(
            results.map((result) => result.ruleId),
        );
        expect(results.map((result) => result.level)).toEqual(['error', 'note', 'warning']);
        expect(tool.driver.rules!.map((rule) => rule.id)).toEqual(['stagger', 'size-order', 'syntax']);
        expect(tool.driver.rules![1]!.defaultConfiguration).toEqual({ enabled: false, level: 'none' });
    });

    test('paths are URIs that lead from the root back to the file', () => {
        const { uri, uriBaseId } = results[0]!.locations![0]!.physicalLocation!.artifactLocation!;
        expect(uriBaseId).toBe('%SRCROOT%');
        expect(uri).toMatch(/^[\w./%-]+$/);
        expect(decodeURIComponent(new URL(uri!, options.root).pathname)).toBe(`/team/${plan.path}`);
    });

    test('a file outside the root and one of the library keep their whole URI', () => {
        const outside = { ...fileOf('x.spread', 'a'), path: '../x.spread', uri: 'file:///x.spread' };
        const library = {
            ...fileOf('y', 'a'),
            path: 'layback:/species.spread',
            uri: 'layback:/species.spread',
        };
        const found = [outside, library].map((file) => ({ ...file, findings: [finding(file, 'a')] }));
        const { runs } = JSON.parse(sarifReport(runOf(found), options)) as Log;
        const places = runs[0]!.results!.map(
            (result) => result.locations![0]!.physicalLocation!.artifactLocation,
        );
        expect(places).toEqual([{ uri: 'file:///x.spread' }, { uri: 'layback:/species.spread' }]);
    });

    test('a fix over two files becomes a change of each', () => {
        const [fix] = results[0]!.fixes!;
        expect(fix!.artifactChanges.map((change) => change.replacements[0]!.insertedContent!.text)).toEqual([
            'slim',
            '210',
        ]);
        expect(fix!.artifactChanges[1]!.replacements[0]!.deletedRegion).toEqual({
            startLine: 2,
            startColumn: 12,
            endLine: 2,
            endColumn: 15,
        });
    });

    test('what a finding is known by stays while lines move, and tells two of the same apart', () => {
        const lower = fileOf(plan.path, `\n\n${text}`);
        const twice = { ...lower, findings: [finding(lower, 'ink-pusher'), finding(lower, 'back 47 m')] };
        const names = (file: typeof twice) =>
            (JSON.parse(sarifReport(runOf([file]), options)) as Log).runs[0]!.results!.map(
                (result) => result.partialFingerprints!['layback/v1'],
            );
        const higher = fileOf(plan.path, text);
        expect(new Set(names(twice)).size).toBe(2);
        expect(names({ ...higher, findings: [finding(higher, 'ink-pusher')] })[0]).toBe(names(twice)[0]);
    });

    test('what could not be looked at makes the run unsuccessful', () => {
        const [invocation] = log.runs[0]!.invocations!;
        expect(invocation!.executionSuccessful).toBe(false);
        expect(invocation!.toolExecutionNotifications![0]!.message.text).toBe(
            'plans/other.spread is not there.',
        );
    });
});

describe('annotations', () => {
    const lines = annotations(run).split('\n');

    test('one line a finding, whatever stands in it', () => {
        expect(lines).toHaveLength(4);
        expect(lines.at(-1)).toBe('');
        for (const line of lines.slice(0, 3)) expect(line).toMatch(/^::(error|warning|notice) title=/);
    });

    test('percent signs, line ends, colons and commas are escaped where they would be misread', () => {
        expect(lines[0]).toBe(
            '::error title=size-order in friday,file=plans/a b%3A 100%25%2Cé.spread,' +
                'line=2,endLine=2,col=25,endColumn=35' +
                '::Ink is 100%25 too long: 330 mm,%0Anot 210 mm. Larger lures work closer in.',
        );
    });

    test('columns are left out where the place runs over several lines', () => {
        expect(lines[2]).toContain('line=1,endLine=2::');
    });
});

describe('of the example team, by the command', () => {
    const examples = join(import.meta.dirname, '../../examples');
    const run = (format: string) =>
        JSON.parse(layback(['check', '-f', format, '--fail-on', 'never'], { cwd: examples }).stdout);

    test('SARIF follows its schema and points at text that is there', () => {
        const log = run('sarif') as Log;
        const valid = sarifSchema();
        expect(valid(log), JSON.stringify(valid.errors, undefined, 1)).toBe(true);
        const { results, tool, originalUriBaseIds } = log.runs[0]!;
        expect(results!.length).toBeGreaterThan(10);
        for (const { ruleId, locations } of results!) {
            expect(tool.driver.rules!.find(({ id }) => id === ruleId)?.shortDescription?.text).toMatch(/\S/);
            const { artifactLocation, region } = locations![0]!.physicalLocation!;
            const file = new URL(artifactLocation!.uri!, originalUriBaseIds!['%SRCROOT%']!.uri);
            const line = readFileSync(file, 'utf8').split('\n')[region!.startLine! - 1]!;
            expect(line.length).toBeGreaterThanOrEqual(region!.startColumn! - 1);
        }
    });

    test('JSON follows its schema, and its fixes change the text that they were made for', () => {
        const report = run('json');
        const valid = new Ajv({ allErrors: true }).compile(findingsSchema);
        expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
        const fixes = report.files.flatMap((file: { findings: { fixes: Fix[] }[] }) =>
            file.findings.flatMap((one) => one.fixes),
        ) as Fix[];
        expect(fixes.length).toBeGreaterThan(3);
        for (const { edits } of fixes) {
            for (const { at, text } of edits) {
                const source = readFileSync(join(examples, at.path), 'utf8');
                expect(source.slice(at.start.offset, at.end.offset)).not.toBe(text);
            }
        }
    });
});

interface Fix {
    readonly edits: readonly {
        readonly at: { path: string; start: { offset: number }; end: { offset: number } };
        readonly text: string;
    }[];
}

function sarifSchema() {
    const path = createRequire(import.meta.url).resolve('@microsoft/jest-sarif/package.json');
    const schema = JSON.parse(
        readFileSync(path.replace('package.json', 'lib/schemas/sarif-2.1.0-rtm.5.json'), 'utf8'),
    );
    const ajv = new Draft4({ allErrors: true, strict: false, unicodeRegExp: false });
    addFormats.default(ajv);
    return ajv.compile(schema);
}
