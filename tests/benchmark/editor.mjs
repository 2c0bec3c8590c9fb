// Prints how long an editor waits, in a folder of 300 files, beside the toolkit's own services over the same grammar
// and checks. Both servers take turns, keystroke by keystroke, so that noise hits both, and each waits until the other
// has said all that it had to say. On a busy machine the processor's time of a server's own thread tells more than the
// clock; it is told where the system counts it. No test decides by this.
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import {
    createMessageConnection,
    StreamMessageReader,
    StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { bundled } from './bundled.mjs';
import { writeCorpus } from './corpus.mjs';

const root = join(import.meta.dirname, '../..');
const published = 'textDocument/publishDiagnostics';
const keystrokes = Number(process.argv[2] ?? 150);
const scratch = mkdtempSync(join(tmpdir(), 'layback-benchmark-'));
try {
    sizes();
    activation();
    const ours = join(root, 'dist/server-node.cjs');
    const plain = join(scratch, 'default-server.cjs');
    await bundled('default-server.ts', plain);
    console.log(`\nNode ${process.version}; ${keystrokes} keystrokes each; ms`);
    for (const broken of [false, true])
        await keystrokesIn(broken, [
            ['ours', ours],
            ['default services', plain],
        ]);
    await inExamples(ours);
} finally {
    rmSync(scratch, { recursive: true, force: true });
}

function sizes() {
    for (const name of ['server-node.cjs', 'server-browser.js']) {
        const bytes = readFileSync(join(root, 'dist', name));
        const zipped = gzipSync(bytes, { level: 9 }).length;
        console.log(`${name.padEnd(20)} ${kilobytes(bytes.length)}, ${kilobytes(zipped)} gzipped`);
    }
}

/** The extension, read and woken up in an editor that is a stand-in, each time in a process of its own. */
function activation() {
    const script = join(import.meta.dirname, 'activation.mjs');
    const runs = Array.from({ length: 9 }, () =>
        JSON.parse(execFileSync(process.execPath, [script], { encoding: 'utf8' })),
    );
    const median = (pick) =>
        runs
            .map(pick)
            .sort((a, b) => a - b)[4]
            .toFixed(1);
    console.log(
        `extension            read in ${median(({ read }) => read)} ms, awake ${median(({ activate }) => activate)} ms later`,
    );
}

/** From a keystroke in a plan of 150 lines to its findings; completion and hover at the same place. */
async function keystrokesIn(broken, servers) {
    const folder = join(scratch, broken ? 'broken' : 'clean');
    writeCorpus(folder, 297);
    writeFileSync(join(folder, 'plans/edited.spread'), editedPlan());
    if (broken) {
        readdirSync(join(folder, 'plans')).forEach((name, at) => {
            const path = join(folder, 'plans', name);
            if (at % 3 === 0 && name !== 'edited.spread')
                writeFileSync(path, readFileSync(path, 'utf8').replaceAll('lure lure-', 'lure no-'));
        });
    }
    const running = [];
    for (const [name, path] of servers) running.push(await start(name, path, folder));
    const typing = strokes(editedPlan());
    for (let at = 0; at < keystrokes; at++) {
        const stroke = typing[at % typing.length];
        for (const server of at % 2 === 0 ? running : [...running].reverse())
            await server.type(stroke, at >= 10).then(server.silent);
    }
    console.log(`\n300 files${broken ? ', a third of them with broken names' : ''}`);
    for (const server of running) await report(server);
}

async function report(server) {
    const { findings, completion, hover, processor } = server.times;
    const told = [`findings p50 ${ms(findings, 0.5)} p95 ${ms(findings, 0.95)}`];
    if (processor.length > 0) told.push(`processor p50 ${ms(processor, 0.5)} p95 ${ms(processor, 0.95)}`);
    if (completion.length > 0)
        told.push(`completion p95 ${ms(completion, 0.95)}`, `hover p95 ${ms(hover, 0.95)}`);
    console.log(`  ${server.name.padEnd(18)} ready after ${server.ready.toFixed(0)}; ${told.join('; ')}`);
    const memory = await server.stop();
    console.log(`  ${''.padEnd(18)} heap ${memory.heap} MB, resident at most ${memory.resident} MB`);
}

/** In the example team, whose plan reads more than the one above: a number typed and taken back. */
async function inExamples(ours) {
    const folder = join(scratch, 'examples');
    cpSync(join(root, 'examples'), folder, { recursive: true });
    const plan = 'plans/blue-marlin.spread';
    const server = await start('ours', ours, folder, plan);
    const [found] = /\bsea \d[\d.]*/.exec(readFileSync(join(folder, plan), 'utf8'));
    const at = readFileSync(join(folder, plan), 'utf8').indexOf(found) + found.length;
    for (let done = 0; done < keystrokes; done++) {
        const stroke = done % 2 === 0 ? { at, remove: 0, put: '1' } : { at, remove: 1, put: '' };
        await server.type(stroke, done >= 10).then(server.silent);
    }
    console.log(`\nthe example team, ${plan}`);
    await report(server);
}

async function start(name, path, folder, plan = 'plans/edited.spread') {
    const tell =
        'data:text/javascript,process.on("exit",()=>{globalThis.gc();process.stderr.write("MEMORY "+process.memoryUsage().heapUsed+" "+process.resourceUsage().maxRSS)})';
    const child = spawn(process.execPath, ['--expose-gc', '--import', tell, path, '--stdio'], {
        stdio: ['pipe', 'pipe', 'pipe'],
    });
    let errors = '';
    child.on('close', (code) => code !== 0 && console.error(`${name} ended with ${code}:\n${errors}`));
    child.stderr.on('data', (data) => {
        errors += data;
    });
    const connection = createMessageConnection(
        new StreamMessageReader(child.stdout),
        new StreamMessageWriter(child.stdin),
    );
    const file = join(folder, plan);
    const uri = pathToFileURL(file).toString();
    const isOurs = name === 'ours';
    let heard = () => undefined;
    let lastHeard = 0;
    connection.onNotification((method, told) => {
        lastHeard = performance.now();
        if (told.uri !== uri) return;
        // Ours also says so when there is nothing new to publish.
        const isFirst = isOurs
            ? method === 'layback/checked' && told.phase === 'first'
            : method === published;
        if (isFirst) heard();
    });
    connection.onRequest(() => null);
    connection.listen();

    const began = performance.now();
    const text = { now: readFileSync(file, 'utf8'), version: 1 };
    const next = () => new Promise((resolve) => (heard = resolve));
    await connection.sendRequest('initialize', {
        processId: process.pid,
        rootUri: null,
        capabilities: {},
        workspaceFolders: [{ uri: pathToFileURL(folder).toString(), name: 'team' }],
    });
    const first = next();
    await connection.sendNotification('initialized', {});
    await first;
    const textDocument = { uri, languageId: 'layback', version: 1, text: text.now };
    await connection.sendNotification('textDocument/didOpen', { textDocument });
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const times = { findings: [], completion: [], hover: [], processor: [] };
    return {
        name,
        times,
        ready: performance.now() - began - 1500,
        /** Once nothing more is heard. */
        async silent() {
            do await new Promise((resolve) => setTimeout(resolve, 25));
            while (performance.now() - lastHeard < 25);
        },
        async type({ at, remove, put }, counts) {
            const start = positionAt(text.now, at);
            const range = { start, end: positionAt(text.now, at + remove) };
            text.now = text.now.slice(0, at) + put + text.now.slice(at + remove);
            text.version++;
            const told = next();
            const spent = processorTime(child.pid);
            const before = performance.now();
            void connection.sendNotification('textDocument/didChange', {
                textDocument: { uri, version: text.version },
                contentChanges: [{ range, text: put }],
            });
            await told;
            if (counts) times.findings.push(performance.now() - before);
            if (counts && spent !== undefined) times.processor.push(processorTime(child.pid) - spent);
            if (!isOurs) return;
            const asked = { textDocument: { uri }, position: positionAt(text.now, at + put.length) };
            for (const [method, into] of [
                ['completion', times.completion],
                ['hover', times.hover],
            ]) {
                const from = performance.now();
                await connection.sendRequest(`textDocument/${method}`, asked);
                if (counts) into.push(performance.now() - from);
            }
        },
        async stop() {
            await connection.sendRequest('shutdown');
            await connection.sendNotification('exit');
            await new Promise((resolve) => child.on('close', resolve));
            connection.dispose();
            const [, heap, resident] = /MEMORY (\d+) (\d+)/.exec(errors) ?? [];
            return { heap: Math.round(heap / 2 ** 20), resident: Math.round(resident / 1024) };
        },
    };
}

/** What a process's first thread has had of the processor, ms; undefined where the system does not say. */
function processorTime(pid) {
    try {
        return Number(readFileSync(`/proc/${pid}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
    } catch {
        return undefined;
    }
}

/** Four plans on one boat, 150 lines. */
function editedPlan() {
    const places = [
        'port short corner',
        'starboard long corner',
        'starboard short rigger',
        'port long rigger',
    ];
    const spread = (n) => `
/** Plan ${n}: settled weather, two on deck besides the helm. */
spread edited-${n} "Edited ${n}"${n > 1 ? ' like edited-1' : ''} {
    boat heron
    date 2026-03-0${n}
    speed 8 kn
    sea 0.2 m
    crew 3
    turn within 90 m
${places
    .map(
        (place, at) => `
    ${place} {
        outfit fifty-${at + 1}
        lure lure-${1 + 3 * at}
        back wave ${2 + at}
    }`,
    )
    .join('\n')}
}
`;
    return `use "../boat.spread"\nuse "../tackle.spread"\n${[1, 2, 3, 4].map(spread).join('')}`;
}

/** A word, a number and a line, typed and taken back letter by letter, at several places. */
function strokes(plan) {
    const all = [];
    for (const [mark, put] of [
        ['speed 8', '.5'],
        ['lure lure-4', 'x'],
        ['    crew 3', 'note "slow"\n    '],
        ['back wave 3', '1'],
    ]) {
        const at = plan.indexOf(mark) + (mark.startsWith(' ') ? 4 : mark.length);
        for (let n = 0; n < put.length; n++) all.push({ at: at + n, remove: 0, put: put[n] });
        for (let n = put.length - 1; n >= 0; n--) all.push({ at: at + n, remove: 1, put: '' });
    }
    return all;
}

function positionAt(text, offset) {
    const before = text.slice(0, offset).split('\n');
    return { line: before.length - 1, character: before.at(-1).length };
}

function ms(times, share) {
    const sorted = [...times].sort((a, b) => a - b);
    return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))].toFixed(1);
}

function kilobytes(bytes) {
    return `${Math.ceil(bytes / 1024)} kB`;
}
