import type { TextDocument } from 'langium';
import type { Range, TextEdit } from 'vscode-languageserver';
import type { Edit } from '../plan/finding.ts';

/** An edit of a fix as the protocol has it. What is taken out takes the blanks with it that it leaves behind. */
export function textEditOf({ at, text }: Edit, document: TextDocument | undefined): TextEdit {
    if (text !== '' || !document) return { range: at.range, newText: text };
    return { range: leftBehind(at.range, document), newText: '' };
}

/**
 * The stretch to take out so that no empty line and no double blank stays: the whole line where nothing else is
 * on it, else the blanks before.
 */
function leftBehind(range: Range, document: TextDocument): Range {
    const text = document.getText();
    let [start, end] = [document.offsetAt(range.start), document.offsetAt(range.end)];
    const isBlank = (at: number) => text[at] === ' ' || text[at] === '\t';
    const isEnd = (at: number) => at >= text.length || text[at] === '\n' || text[at] === '\r';
    let [from, to] = [start, end];
    while (from > 0 && isBlank(from - 1)) from--;
    while (isBlank(to)) to++;
    const opensLine = from === 0 || text[from - 1] === '\n' || text[from - 1] === '\r';
    if (opensLine && isEnd(to)) {
        if (text[to] === '\r') to++;
        if (text[to] === '\n') to++;
        [start, end] = [from, to];
    } else if (opensLine) end = to;
    else start = from;
    return { start: document.positionAt(start), end: document.positionAt(end) };
}
