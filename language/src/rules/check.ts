import type { LangiumDocument } from 'langium';
import type { Sheet } from '../../grammar/generated/ast.ts';
import { library } from '../library/library.ts';
import { withTurns } from '../plan/analyse/turns.ts';
import { analyse } from '../plan/analyse.ts';
import { checkLanguage } from '../plan/checks/check.ts';
import { enough } from '../plan/checks/enough.ts';
import { checkPlans } from '../plan/checks/plans.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { Loaded } from '../plan/load.ts';
import type { Resolved } from '../plan/model.ts';
import type { ReachScope } from '../plan/names/scope.ts';
import { placeOf, placeOfProperty } from '../plan/place.ts';
import { Gathered } from '../plan/resolve/gather.ts';
import { definitionsIn, resolveDocument } from '../plan/resolve.ts';
import { type Judgement, judge } from './judge.ts';
import { Memory } from './memory.ts';
import { firstRules, rules } from './registry.ts';
import type { JudgedFile } from './rule.ts';
import { checkRuleWords } from './rule-words.ts';

/** A file as a check leaves it: read, resolved, computed, judged. */
export interface CheckedSheet {
    readonly uri: string;
    readonly document: LangiumDocument<Sheet>;
    readonly resolved: Resolved;
    readonly plans: readonly AnalysedPlan[];
    readonly judgement: Judgement;
    /** What rules said of this reading, for whoever lets more of them speak. */
    readonly memory: Memory;
    /** What is wrong with the text, then with the plans, in the order of the text. */
    readonly findings: readonly Finding[];
}

export interface CheckOptions {
    /**
     * Also computes the turns of plans that say how tightly they turn, and judges them. Takes tens of milliseconds a
     * plan: an editor leaves it out, and judges turns when nobody types.
     */
    readonly turns?: boolean;
    /** Nobody will ask again: what was read of a file is not kept for the next time. */
    readonly once?: boolean;
    /** Of files that hold this plan, the others are read and computed, but neither turned nor judged. */
    readonly plan?: string;
}

/** Checks every file that was asked for. */
export function checkAll(loaded: Loaded, options: CheckOptions = {}): CheckedSheet[] {
    return [...checkEach(loaded, options)];
}

/** The same one by one, for whoever does not need all of a thousand files at once. */
export function* checkEach(loaded: Loaded, options: CheckOptions = {}): Generator<CheckedSheet> {
    const gathered = new Gathered(loaded.services.shared.names.Reach.versions);
    const used = usedAnywhere(loaded);
    for (const document of loaded.documents) yield checkSheet(document, loaded, gathered, used, options);
}

/** The same for files that are loaded in turn: nothing is kept of one when the next one comes. */
export async function* checkInTurn(
    turns: AsyncIterable<Loaded>,
    options: CheckOptions = {},
): AsyncGenerator<CheckedSheet> {
    let gathered: Gathered | undefined;
    const used = new Set<unknown>();
    for await (const loaded of turns) {
        gathered ??= new Gathered(loaded.services.shared.names.Reach.versions);
        for (const document of loaded.documents) addReferred(document, used);
        for (const document of loaded.documents) {
            yield checkSheet(document, loaded, gathered, used, options);
            gathered.leaveOut(document.parseResult.value.definitions);
        }
    }
}

/** @param used  definitions that any file refers to */
export function checkSheet(
    document: LangiumDocument<Sheet>,
    { services, unread, others }: Pick<Loaded, 'services' | 'unread' | 'others'>,
    gathered: Gathered,
    used: ReadonlySet<unknown>,
    { turns = false, once = false, plan }: CheckOptions = {},
): CheckedSheet {
    const scope = services.references.ScopeProvider as ReachScope;
    const { LangiumDocuments: documents } = services.shared.workspace;
    const reach = services.shared.names.Reach;
    const context = { documents, reach, unread, others, library: library.keys() };
    const told = [...checkLanguage(document, scope, context, gathered), ...ruleWordsIn(document)];
    const trees = reach.from(document).map(({ parseResult }) => parseResult.value);
    const { resolved, plans: first, memory } = readOnce(document, trees, gathered, used, once);
    const whole = reach.from(document).every(isWhole);
    const language = enough([...told, ...checkPlans(document, resolved, gathered, whole)]);
    const isAsked = (one: AnalysedPlan) => plan === undefined || one.plan.name === plan;
    const none = !first.some(isAsked);
    const plans = turns ? first.map((one) => (none || isAsked(one) ? turned(one) : one)) : first;
    const judgement = judge(
        { ...resolved, ...versionOf(document) },
        none ? plans : plans.filter(isAsked),
        turns ? rules : firstRules,
        memory,
    );
    const findings = [...language, ...whatHolds(judgement.findings, language)].sort(
        (a, b) => a.at.start - b.at.start || a.at.end - b.at.end,
    );
    return { uri: document.uri.toString(), document, resolved, plans, judgement, memory, findings };
}

