import axe, { type AxeResults } from 'axe-core';
import { expect, test } from 'vitest';
import { soon, type Workbench } from '../driver.ts';
import { closeAll, diagramOf } from './diagram-page.ts';

/** What an accessibility engine finds wrong with the page inside the panel. */
export function testAccessibility(bench: () => Workbench): void {
    const diagram = diagramOf(bench);

    async function audit() {
        // Through the browser itself: the page runs no script but its own.
        const frame = await (await diagram.view().locator('html').elementHandle())!.ownerFrame();
        await frame!.evaluate(axe.source);
        const { violations, passes } = (await frame!.evaluate('axe.run()')) as AxeResults;
        return {
            wrong: violations.flatMap(({ id, nodes }) =>
                nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary}`),
            ),
            rules: passes.map(({ id }) => id),
        };
    }

    test.each(['dark', 'hc', 'hc-light', 'light'] as const)(
        'the engine finds nothing in any view of the diagram, in the theme %s',
        async (theme) => {
            await bench().theme(theme);
            await bench().openFile('plans/fast-fish.spread');
            await bench().command('Layback: Open the Diagram');
            await expect.poll(() => diagram.plan(), soon).toBeDefined();
            for (const shown of ['From the side', 'Turn', 'Strike', 'Compare', 'From above', 'Table']) {
                const isView = shown !== 'Table';
                const control = diagram
                    .view()
                    .getByRole(isView ? 'radio' : 'button', { name: shown, exact: true });
                await control.click();
                await expect
                    .poll(() => control.getAttribute(isView ? 'aria-checked' : 'aria-pressed'), soon)
                    .toBe('true');
                // The answer replaces what the engine would otherwise look at halfway.
                await bench().page.waitForTimeout(400);
                const { wrong, rules } = await audit();
                expect(wrong, shown).toEqual([]);
                expect(rules).toEqual(
                    expect.arrayContaining(['button-name', 'color-contrast', 'html-has-lang']),
                );
            }
            await diagram.view().getByRole('button', { name: 'Table', exact: true }).click();
            await closeAll(bench());
        },
    );
}
