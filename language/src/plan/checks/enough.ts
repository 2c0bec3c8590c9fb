import type { Finding } from '../finding.ts';
import { type LanguageCode, problem } from './problem.ts';

/** So many findings of one code are said of the text of one file: whoever mends that many looks again. */
export const ENOUGH = 50;

/** The first findings of each code, in the order of the text; behind them one that says how many more there are. */
export function enough(findings: readonly Finding[]): readonly Finding[] {
    if (findings.length <= ENOUGH) return findings;
    const byCode = new Map<string, Finding[]>();
    for (const finding of findings) {
        const same = byCode.get(finding.rule);
        same ? same.push(finding) : byCode.set(finding.rule, [finding]);
    }
    return [...byCode.values()].flatMap((same) => {
        if (same.length <= ENOUGH) return same;
        const inOrder = same.map((finding) => ({ finding, start: finding.at.start }));
        inOrder.sort((a, b) => a.start - b.start);
        const said = inOrder.slice(0, ENOUGH).map(({ finding }) => finding);
        const first = inOrder[ENOUGH]!.finding;
        const left = same.length - ENOUGH;
        return [
            ...said,
            problem(first.rule as LanguageCode, first.at, {
                severity: same.some(({ severity }) => severity === 'error') ? 'error' : first.severity,
                what:
                    left === 1
                        ? 'One more place in this file, from here on, has a finding of this kind.'
                        : `${left} more places in this file, from here on, have a finding of this kind.`,
                why: '',
                remedy: 'Mend the first ones: often the rest follows from them.',
            }),
        ];
    });
}
