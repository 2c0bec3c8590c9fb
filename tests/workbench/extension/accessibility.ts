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
            for (const shown of ['Side', 'Table', 'Above']) {
                await diagram.view().getByRole('radio', { name: shown, exact: true }).click();
                await expect
                    .poll(
                        () =>
                            diagram
                                .view()
                                .getByRole('radio', { name: shown, exact: true })
                                .getAttribute('aria-checked'),
                        soon,
                    )
                    .toBe('true');
                const { wrong, rules } = await audit();
                expect(wrong, shown).toEqual([]);
                expect(rules).toEqual(
                    expect.arrayContaining(['button-name', 'color-contrast', 'html-has-lang']),
                );
            }
            await closeAll(bench());
        },
    );
}
