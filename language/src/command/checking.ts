import { existsSync } from 'node:fs';
import { URI } from 'langium';
import type { Finding } from '../plan/finding.ts';
import type { Unfit } from '../plan/fit.ts';
import { type Files, type FileText, type Loaded, load, loadInTurn } from '../plan/load.ts';
import type { Day, Spread } from '../plan/model.ts';
import { LINKED_OUT, packageOf } from '../plan/names/packages.ts';
import { LIBRARY_SCHEME, nameInLibrary, planEnding } from '../plan/names/uses.ts';
import type { Place } from '../plan/origin.ts';
import { startOf } from '../plan/place.ts';
import { createServices, type LaybackServices } from '../plan/services.ts';
import type { Checked, PlanOfDay, Run, Source } from '../reports/checked.ts';
import { type CheckedSheet, checkAll, checkInTurn } from '../rules/check.ts';
import type { Asked, AskedFile } from './asking.ts';
import { beThrifty, settle } from './pace.ts';
import { missingInPackage, packageVersion } from './packages.ts';
import { readPlan } from './reading.ts';
import { areLinksAllowed, folderLeft, rootsOf } from './roots.ts';
import { showPath } from './walk.ts';

/** From about this many files on, reading them takes longer than optimising for it, and their memory counts. */
const many = 20;

interface Wishes {
    /** Nobody will look at the plans: of many files, each is dropped when it is checked. */
    readonly findingsOnly?: boolean;
    /** Gives what is used instead of the disk: another version of it. */
    readonly read?: (path: string) => FileText;
    /** The one plan that somebody will look at, by its name: the others are not judged, nor turned. */
    readonly plan?: string | undefined;
}

/** Checks what was asked for, reading what it uses from the disk. */
export async function check(asked: Asked, { findingsOnly = false, read, plan }: Wishes = {}): Promise<Run> {
    const services = createServices();
    const given = toLoad(services, asked, read);
    const wanted = given[1];
    const options = { turns: true, once: true, ...(plan !== undefined && { plan }) };
    const sheets = new Map<string, Kept>();
    const beside = new Map<string, Kept>();
    if (findingsOnly && wanted.length > many) {
        settle();
        beThrifty();
        for await (const sheet of checkInTurn(loadInTurn(...given), options))
            sheets.set(sheet.uri, findingsOf(sheet));
    } else {
        const loaded = await load(...given);
        settle();
        for (const sheet of checkAll(loaded, options)) sheets.set(sheet.uri, sheet);
        // A day is made of plans, wherever they are kept.
        const others = plansElsewhere([...sheets.values()]).filter((uri) => !sheets.has(uri));
        const documents = services.shared.workspace.LangiumDocuments.all
            .filter(({ uri }) => others.includes(uri.toString()))
            .toArray();
        for (const sheet of checkAll({ ...loaded, documents: documents as never }, options))
            beside.set(sheet.uri, sheet);
    }

    const sources = new Map<string, Source>();
    for (const document of services.shared.workspace.LangiumDocuments.all) {
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
        const { findings, plans, judgement, resolved } = sheet;
        const days = resolved?.days ?? [];
        return {
            ...source,
            findings,
            plans,
            concerning: judgement.plans,
            ...(days.length > 0 && {
                days,
                plansOfDays: plansOf(days, [...sheets.values(), ...beside.values()], uri),
            }),
        };
    });
    return { files: checked, sources, refusals: asked.refusals };
}

/** What was asked for as it is read, for whoever wants no judgement of it. */
export async function loadAsked(asked: Asked): Promise<Loaded> {
    const loaded = await load(...toLoad(createServices(), asked));
    settle();
    return loaded;
}

function toLoad(
    services: LaybackServices,
    asked: Asked,
    read?: (path: string) => FileText,
): readonly [LaybackServices, readonly URI[], Files, readonly URI[]] {
    const paths = asked.files.map(({ path }) => path);
    const roots = rootsOf(paths, asked);
    const wanted = asked.files.filter((file) => !file.unfit).map(uriOf);
    return [services, wanted, filesFor(asked, roots, read), roots.map((root) => URI.file(root))];
}

function uriOf({ path }: AskedFile): URI {
    return URI.file(path);
}

