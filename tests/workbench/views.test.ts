import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openWorkbench, soon, type Workbench } from './driver.ts';
import { diagramOf } from './extension/diagram-page.ts';
import { project } from './project.ts';

const examples = path.join(project, 'examples');
const files = Object.fromEntries(
    readdirSync(examples, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.spread'))
        .map((name) => [name, readFileSync(path.join(examples, name), 'utf8')]),
);
const plans = 'plans/blue-marlin.spread';

const odd = '<img src=x onerror=alert(1)> & <b>odd</b>';

let bench: Workbench;
const diagram = diagramOf(() => bench);
const view = () => diagram.view();
const radio = (name: string) => view().getByRole('radio', { name });
/** What is on the stage; undefined while nothing is. */
const drawn = () =>
    view()
        .locator('#stage > svg')
        .evaluateAll(
            ([svg]) =>
                svg && ((svg as SVGElement).dataset.view ?? (svg.hasAttribute('data-bow') ? 'above' : '')),
        );
const scrubber = () => view().getByRole('slider', { name: 'Moment of the turn' });
const heard = () => scrubber().getAttribute('aria-valuetext');
const seconds = async () => Number(/^[\d.]+/.exec((await heard()) ?? '')?.[0]);
const boat = () => view().locator('g[data-id="boat"] path').getAttribute('d');
const focused = () =>
    view()
        .locator(':focus')
        .evaluate((e) => e.id || e.getAttribute('data-id') || e.textContent || e.tagName);

beforeAll(async () => {
    const committed = files[plans]!.replace('back wave 3', 'back wave 4');
    bench = await openWorkbench({
        workspace: {
            ...files,
            'plans/.committed/blue-marlin.spread': committed,
            'plans/odd.spread': files['plans/sailfish-on-bait.spread']!.replace(
                'Slow baits inside the bank',
                odd,
            ),
        },
        beside: path.join(project, 'tests/workbench/fixtures/git'),
        settings: { 'editor.acceptSuggestionOnEnter': 'off', 'editor.autoClosingBrackets': 'never' },
    });
    await bench.openFile(plans);
    await bench.command('Layback: Open the Diagram');
    await bench.select('lure tar-barrel');
}, 90_000);
afterAll(() => bench?.close());
test('the switch has five views, and the arrow keys go through them and around', async () => {
    await expect.poll(() => diagram.plan(), soon).toBe('bank-settled');
    const radios = view().getByRole('radiogroup', { name: 'What is shown' }).getByRole('radio');
    expect(await radios.allInnerTexts()).toEqual([
        'From above',
        'From the side',
        'Turn',
        'Strike',
        'Compare',
    ]);
    await radio('From above').focus();
    await bench.page.keyboard.press('ArrowRight');
    await expect.poll(drawn, soon).toBe('side');
    expect(await radio('From the side').getAttribute('aria-checked')).toBe('true');
    await bench.page.keyboard.press('End');
    await expect.poll(() => radio('Compare').getAttribute('aria-checked'), soon).toBe('true');
    await bench.page.keyboard.press('ArrowRight');
    await expect.poll(drawn, soon).toBe('above');
    await expect.poll(focused, soon).toBe('show-above');
});

test('a turn can be played, paused, stepped through and scrubbed, and it says in words where it is', async () => {
    await radio('Turn').click();
    await expect.poll(drawn, { timeout: 15_000 }).toBe('turn');
    await expect.poll(heard, soon).toMatch(/^0\.0 s after the helm goes over: .+ m apart$/);
    const start = await boat();
    // Nothing moves before somebody asks for it.
    await bench.page.waitForTimeout(300);
    expect(await boat()).toBe(start);
    await view().getByRole('button', { name: 'Play' }).click();
    await expect.poll(seconds, soon).toBeGreaterThan(1);
    await view().getByRole('button', { name: 'Pause' }).click();
    const paused = await seconds();
    expect(await boat()).not.toBe(start);
    await view().getByRole('button', { name: 'One second on' }).click();
    await expect.poll(seconds, soon).toBeCloseTo(paused + 1, 0);
    await scrubber().focus();
    await bench.page.keyboard.press('Home');
    await expect.poll(seconds, soon).toBe(0);
    await bench.page.keyboard.press('ArrowRight');
    await expect.poll(seconds, soon).toBeCloseTo(0.1, 5);
    await bench.screenshot('view-turn');
});

test('another radius and the other side are other turns', async () => {
    const radius = view().getByRole('spinbutton', { name: 'Radius, m' });
    const heading = () => view().locator('#choices .heading').textContent();
    const before = await heading();
    await radius.fill('105');
    await radius.press('Enter');
    await expect.poll(heading, soon).toMatch(/ at 105 m\.$|345 ft\.$/);
    expect(await heading()).not.toBe(before);
    const side = view().getByRole('combobox', { name: 'Turn' });
    const other = (await side.inputValue()) === 'port' ? 'starboard' : 'port';
    await side.selectOption(other);
    await expect.poll(heading, soon).toContain(`to ${other}`);
    await expect.poll(() => view().locator('#stage > svg').getAttribute('data-side'), soon).toBe(other);
});

test('the tightest clean turns stand there as numbers and as arcs, and a moment can be gone to', async () => {
    const around = view().locator('#player .around');
    expect(await around.locator('p').first().textContent()).toMatch(
        /^Tightest clean turns: .+ port.*; .+ starboard/,
    );
    expect(await around.locator('svg path').count()).toBeGreaterThanOrEqual(2);
    const moment = around.getByRole('listitem').last().getByRole('button');
    const at = Number(/[\d.]+/.exec((await moment.textContent())!)![0]);
    await moment.click();
    await expect.poll(seconds, soon).toBeCloseTo(at, 1);
});

test('it is remembered over a reload, and the table says the same in words', {
    timeout: 60_000,
}, async () => {
    // The editor puts away what a page keeps a moment after it was told.
    await bench.page.waitForTimeout(1000);
    await bench.reload();
    await expect.poll(drawn, { timeout: 30_000 }).toBe('turn');
    expect(await radio('Turn').getAttribute('aria-checked')).toBe('true');
    await view().getByRole('button', { name: 'Table' }).click();
    const captions = () => view().locator('#table caption').allInnerTexts();
    await expect
        .poll(captions, soon)
        .toEqual([
            'What happens when',
            'Lures through the turn',
            expect.stringMatching(/^Metres between .+ and .+/),
        ]);
    await bench.screenshot('view-turn-words');
    await view().getByRole('button', { name: 'Table' }).click();
});

test('whoever wants less motion steps, and nothing can be played', async () => {
    await bench.page.emulateMedia({ reducedMotion: 'reduce' });
    await radio('From above').click();
    await expect.poll(drawn, soon).toBe('above');
    await radio('Turn').click();
    await expect.poll(drawn, soon).toBe('turn');
    expect(await view().getByRole('button', { name: 'Play' }).count()).toBe(0);
    const before = await seconds();
    await view().getByRole('button', { name: 'One second back' }).click();
    await expect.poll(seconds, soon).toBeCloseTo(Math.max(0, before - 1), 0);
    await bench.page.emulateMedia({ reducedMotion: 'no-preference' });
});

test('a bite is shown on the line at the caret, and on any other that is chosen', async () => {
    await radio('Strike').click();
    await expect.poll(drawn, soon).toBe('strike');
    const line = view().getByRole('combobox', { name: 'A bite on' });
    await bench.select('port short corner {');
    await expect.poll(() => line.inputValue(), soon).toBe('port short corner');
    await line.selectOption('port long rigger');
    await expect
        .poll(() => view().locator('#stage > svg').getAttribute('data-position'), soon)
        .toBe('port long rigger');
    const plots = view().locator('#stage g[data-role="plot"]');
    expect(await plots.count()).toBeGreaterThanOrEqual(2);
    await bench.screenshot('view-strike');
    const style = view().getByRole('combobox', { name: 'Fished' });
    await style.selectOption('drop-back');
    await expect.poll(() => style.inputValue(), soon).toBe('drop-back');
    const words = await view()
        .locator('#table')
        .evaluate((e) => e.textContent);
    expect(words).toMatch(/At most .+ at the hook in ten seconds\./);
});

test('before something is chosen, a comparison asks for it, and the other views stay within reach', async () => {
    await radio('Compare').click();
    await expect.poll(() => diagram.words(), soon).toMatch(/Compare with what\?/);
    expect(await radio('Turn').isVisible()).toBe(true);
    await bench.screenshot('view-compare-empty');
});

test('a plan is compared with its last commit', async () => {
    await view().getByRole('button', { name: 'Compare with the Last Commit' }).click();
    await expect
        .poll(() => view().locator('#choices li').allInnerTexts(), soon)
        .toEqual(['Starboard long corner moved: wave 4 → wave 3.']);
    expect(await view().locator('#stage g[data-role="ghost"]').count()).toBeGreaterThan(0);
    expect(await view().locator('#choices p').first().textContent()).toContain('last commit');
    await bench.screenshot('view-compare');
});

test('and with another plan', async () => {
    await view().getByRole('button', { name: 'Compare with Another Plan…' }).click();
    const rows = bench.page.locator('.quick-input-widget .monaco-list-row');
    await rows.first().waitFor();
    await bench.page.keyboard.type('Rough');
    await bench.page.keyboard.press('Enter');
    await expect.poll(() => view().locator('#choices li').count(), soon).toBeGreaterThan(2);
    const words = await view()
        .locator('#table')
        .evaluate((e) => e.textContent);
    expect(words).toMatch(/Against .*rough/i);
});

test('what is on show is exported as it is chosen, on a sheet of its own', async () => {
    const written = (name: string) => readFileSync(path.join(bench.folder, 'plans', name), 'utf8');
    const exported = async (name: RegExp) => {
        await bench.command('Layback: Export the Diagram as SVG…');
        await bench.saveAs(name);
        await expect.poll(() => bench.notifications().then(String), soon).toContain('Wrote plans/');
        await bench.command('Notifications: Clear All Notifications');
    };
    await exported(/bank-settled-compare\.svg$/);
    expect(written('bank-settled-compare.svg')).toContain('data-role="ghost"');
    await radio('Strike').click();
    await expect.poll(drawn, soon).toBe('strike');
    await exported(/bank-settled-strike\.svg$/);
    expect(written('bank-settled-strike.svg')).toContain('port long rigger');
    await radio('Turn').click();
    await expect.poll(drawn, soon).toBe('turn');
    await exported(/bank-settled-turn\.svg$/);
    const heading = await view().locator('#choices .heading').textContent();
    expect(written('bank-settled-turn.svg')).toContain(/ at (.+? m)/.exec(heading!)![1]!);
    // A sheet for paper, whatever the screen looks like.
    expect(written('bank-settled-turn.svg')).not.toMatch(/tabindex|var\(--/);
});

test('every view is there in every theme', { timeout: 120_000 }, async () => {
    for (const theme of ['dark', 'hc', 'light'] as const) {
        await bench.theme(theme);
        for (const [name, kind] of [
            ['From above', 'above'],
            ['From the side', 'side'],
            ['Turn', 'turn'],
            ['Strike', 'strike'],
            ['Compare', 'above'],
        ] as const) {
            await radio(name).click();
            await expect.poll(() => radio(name).getAttribute('aria-checked'), soon).toBe('true');
            await expect.poll(drawn, soon).toBe(kind);
            await bench.page.waitForTimeout(300);
            await bench.screenshot(`view-${name.replaceAll(' ', '-').toLowerCase()}-${theme}`);
        }
    }
});

test('by keyboard alone one goes from the switch through a turn and back', async () => {
    await radio('Turn').click();
    await expect.poll(drawn, soon).toBe('turn');
    await radio('Turn').focus();
    const stops: string[] = [];
    for (let presses = 0; presses < 30 && !stops.includes('scrubber'); presses++) {
        await bench.page.keyboard.press('Tab');
        stops.push(await focused());
    }
    expect(stops).toEqual(
        expect.arrayContaining(['as-table', 'zoom-fit', 'side', 'radius', 'play', 'scrubber']),
    );
    expect(stops.some((stop) => stop.startsWith('line:'))).toBe(true);
    await bench.page.keyboard.press('Shift+Tab');
    expect(await focused()).not.toBe('scrubber');
});

test('a name that looks like markup is only ever text', async () => {
    await radio('From above').click();
    // A file opens where one looks last: the text, not the panel.
    await bench.select('crew 4');
    await bench.openFile('plans/odd.spread');
    await bench.select('spread slow-baits');
    await expect.poll(() => diagram.plan(), soon).toBe('slow-baits');
    for (const name of ['From above', 'Turn', 'Strike']) {
        await radio(name).click();
        await expect
            .poll(
                () =>
                    view()
                        .locator('#table')
                        .evaluate((e) => e.textContent),
                soon,
            )
            .toContain(odd);
        expect(await view().locator('img, b, main script, section script, foreignObject').count()).toBe(0);
        if (name !== 'Turn') continue;
        // Its author gives the turn in feet. Another side is a turn as the plan has it, whichever was looked at before.
        const side = view().getByRole('combobox', { name: 'Turn' });
        await side.selectOption((await side.inputValue()) === 'port' ? 'starboard' : 'port');
        const radius = view().getByRole('spinbutton', { name: 'Radius, ft' });
        await expect.poll(() => radius.inputValue(), soon).toBe('330');
    }
    expect(bench.complaints()).toEqual([]);
});
