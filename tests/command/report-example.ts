import type { Finding } from '../../language/src/plan/finding.ts';
import type { Place } from '../../language/src/plan/origin.ts';
import type { Checked, Run } from '../../language/src/reports/checked.ts';

/** The place of the first occurrence of some words in a text. */
export function placeIn(file: { uri: string; text: string }, words: string): Place {
    const start = file.text.indexOf(words);
    if (start < 0) throw new Error(`no "${words}" in ${file.uri}`);
    const at = (offset: number) => {
        const before = file.text.slice(0, offset).split(/\r\n|\n|\r/);
        return { line: before.length - 1, character: before.at(-1)!.length };
    };
    const end = start + words.length;
    return { uri: file.uri, start, end, range: { start: at(start), end: at(end) } };
}

export function finding(
    file: { uri: string; text: string },
    words: string,
    more: Partial<Finding> = {},
): Finding {
    return {
        rule: 'stagger',
        severity: 'warning',
        at: placeIn(file, words),
        what: 'Port long rigger touches starboard long rigger at 3 deg of sway.',
        related: [],
        fixes: [],
        positions: [],
        ...more,
    };
}

export function fileOf(
    path: string,
    text: string,
    findings: (file: Checked) => Finding[] = () => [],
): Checked {
    const file: Checked = {
        uri: `file:///team/${path}`,
        path,
        text,
        findings: [],
        plans: [],
        concerning: new Map(),
    };
    return { ...file, findings: findings(file) };
}

export function runOf(files: Checked[], refusals: string[] = []): Run {
    return { files, sources: new Map(files.map((file) => [file.uri, file])), refusals };
}
