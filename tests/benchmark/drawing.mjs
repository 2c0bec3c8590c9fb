// How long a seven-line plan takes from its resolved form to a picture: analysis, scene and SVG. Told in time of the
// processor, which other work on the machine leaves alone; no test decides anything by it.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const { outputFiles } = await build({
    absWorkingDir: root,
    stdin: {
        resolveDir: root,
        loader: 'ts',
        contents: `
            export { analyse } from './language/src/plan/analyse.ts';
            export { turnInTime } from './language/src/plan/analyse/turn-in-time.ts';
            export { withTurns } from './language/src/plan/analyse/turns.ts';
            export { sceneFromAbove } from './language/src/drawing/scene.ts';
            export { sceneFromSide } from './language/src/drawing/scene-side.ts';
            export { sceneOfChanges } from './language/src/drawing/scene-compare.ts';
            export { sceneOfStrike } from './language/src/drawing/scene-strike.ts';
            export { sceneOfTurn, turnToLookAt } from './language/src/drawing/scene-turn.ts';
            export { svgOf, svgOfChanges } from './language/src/drawing/svg.ts';
            export { svgOfSide } from './language/src/drawing/svg-side.ts';
            export { svgOfStrike } from './language/src/drawing/svg-strike.ts';
            export { svgOfTurn } from './language/src/drawing/svg-turn.ts';
            export { loadText } from './language/src/plan/load.ts';
            export { Gathered } from './language/src/plan/resolve/gather.ts';
            export { resolveDocument } from './language/src/plan/resolve.ts';
            export { createServices } from './language/src/plan/services.ts';`,
    },
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    loader: { '.spread': 'text', '.md': 'text' },
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire('/');" },
    logLevel: 'error',
});
const layback = await import(
    `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`
);

const {
    documents: [document],
} = await layback.loadText(
    layback.createServices(),
    readFileSync(join(root, 'tests/benchmark/seven-lines.spread'), 'utf8'),
);
const [plan] = layback.resolveDocument(document, new layback.Gathered(), () => true).spreads;
const analysed = layback.withTurns(layback.analyse(plan));
const chosen = layback.turnToLookAt(analysed);

console.log(`${plan.lines.length} lines; ms of processor time, median of 60 after 40 to warm up`);
const rows = {
    'analysis to SVG, from above': () => layback.svgOf(layback.sceneFromAbove(layback.analyse(plan))),
    'analysis to SVG, from the side': () => layback.svgOfSide(layback.sceneFromSide(layback.analyse(plan))),
    'turn asked to SVG': () =>
        layback.svgOfTurn(
            layback.sceneOfTurn(analysed, chosen, layback.turnInTime(analysed, chosen.side, chosen.radius)),
        ),
    'strike to SVG': () => layback.svgOfStrike(layback.sceneOfStrike(analysed)),
    'comparison to SVG': () => layback.svgOfChanges(layback.sceneOfChanges(analysed, analysed)),
};
for (const [name, draw] of Object.entries(rows)) {
    const times = [];
    for (let round = 0; round < 100; round++) {
        const began = process.cpuUsage();
        draw();
        const { user, system } = process.cpuUsage(began);
        times.push((user + system) / 1000);
    }
    const median = times.slice(40).sort((a, b) => a - b)[30];
    console.log(`  ${name.padEnd(32)} ${median.toFixed(1).padStart(6)}`);
}
