import path from 'node:path';
import { openWorkbench } from '../workbench/driver.ts';
import { project } from '../workbench/project.ts';

const bench = await openWorkbench({ workspace: path.join(project, 'examples') });
try {
    await bench.openFile('plans/blue-marlin.spread');
    await bench.select('port long rigger {');
    await bench.command('Layback: Open the Diagram');
    const lure = bench.webview().locator('g[data-id="lure:port long rigger"]');
    await lure.waitFor();
    await bench.webview().locator('#stage').evaluate(watchFrames);
    const box = (await lure.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const { mouse } = bench.page;
    await mouse.move(x, y);
    await mouse.down();
    for (const sweep of [60, -60, 80, -40, 0]) await mouse.move(x, y + sweep, { steps: 60 });
    const busy = await bench
        .webview()
        .locator('#stage')
        .evaluate(() => (window as unknown as { busy: number[] }).busy);
    await bench.page.keyboard.press('Escape');
    await mouse.up();
    const sorted = busy.sort((a, b) => a - b);
    const at = (share: number) =>
        sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!.toFixed(1);
    console.log(
        `drag, ${sorted.length} frames: busy p50 ${at(0.5)} ms, p95 ${at(0.95)} ms, most ${at(1)} ms`,
    );
} finally {
    await bench.close();
}

/** Stands alone in the page: what its listeners take since the last frame, and style, layout and paint of the frame. */
function watchFrames(): void {
    const told = window as unknown as { busy: number[] };
    told.busy = [];
    let handled = 0;
    let began = 0;
    let isDue = false;
    const { port1, port2 } = new MessageChannel();
    let frame = 0;
    port1.onmessage = () => {
        told.busy.push(handled + performance.now() - frame);
        handled = 0;
        isDue = false;
    };
    for (const kind of ['pointermove', 'message']) {
        window.addEventListener(kind, () => (began = performance.now()), { capture: true });
        // What was registered before runs first: this is the last to hear of it.
        window.addEventListener(kind, () => {
            handled += performance.now() - began;
            if (isDue) return;
            isDue = true;
            requestAnimationFrame(() => {
                frame = performance.now();
                port2.postMessage(0);
            });
        });
    }
}
