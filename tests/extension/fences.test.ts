import { expect, test, vi } from 'vitest';

// What is tested here is plain functions beside code for the editor, which is not there.
const refreshed = vi.fn();
vi.mock('vscode', () => ({
    commands: { executeCommand: refreshed },
    Uri: { joinPath: (...parts: unknown[]) => parts.join('/') },
}));
const { extendMarkdown, fenceHtml } = await import('../../extension/src/fences.ts');

test('words of a plan never become markup, and drawings stand as they are', () => {
    const html = fenceHtml({ pictures: ['<svg role="img"></svg>\n'], told: ['<img src="x"> & "y"'] });
    expect(html).toBe(
        '<div class="layback-plan"><svg role="img"></svg></div>\n' +
            '<ul class="layback-told"><li>&lt;img src=&quot;x&quot;&gt; &amp; &quot;y&quot;</li></ul>\n',
    );
    expect(fenceHtml(undefined)).toContain('being drawn');
});

test('a plan is drawn once until something is checked, and other fences are left alone', async () => {
    const ask = vi.fn(async () => ({ pictures: ['<svg/>'], told: [] }));
    const server = { started: async () => true, ask } as unknown as Parameters<typeof extendMarkdown>[0];
    const { extendMarkdownIt, forget } = extendMarkdown(server);
    const usual = vi.fn(() => 'code');
    const markdown = extendMarkdownIt({ renderer: { rules: { fence: usual as never } } });
    const rule = markdown.renderer.rules.fence as unknown as (tokens: unknown, at: number) => string;
    const render = (info: string) => rule([{ info, content: 'spread a {}' }], 0);
    expect([render('js'), render('spreadsheet'), render('')]).toEqual(['code', 'code', 'code']);
    expect(render('spread')).toContain('being drawn');
    await vi.waitFor(() => expect(refreshed).toHaveBeenCalledWith('markdown.preview.refresh'));
    expect(render('spread')).toContain('<svg/>');
    expect(ask).toHaveBeenCalledTimes(1);
    forget();
    expect(render('spread')).toContain('being drawn');
    await vi.waitFor(() => expect(ask).toHaveBeenCalledTimes(2));
});
