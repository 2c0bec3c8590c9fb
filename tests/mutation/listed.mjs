import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { partsOf } from './parts.mjs';
import { reasonFor } from './reasons.mjs';

const LIST = 'tests/mutation/survivors.json';
const PAGE = 'tests/mutation/SURVIVORS.md';

/**
 * Takes what a run found into the list: for each file how many changes were tried and noticed, and those that were
 * not. Files that were not tried keep what was found the last time.
 */
export function listAll(root, results) {
    const list = listed(root);
    for (const name of readdirSync(results).filter((file) => file.endsWith('.json')))
        Object.assign(list, filesIn(join(results, name)));
    const sorted = Object.fromEntries(Object.entries(list).sort(([a], [b]) => (a < b ? -1 : 1)));
    writeFileSync(join(root, LIST), `${JSON.stringify(sorted, null, 4)}\n`);
    writeFileSync(join(root, PAGE), pageOf(sorted, root));
    // The formatter sets ticks its own way, and the house is held to it.
    spawnSync(join(root, 'node_modules/.bin/biome'), ['format', '--write', PAGE], { cwd: root });
}

export function listed(root) {
    try {
        return JSON.parse(readFileSync(join(root, LIST), 'utf8'));
    } catch {
        return {};
    }
}

/** What one run says of each file that it changed. */
export function filesIn(report) {
    const { files } = JSON.parse(readFileSync(report, 'utf8'));
    return Object.fromEntries(
        Object.entries(files).map(([path, { source, mutants }]) => [path, found(source, mutants)]),
    );
}

function found(source, mutants) {
    // A change that never ends is noticed as well; one that runs only while a file loads was not tried.
    const tried = mutants.filter(({ status }) =>
        ['Killed', 'Timeout', 'Survived', 'NoCoverage'].includes(status),
    );
    const missed = tried.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
    const survivors = missed
        .sort((a, b) => a.location.start.line - b.location.start.line)
        .map(({ location, mutatorName, replacement, status }) => ({
            kind: mutatorName,
            was: flat(wordsAt(source, location)),
            became: flat(replacement ?? ''),
            ...(status === 'NoCoverage' && { reached: false }),
        }));
    return { changes: tried.length, noticed: tried.length - missed.length, survivors };
}

/** The whole list as a page, with the reason behind each. */
export function pageOf(list, root) {
    const entries = Object.entries(list);
    const sections = entries.filter(([, { survivors }]) => survivors.length > 0).map(section);
    return `# What the tests do not notice

Each small change to the code of a rule, or of the physics that rules lean on, should make a test of its own part fail.
This page lists the changes that none noticed, and why. It is written by \`npm run mutation\` (or \`npm run mutation --
stagger waves\` for the parts with these words in their names); the reasons are in \`reasons.mjs\`. What other tests
would notice beside does not count, so a score is a lower bound. What runs only while a file loads, such as the name
and the summary of a rule, is not changed.

Not tried so far: ${untried(list, root).join('; ') || 'nothing'}.

## How much is noticed

${table([
    ['what', 'changes', 'noticed', 'share'],
    row('all', entries),
    row(
        'the rules',
        entries.filter(([path]) => /\/rules\//.test(path)),
    ),
    row(
        'the physics',
        entries.filter(([path]) => /\/physics\//.test(path)),
    ),
    ...entries.map(([path, one]) => row(short(path), [[path, one]])),
])}

## What is not, and why
${sections.join('')}`;
}

function untried(list, root) {
    const begins = (pattern) => pattern.replace(/\*.*/, '');
    return partsOf(root, [])
        .filter(({ mutate }) => !Object.keys(list).some((path) => fits(path, begins(mutate[0]))))
        .map(({ name }) => name);
}

/** Whether a file is one that a pattern begins like, in the folder itself and not in one below it. */
function fits(path, beginning) {
    return path.startsWith(beginning) && !path.slice(beginning.length).includes('/');
}

function row(name, entries) {
    const sum = (key) => entries.reduce((total, [, one]) => total + one[key], 0);
    const [changes, noticed] = [sum('changes'), sum('noticed')];
    const share = changes === 0 ? '' : `${(Math.floor((1000 * noticed) / changes) / 10).toFixed(1)} %`;
    return [name, String(changes), String(noticed), share];
}

/** Set as the formatter sets it: names to the left, figures to the right. */
function table([head, ...rows]) {
    const widths = head.map((_, column) => Math.max(...[head, ...rows].map((cells) => cells[column].length)));
    const set = (cells) =>
        `| ${cells.map((cell, column) => (column === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[column]))).join(' | ')} |`;
    const rule = widths.map((width, column) =>
        column === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`,
    );
    return [head, rule, ...rows].map(set).join('\n');
}

function section([path, { survivors }]) {
    const groups = [...grouped(survivors, (one) => reasonFor(path, one))].map(
        ([reason, ones]) =>
            `\n${reason ?? 'No test of this part tells these apart yet:'}\n\n${ones.map(({ was, became }) => `- ${quoted(was)} → ${quoted(became)}`).join('\n')}\n`,
    );
    return `\n### ${short(path)}\n${groups.join('')}`;
}

function grouped(items, keyOf) {
    const groups = new Map();
    for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
    return groups;
}

/** As code in Markdown, whatever ticks it holds. */
function quoted(code) {
    if (code === '') return 'nothing';
    const text = code.length > 100 ? `${code.slice(0, 97)}...` : code;
    return text.includes('`') ? `\`\` ${text} \`\`` : `\`${text}\``;
}

function short(path) {
    return path.replace('language/src/', '').replace(/rules\/([\w-]+)\/\1\.ts/, 'rules/$1');
}

function wordsAt(source, { start, end }) {
    const lines = source.split('\n').slice(start.line - 1, end.line);
    lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
    lines[0] = lines[0].slice(start.column - 1);
    return lines.join(' ');
}

function flat(text) {
    return text.replace(/\s+/g, ' ').trim();
}
