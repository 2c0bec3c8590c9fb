import type { LangiumDocument } from 'langium';
import type { Finding } from '../finding.ts';
import { OPEN_COMMENT } from '../syntax/lexer.ts';
import { shorten } from '../wording.ts';

/** What is said of a line as a text; of its sense other findings tell. */
const OF_TEXT: ReadonlySet<string> = new Set(['syntax', 'unknown-word']);

/**
 * Leaves one finding to a cause: behind a character that has no meaning, or a word that is in the way, the rest of the
 * line reads as something else than was meant, and whoever mends the first looks at the line again.
 */
export function withoutEchoes(document: LangiumDocument, findings: Finding[]): Finding[] {
    if (findings.length < 2) return findings;
    const text = document.textDocument.getText();
    const strays = new Set(
        document.parseResult.lexerErrors
            .filter(({ message }) => message !== OPEN_COMMENT)
            .map(({ offset }) => offset),
    );
    const isStray = ({ rule, at }: Finding) => rule === 'syntax' && strays.has(at.start);
    const echoes = new Set<Finding>();
    const joined = new Map<Finding, Finding>();
    const inOrder = findings
        .map((finding) => ({ finding, start: finding.at.start, end: finding.at.end }))
        .sort((a, b) => a.start - b.start);
    const lineEnd = /$/gm;
    let line: typeof inOrder = [];
    let endsAt = -1;
    for (const one of inOrder) {
        const { finding, start } = one;
        if (start > endsAt) {
            lineEnd.lastIndex = start;
            endsAt = lineEnd.exec(text)?.index ?? text.length;
            line = [];
        }
        const before = line.at(-1);
        const adjoins = before !== undefined && /^[^\S\r\n]*$/.test(text.slice(before.end, start));
        const isTorn = line.some(({ finding: { rule } }) => rule === 'syntax');
        const isBehindStray = line.some((each) => isStray(each.finding) && each.start < start);
        if (isStray(finding))
            for (const { finding: each, end } of line.slice(-3))
                if (each.rule === 'quantity' && end > start) echoes.add(each);
        if (OF_TEXT.has(finding.rule) && isBehindStray) echoes.add(finding);
        else if (isTorn && (finding.rule === 'unknown-word' || isStray(finding))) echoes.add(finding);
        else if (finding.rule === 'unknown-word' && adjoins && before.finding.rule === 'unknown-name') {
            echoes.add(finding);
            const name = text.slice(before.start, one.end).replace(/\s+/g, '-');
            joined.set(before.finding, oneWord(before.finding, name));
        } else if (finding.rule === 'syntax' && adjoins && before.finding.rule === 'value')
            echoes.add(finding);
        // A position that nobody has is not in the preset either.
        if (finding.rule === 'value' && before?.finding.rule === 'preset-idle' && one.end <= before.end)
            echoes.add(before.finding);
        // Of very many in one line the first ones tell.
        if (line.length < 20) line.push(one);
        else line[19] = one;
    }
    return findings
        .filter((finding) => !echoes.has(finding))
        .map((finding) => joined.get(finding) ?? finding);
}

function oneWord(finding: Finding, name: string): Finding {
    return { ...finding, remedy: `A name is one word: \`${shorten(name)}\`, where it is defined and here.` };
}