function isWhole({ parseResult }: LangiumDocument): boolean {
    return parseResult.parserErrors.length === 0 && parseResult.lexerErrors.length === 0;
}

function turned(plan: AnalysedPlan): AnalysedPlan {
    return plan.plan.turn ? withTurns(plan) : plan;
}

/** A file as it was last read, and the trees that it was read from. */
interface Read {
    readonly trees: readonly unknown[];
    readonly resolved: Resolved;
    readonly plans: readonly AnalysedPlan[];
    readonly memory: Memory;
}

const lastRead = new WeakMap<LangiumDocument, Read>();

/** Reads a file again only when its text or one in its reach is another: who uses it changes no plan in it. */
function readOnce(
    document: LangiumDocument<Sheet>,
    trees: readonly unknown[],
    gathered: Gathered,
    used: ReadonlySet<unknown>,
    once: boolean,
): Read {
    const isUsed = (definition: unknown) => used.has(definition);
    const before = lastRead.get(document);
    const same =
        before?.trees.length === trees.length && trees.every((tree, at) => tree === before.trees[at]);
    const now = same
        ? usedBy(before, document, isUsed)
        : readAnew(document, trees, gathered, isUsed, new Memory(!once));
    if (!once) lastRead.set(document, now);
    return now;
}

function usedBy(
    read: Read,
    document: LangiumDocument<Sheet>,
    isUsed: (definition: unknown) => boolean,
): Read {
    const definitions = definitionsIn(document, isUsed);
    return definitions.every(({ used: is }, at) => is === read.resolved.definitions[at]?.used)
        ? read
        : { ...read, resolved: { ...read.resolved, definitions } };
}

function readAnew(
    document: LangiumDocument<Sheet>,
    trees: readonly unknown[],
    gathered: Gathered,
    isUsed: (definition: unknown) => boolean,
    memory: Memory,
): Read {
    const resolved = resolveDocument(document, gathered, isUsed);
    return { trees, resolved, plans: resolved.spreads.map(analyse), memory };
}

/** Rules that conclude from what is not there. */
const FROM_ABSENCE: ReadonlySet<string> = new Set(['incomplete', 'unused', 'waiver-idle']);

/** In a text that could not be read to the end nothing is known to be missing. */
function whatHolds(judged: readonly Finding[], language: readonly Finding[]): readonly Finding[] {
    if (!language.some(({ severity }) => severity === 'error')) return judged;
    return judged.filter(({ rule }) => !FROM_ABSENCE.has(rule));
}

function ruleWordsIn(document: LangiumDocument<Sheet>): Finding[] {
    return document.parseResult.value.definitions.flatMap((definition) =>
        (definition.entries ?? []).flatMap((entry) =>
            entry.$type === 'RuleSetting' || entry.$type === 'Waive' ? checkRuleWords(entry) : [],
        ),
    );
}

function versionOf(document: LangiumDocument<Sheet>): Pick<JudgedFile, 'version'> {
    const { version } = document.parseResult.value;
    if (!version || !Number.isFinite(version.number)) return {};
    const place = placeOfProperty(version, 'number');
    // As it is written: 1.10 is newer than 1.9, and no number would say so.
    const value = document.textDocument.getText().slice(place.start, place.end);
    return {
        version: { value, origin: { place, property: placeOf(version), voice: 'spread' } },
    };
}

/** The definitions that some file refers to, whichever files are loaded. */
export function usedAnywhere({ services }: Pick<Loaded, 'services'>): ReadonlySet<unknown> {
    const used = new Set<unknown>();
    for (const document of services.shared.workspace.LangiumDocuments.all) addReferred(document, used);
    return used;
}

function addReferred({ references }: LangiumDocument, used: Set<unknown>): void {
    for (const reference of references) if ('ref' in reference && reference.ref) used.add(reference.ref);
}
