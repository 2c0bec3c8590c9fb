import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';
import { closeAll } from './diagram-page.ts';

/** Plans in notes, in the editor's own preview of Markdown. */
export const notes = `# The day

\`\`\`spread
use "../boats.spread"

spread noted "<b>Noted</b> & drawn" {
    boat marram
    speed 8 kn
    port short corner { back wave 2 }
}
\`\`\`

\`\`\`spread
spread broken { sped 8 kn }
\`\`\`

\`\`\`js
let other = 1;
\`\`\`
`;

export function testFences(bench: () => Workbench): void {
    test('the Markdown preview draws the plans in it, and tells what is wrong in words', async () => {
        await bench().openFile('notes/day.md');
        await bench().command('Markdown: Open Preview');
        const body = bench().webview().locator('body');
        await expect.poll(() => body.locator('.layback-plan svg').count(), soon).toBe(2);
        await expect
            .poll(() => body.locator('.layback-told').allInnerTexts(), soon)
            .toEqual([expect.stringMatching(/^Line 1: .*sped/)]);
        expect(await body.locator('.layback-plan svg').first().textContent()).toContain(
            '<b>Noted</b> & drawn',
        );
        expect(await body.locator('.layback-plan b').count()).toBe(0);
        expect(await body.locator('code.language-js').count()).toBe(1);
        await bench().screenshot('markdown-preview');
        await closeAll(bench());
    });
}
