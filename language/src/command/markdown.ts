import { marked, type Token, type Tokens } from 'marked';
import { table } from '../reports/table.ts';
import { harmless, type Width, widthFor, wrap } from '../reports/width.ts';
import type { Terminal } from './terminal.ts';

const widest = 96;

interface Page {
    readonly ink: Terminal['ink'];
    readonly columns: number;
    readonly width: Width;
}

/** Markdown as lines of a terminal: headings, paragraphs, lists, code, tables, quotes. */
export async function inTerminal(
    markdown: string,
    { ink, columns }: Pick<Terminal, 'ink' | 'columns'>,
): Promise<string> {
    const page = { ink, columns: Math.min(columns ?? widest, widest), width: await widthFor([markdown]) };
    return `${blocks(marked.lexer(markdown), page).join('\n').trim()}\n`;
}

function blocks(tokens: readonly Token[], page: Page): string[] {
    return tokens.flatMap((token) => [...block(token, page), ...(token.type === 'space' ? [] : [''])]);
}

function block(token: Token, page: Page): string[] {
    const { ink } = page;
    switch (token.type) {
        case 'heading':
            return [ink.strong(plain(token.tokens))];
        case 'paragraph':
        case 'text':
            return wrapped(plain(token.tokens ?? [token]), page);
        case 'code':
            return harmlessLines((token as Tokens.Code).text).map((line) =>
                ink.accent(`    ${line}`.trimEnd()),
            );
        case 'list':
            return (token as Tokens.List).items.flatMap((item, index) =>
                listItem(item, index, token as Tokens.List, page),
            );
        case 'blockquote':
            return indented(blocks((token as Tokens.Blockquote).tokens, narrower(page, 2)), '| ', '| ');
        case 'table':
            return tableLines(token as Tokens.Table, page);
        case 'hr':
            return [ink.faint('─'.repeat(Math.min(page.columns, 40)))];
        default:
            return [];
    }
}

function listItem(item: Tokens.ListItem, index: number, list: Tokens.List, page: Page): string[] {
    const mark = list.ordered ? `${Number(list.start || 1) + index}. ` : '- ';
    const lines = item.tokens.flatMap((token) => block(token, narrower(page, mark.length)));
    return indented(lines, mark, ' '.repeat(mark.length));
}

function tableLines(token: Tokens.Table, page: Page): string[] {
    const columns = token.header.map((cell) => ({ head: plain(cell.tokens) }));
    const rows = token.rows.map((row) => row.map((cell) => plain(cell.tokens)));
    const last = columns.length - 1;
    const others = columns
        .slice(0, last)
        .map(({ head }, index) => Math.max(page.width(head), ...rows.map((row) => page.width(row[index]!))));
    const left = page.columns - others.reduce((sum, width) => sum + width + 2, 0);
    // The last column takes what is left, over several lines where it must.
    const tall = rows.flatMap((row) =>
        wrap(row[last]!, Math.max(24, left), page.width).map((line, index) =>
            index === 0 ? [...row.slice(0, last), line] : [...row.slice(0, last).map(() => ''), line],
        ),
    );
    return table(columns, tall, page.ink, page.width);
}

/** The words alone: a terminal's bold and italics are too uneven to carry meaning. */
function plain(tokens: readonly Token[] = []): string {
    return tokens
        .map((token) => {
            if (token.type === 'br') return ' ';
            if (token.type === 'link') return linkText(token as Tokens.Link);
            if ('tokens' in token && token.tokens) return plain(token.tokens);
            return 'text' in token ? unescaped(String(token.text)) : '';
        })
        .join('');
}

function linkText({ href, tokens }: Tokens.Link): string {
    const text = plain(tokens);
    return /^https?:/.test(href) && href !== text ? `${text} (${href})` : text;
}

function unescaped(text: string): string {
    const names: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
    return text.replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => names[name]!);
}

function wrapped(text: string, page: Page): string[] {
    return wrap(harmless(text.replace(/\s+/g, ' ').trim()), page.columns, page.width);
}

function harmlessLines(text: string): string[] {
    return text.split('\n').map((line) => harmless(line.replaceAll('\t', '    ')));
}

function indented(lines: readonly string[], first: string, others: string): string[] {
    return lines.map((line, index) => `${index === 0 ? first : others}${line}`.trimEnd());
}

function narrower(page: Page, columns: number): Page {
    return { ...page, columns: Math.max(24, page.columns - columns) };
}
