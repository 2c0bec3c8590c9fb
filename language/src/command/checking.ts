import { existsSync, realpathSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { URI } from 'langium';
import type { Finding } from '../plan/finding.ts';
import { type Files, type FileText, load } from '../plan/load.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import { startOf } from '../plan/place.ts';
import { createServices } from '../plan/services.ts';
import type { Checked, Run, Source } from '../reports/checked.ts';
import { checkAll } from '../rules/check.ts';
import type { Asked, AskedFile } from './asking.ts';
import { mostBytes, readPlan } from './reading.ts';
import { showPath } from './walk.ts';

const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;

/** Checks what was asked for, reading what it uses from the disk. */
export async function check(asked: Asked): Promise<Run> {
    const uriOf = (file: AskedFile) => URI.file(file.path);
    const root = rootOf(asked.cwd);
    const readable = asked.files.filter((file) => file.tooLarge === undefined);
    const files = filesFor(asked, root);
    const loaded = await load(
        createServices(),
        readable.map(uriOf),
        files,
        root === undefined ? [] : [URI.file(root)],
    );
    const sheets = new Map(checkAll(loaded).map((sheet) => [sheet.uri, sheet]));

    const sources = new Map<string, Source>();
    for (const document of loaded.services.shared.workspace.LangiumDocuments.all) {
        const uri = document.uri.toString();
        sources.set(uri, {
            uri,
            path: pathShown(document.uri, asked.cwd),
            text: document.textDocument.getText(),
        });
    }
    const checked = asked.files.map((file): Checked => {
        const uri = uriOf(file).toString();
        const source: Source = { uri, path: file.shown, text: file.text };
        sources.set(uri, source);
        const sheet = sheets.get(uri);
        if (!sheet)
            return { ...source, findings: [tooLarge(uri, file.tooLarge!)], plans: [], concerning: new Map() };
        const { findings, plans, judgement } = sheet;
        return { ...source, findings, plans, concerning: judgement.plans };
    });
    return { files: checked, sources, refusals: asked.refusals };
}

/** A file larger than any plan is a finding about that file, and no reason to leave the others unchecked. */
function tooLarge(uri: string, bytes: number): Finding {
    return {
        rule: 'file-size',
        severity: 'error',
        at: startOf(uri),
        what: `The file has ${megabytes(bytes)}; no plan over ${megabytes(mostBytes)} is read.`,
        why: 'Nobody reads such a plan on deck, and an editor would stall on it.',
        remedy: 'Split it, or leave it out if it is no plan.',
        related: [],
        fixes: [],
        positions: [],
    };
}

/** The texts asked for as they were read; whatever they use from the disk, plans only, inside the root. */
function filesFor({ files, cwd }: Asked, root: string | undefined): Files {
    const asked = new Map(files.map((file) => [URI.file(file.path).toString(), file]));
    return (uri) => {
        const file = asked.get(uri.toString());
        if (file) {
            if (file.tooLarge === undefined) return { kind: 'text', text: file.text };
            return { kind: 'unread', reason: `has ${megabytes(file.tooLarge)}: no plan is that long` };
        }
        return uri.scheme === 'file' ? readUsed(uri.fsPath, root, cwd) : { kind: 'missing' };
    };
}

function readUsed(path: string, root: string | undefined, cwd: string): FileText {
    if (!path.endsWith('.spread')) return { kind: 'unread', reason: 'does not end in .spread' };
    if (root !== undefined && leadsOut(path, root)) {
        return { kind: 'unread', reason: `is a link that leads out of ${showPath(root, cwd)}` };
    }
    const reading = readPlan(path);
    switch (reading.kind) {
        case 'text':
            return { kind: 'text', text: reading.text };
        case 'too large':
            return { kind: 'unread', reason: `has ${megabytes(reading.bytes)}: no plan is that long` };
        case 'refused':
            return reading.gone ? { kind: 'missing' } : { kind: 'unread', reason: reading.reason };
    }
}

function leadsOut(path: string, root: string): boolean {
    try {
        const inside = relative(realpathSync.native(root), realpathSync.native(path));
        return inside === '..' || inside.startsWith(`..${sep}`);
    } catch {
        return false;
    }
}

/**
 * The folder that no `use` may leave: the team's repository. Outside of one there is no telling where a team's
 * files end, and any relative path goes.
 */
function rootOf(cwd: string): string | undefined {
    for (let folder = cwd; ; folder = dirname(folder)) {
        if (existsSync(join(folder, '.git'))) return folder;
        if (dirname(folder) === folder) return undefined;
    }
}

function pathShown(uri: URI, cwd: string): string {
    if (uri.scheme === 'file') return showPath(uri.fsPath, cwd);
    if (uri.scheme === LIBRARY_SCHEME)
        return `${LIBRARY_SCHEME}:${uri.path.replace(/^\//, '').replace(/\.spread$/, '')}`;
    return uri.toString();
}
