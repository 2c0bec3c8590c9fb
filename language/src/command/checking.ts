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
import { readPlan, type Unfit } from './reading.ts';
import { showPath } from './walk.ts';

/** Checks what was asked for, reading what it uses from the disk. */
export async function check(asked: Asked): Promise<Run> {
    const uriOf = (file: AskedFile) => URI.file(file.path);
    const root = rootOf(asked.cwd);
    const readable = asked.files.filter((file) => !file.unfit);
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
            return {
                ...source,
                findings: [unfitFinding(uri, file.unfit!)],
                plans: [],
                concerning: new Map(),
            };
        const { findings, plans, judgement } = sheet;
        return { ...source, findings, plans, concerning: judgement.plans };
    });
    return { files: checked, sources, refusals: asked.refusals };
}

/** A file that is no plan is a finding about that file, and no reason to leave the others unchecked. */
function unfitFinding(uri: string, { rule, reason, remedy }: Unfit): Finding {
    return {
        rule,
        severity: 'error',
        at: startOf(uri),
        what: `The file ${reason}.`,
        remedy,
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
            return file.unfit
                ? { kind: 'unread', reason: file.unfit.reason }
                : { kind: 'text', text: file.text };
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
        case 'unfit':
            return { kind: 'unread', reason: reading.unfit.reason };
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