type Kept = Pick<CheckedSheet, 'findings' | 'plans' | 'judgement'> & Partial<Pick<CheckedSheet, 'resolved'>>;

/** The files of plans that days name. */
function plansElsewhere(sheets: readonly Kept[]): string[] {
    const days = sheets.flatMap(({ resolved }) => resolved?.days ?? []);
    return days.flatMap(namedBy).map((plan) => plan.origin.place.uri);
}

function namedBy({ hours, conditions }: Day): Spread[] {
    return [...hours, ...conditions].map(({ plan }) => plan.value);
}

/** The plans of days that are not in the file itself, each once. */
function plansOf(days: readonly Day[], sheets: readonly Kept[], uri: string): PlanOfDay[] {
    const named = new Map(
        days.flatMap(namedBy).map((plan) => [`${plan.origin.place.uri} ${plan.name}`, plan]),
    );
    return [...named.values()]
        .filter((plan) => plan.origin.place.uri !== uri)
        .flatMap(({ name, origin }) =>
            sheets
                .filter(({ resolved }) => resolved?.uri === origin.place.uri)
                .flatMap(({ plans, judgement }) =>
                    plans
                        .filter(({ plan }) => plan.name === name)
                        .map((plan) => ({ plan, findings: judgement.plans.get(name) ?? [] })),
                ),
        );
}

/** What was found, without the plans that it was found in and without the syntax that its places point into. */
function findingsOf({ findings }: CheckedSheet): Kept {
    return {
        findings: findings.map((finding) => ({
            ...finding,
            at: plainPlace(finding.at),
            related: finding.related.map(({ at, what }) => ({ at: plainPlace(at), what })),
            fixes: finding.fixes.map((fix) => ({
                ...fix,
                edits: fix.edits.map(({ at, text }) => ({ at: plainPlace(at), text })),
            })),
        })),
        plans: [],
        judgement: { findings: [], plans: new Map() },
    };
}

function plainPlace({ uri, start, end, range }: Place): Place {
    return { uri, start, end, range };
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

/** The texts asked for as they were read; whatever they use from the disk, plans only, inside the roots. */
function filesFor(
    { files }: Asked,
    roots: readonly string[],
    read: (path: string) => FileText = (path) => readUsed(path, roots),
): Files {
    const asked = new Map(files.map((file) => [URI.file(file.path).toString(), file]));
    return (uri) => {
        const file = asked.get(uri.toString());
        if (file) {
            return file.unfit
                ? { kind: 'unread', reason: file.unfit.reason }
                : { kind: 'text', text: file.text };
        }
        if (uri.scheme !== 'file') return { kind: 'missing' };
        // A package is as it is installed now, whichever version of the plans is looked at.
        return packageOf(uri) ? readUsed(uri.fsPath, roots) : read(uri.fsPath);
    };
}

function readUsed(path: string, roots: readonly string[]): FileText {
    if (!path.endsWith(planEnding)) return { kind: 'unread', reason: 'does not end in .spread' };
    // Most that are not read are not there, which costs least to see.
    const own = packageOf(URI.file(path));
    if (!existsSync(path)) {
        const reason = own && missingInPackage(own);
        return reason === undefined ? { kind: 'missing' } : { kind: 'unread', reason };
    }
    const left = own && areLinksAllowed() ? undefined : folderLeft(path, roots);
    if (left !== undefined && own) return { kind: 'unread', reason: `${LINKED_OUT} \`${left}\`` };
    if (left !== undefined)
        return { kind: 'unread', reason: `is a link that leads out of the folder \`${left}\`` };
    const reading = readPlan(path);
    switch (reading.kind) {
        case 'text':
            return { kind: 'text', text: reading.text, ...(own && packageVersion(own)) };
        case 'unfit':
            return { kind: 'unread', reason: reading.unfit.reason };
        case 'refused':
            return reading.gone ? { kind: 'missing' } : { kind: 'unread', reason: reading.reason };
    }
}

function pathShown(uri: URI, cwd: string): string {
    if (uri.scheme === 'file') return showPath(uri.fsPath, cwd);
    if (uri.scheme === LIBRARY_SCHEME) return `${LIBRARY_SCHEME}:${nameInLibrary(uri)}`;
    return uri.toString();
}
