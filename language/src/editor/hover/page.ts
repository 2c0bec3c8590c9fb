import { type Hover, MarkupKind, type Range } from 'vscode-languageserver';
import type { EditorServices } from '../services.ts';

/** A piece of what a hover says, before anybody chose between Markdown and plain text. */
export type Part =
    | { readonly kind: 'title'; readonly text: string; readonly aside?: string }
    | { readonly kind: 'text'; readonly text: string }
    /** A remark of the author's, which may hold Markdown of its own. */
    | { readonly kind: 'doc'; readonly text: string }
    | { readonly kind: 'code'; readonly text: string }
    /** Carried out by the editor: only for one that does. */
    | {
          readonly kind: 'command';
          readonly text: string;
          readonly command: string;
          readonly given: readonly string[];
      }
    | {
          readonly kind: 'rows';
          readonly rows: readonly (readonly string[])[];
          readonly heads?: readonly string[];
      };

export const title = (text: string, aside?: string): Part => ({
    kind: 'title',
    text,
    ...(aside && { aside }),
});
export const text = (said: string): Part => ({ kind: 'text', text: said });
export const code = (said: string): Part => ({ kind: 'code', text: said });

export function doc(said: string | undefined): Part[] {
    return said ? [{ kind: 'doc', text: said }] : [];
}

/** A table without its empty rows; nothing where none is left. */
export function rows(all: readonly (readonly (string | undefined)[])[], heads?: readonly string[]): Part[] {
    const filled = all.filter(([, value]) => value).map((row) => row.map((cell) => cell ?? ''));
    return filled.length === 0 ? [] : [{ kind: 'rows', rows: filled, ...(heads && { heads }) }];
}

export function hoverOf(parts: readonly Part[], range: Range, { shared }: EditorServices): Hover {
    const formats = shared.editor.Client.capabilities.textDocument?.hover?.contentFormat;
    const isMarkdown = formats?.includes(MarkupKind.Markdown) ?? false;
    const kind = isMarkdown ? MarkupKind.Markdown : MarkupKind.PlainText;
    return { contents: { kind, value: textOf(parts, isMarkdown) }, range };
}

export function textOf(parts: readonly Part[], isMarkdown: boolean): string {
    return parts.map(isMarkdown ? markdown : plain).join('\n\n');
}

function markdown(part: Part): string {
    switch (part.kind) {
        case 'title':
            return `**${safe(part.text)}**${part.aside ? ` · ${safe(part.aside)}` : ''}`;
        case 'text':
            // Words of the language stand in backticks in our own sentences.
            return safe(part.text).replaceAll('\\`', '`');
        case 'doc':
            return part.text.replaceAll('<', '&lt;');
        case 'code':
            return `\`\`\`layback\n${part.text}\n\`\`\``;
        case 'command': {
            const given = encodeURIComponent(JSON.stringify(part.given));
            return `[${safe(part.text)}](command:${part.command}?${given})`;
        }
        case 'rows': {
            const width = Math.max(...part.rows.map(({ length }) => length));
            const line = (cells: readonly string[]) =>
                `| ${Array.from({ length: width }, (_, at) => safe(cells[at] ?? '')).join(' | ')} |`;
            return [line(part.heads ?? []), `|${'---|'.repeat(width)}`, ...part.rows.map(line)].join('\n');
        }
    }
}

function plain(part: Part): string {
    switch (part.kind) {
        case 'title':
            return part.aside ? `${part.text} · ${part.aside}` : part.text;
        case 'rows':
            return [...(part.heads ? [part.heads] : []), ...part.rows]
                .map((cells) => cells.filter(Boolean).join('  '))
                .join('\n');
        default:
            return part.text;
    }
}

/** Somebody's words as they are, whatever Markdown would make of them. */
function safe(words: string): string {
    return words.replace(/[\\`*_{}[\]#|<>~]/g, '\\$&').replace(/\r?\n/g, ' ');
}
