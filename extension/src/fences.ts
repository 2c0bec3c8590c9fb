import { commands } from 'vscode';
import { type Fence, fence } from '../../language/src/editor/protocol.ts';
import type { Server } from './server.ts';

/** As much of the Markdown renderer as is used here. */
interface Renderer {
    readonly renderer: { readonly rules: Record<string, Rule | undefined> };
}

interface Token {
    readonly info: string;
    readonly content: string;
}

type Rule = (tokens: readonly Token[], at: number, options: unknown, env: unknown, self: unknown) => string;

/** So many plans are remembered; the oldest goes first. */
const most = 50;

/**
 * What the Markdown preview asks of this extension: plans in a fence, ```spread, are drawn in their place. The renderer
 * does not wait, so a plan that was not drawn yet is drawn beside it, and the preview made anew when it is.
 */
export function extendMarkdown(server: Server) {
    const drawn = new Map<string, Fence | undefined>();
    const draw = async (key: string, uri: string, text: string) => {
        drawn.set(key, undefined);
        for (const oldest of drawn.keys()) if (drawn.size > most) drawn.delete(oldest);
        await server.started();
        const answer = await server.ask(fence, { uri, text }).catch(() => undefined);
        // Asked again at the next look where nobody was there to answer.
        if (answer) drawn.set(key, answer);
        else drawn.delete(key);
        if (answer) await commands.executeCommand('markdown.preview.refresh');
    };
    // What a fence uses may have changed with any check.
    const forget = () => {
        if ([...drawn.values()].every((each) => each === undefined)) return;
        drawn.clear();
    };
    return {
        forget,
        extendMarkdownIt<T>(markdown: T): T {
            const { rules } = (markdown as Renderer).renderer;
            const usual = rules.fence;
            rules.fence = (tokens, at, options, env, self) => {
                const { info, content } = tokens[at]!;
                if (!/^spread(\s|$)/.test(info.trim())) return usual!(tokens, at, options, env, self);
                const uri = String((env as { currentDocument?: unknown } | undefined)?.currentDocument ?? '');
                const key = `${uri}\n${content}`;
                if (!drawn.has(key)) void draw(key, uri, content);
                return fenceHtml(drawn.get(key));
            };
            return markdown;
        },
    };
}

/** Drawings as they are, which hold no markup but their own; everything else as words. */
export function fenceHtml(drawn: Fence | undefined): string {
    if (!drawn) return '<p class="layback-told">The plan is being drawn.</p>\n';
    const pictures = drawn.pictures.map((svg) => `<div class="layback-plan">${svg.trim()}</div>\n`);
    const told = drawn.told.map((words) => `<li>${inMarkup(words)}</li>`);
    return `${pictures.join('')}${told.length > 0 ? `<ul class="layback-told">${told.join('')}</ul>\n` : ''}`;
}

function inMarkup(words: string): string {
    return words
        .replaceAll('&', '&amp;')
        .replaceAll('<', '&lt;')
        .replaceAll('>', '&gt;')
        .replaceAll('"', '&quot;');
}
