import { type Change, compare } from '../plan/compare/compare.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import { capital } from '../plan/wording.ts';
import type { SceneElement } from './elements.ts';
import type { Note } from './notes.ts';
import { type Scene, sceneFromAbove, sceneWords } from './scene.ts';

/**
 * Two versions of a plan from above: the later one as any plan is drawn, over the earlier one where that lies
 * elsewhere, and every change in words beside the position that it concerns.
 */
export interface CompareScene extends Omit<Scene, 'view'> {
    readonly view: 'compare';
    /** The earlier plan, as it is called. */
    readonly before: { readonly plan: string; readonly title: string };
    /** Lines and lures of the earlier plan that are not where they were, or are gone. */
    readonly ghosts: readonly SceneElement[];
    /** Every change as a sentence, in the order of `compare`. */
    readonly told: readonly ToldChange[];
}

export interface ToldChange {
    readonly change: Change;
    readonly words: string;
    /** The positions that it concerns; none where it concerns the plan, or what it uses. */
    readonly positions: readonly string[];
}

/** @param findings  of the later plan */
export function sceneOfChanges(
    before: AnalysedPlan,
    after: AnalysedPlan,
    findings: readonly Finding[] = [],
): CompareScene {
    const told = compare(before.plan, after.plan).map(tell);
    const [old, now] = [sceneFromAbove(before), sceneFromAbove(after, findings)];
    const ghosts = old.elements.filter(isGear).filter((element) => !isDrawnAlike(element, now.elements));
    const gone = old.notes.filter(({ position }) => !now.notes.some((note) => note.position === position));
    const was = new Map(old.notes.map((note) => [note.position, note]));
    const notes = [
        ...now.notes.map(
            (note): Note => ({
                ...note,
                changes: [
                    ...changesAt(note.position, told),
                    ...ranElsewhere(was.get(note.position), note, told),
                ],
            }),
        ),
        ...gone.map((note): Note => {
            const towPoint = note.point ?? note.towPoint;
            return {
                ...note,
                id: `was:${note.id}`,
                marks: [],
                silences: [],
                ...(towPoint && { towPoint }),
                changes: changesAt(note.position, told),
            };
        }),
    ];
    const general = told.filter(({ positions }) => positions.length === 0).map(({ words }) => words);
    return {
        ...now,
        view: 'compare',
        before: { plan: before.plan.name, title: before.plan.title },
        title: { ...now.title, title: `${now.title.title}, against ${old.title.title}` },
        extent: {
            ahead: Math.max(old.extent.ahead, now.extent.ahead),
            astern: Math.max(old.extent.astern, now.extent.astern),
            half: Math.max(old.extent.half, now.extent.half),
        },
        rulers: old.extent.astern > now.extent.astern ? old.rulers : now.rulers,
        ghosts: ghosts.map((ghost) => ({ ...ghost, id: `was:${ghost.id}`, name: `Before: ${ghost.name}` })),
        notes,
        told,
        remarks: [
            told.length === 0
                ? `Nothing has changed since ${before.plan.title}.`
                : `In broken lines and rings: ${before.plan.title}, where it was otherwise.`,
            ...(general.length > 0 ? [`Changed in general: ${general.join(' ')}`] : []),
            ...now.remarks,
        ],
    };
}

/** The comparison as sentences. */
export function compareWords(scene: CompareScene): string[] {
    const [, ...words] = sceneWords({ ...scene, view: 'above' });
    return [`${scene.title.title}.`, ...scene.told.map((each) => each.words), ...words];
}

/** The same words may lead elsewhere: `wave 3` at another speed. */
function ranElsewhere(was: Note | undefined, is: Note, told: readonly ToldChange[]): string[] {
    if (was?.astern === undefined || is.astern === undefined || Math.abs(was.astern - is.astern) < APART)
        return [];
    const isTold = told.some(
        ({ change }) =>
            change.kind === 'line' && change.position === is.position && change.path[0] === 'back',
    );
    return isTold ? [] : [`runs at ${is.distance}, not ${was.distance}`];
}

const gear = new Set<SceneElement['role']>(['line', 'lure', 'standby']);

function isGear({ role }: SceneElement): boolean {
    return gear.has(role);
}

/** Nearer than this two marks cannot be told apart on a sheet, m. */
const APART = 0.2;

function isDrawnAlike(ghost: SceneElement, elements: readonly SceneElement[]): boolean {
    const now = elements.find(({ id }) => id === ghost.id);
    if (!now || now.role !== ghost.role) return false;
    const [was, is] = [endOf(ghost), endOf(now)];
    const moved = was && is && Math.hypot(was[0] - is[0], was[1] - is[1]) > APART;
    return (
        !moved &&
        (now.role !== 'lure' ||
            ghost.role !== 'lure' ||
            (now.shape === ghost.shape && now.length === ghost.length))
    );
}

function endOf(element: SceneElement): readonly [number, number] | undefined {
    if (element.role === 'lure' || element.role === 'standby') return element.point;
    return element.role === 'line' ? (element.water.at(-1) ?? element.air.at(-1)) : undefined;
}

/** A change as the crew would say it. */
export function tell(change: Change): ToldChange {
    switch (change.kind) {
        case 'plan':
            return {
                change,
                positions: [],
                words: `${capital(pathWords(change.path))}: ${between(change)}.`,
            };
        case 'definition':
            return {
                change,
                positions: [],
                words: `${capital(change.of)} ${change.name}, ${pathWords(change.path)}: ${between(change)}.`,
            };
        case 'renamed':
            return {
                change,
                positions: [],
                words: `${capital(change.of)} ${change.before} is ${change.after} now, the same under another name.`,
            };
        case 'line':
            return {
                change,
                positions: [change.position],
                words: `${capital(change.position)} ${lineWords(change)}.`,
            };
        case 'position':
            return {
                change,
                positions: [change.position],
                words:
                    change.after === undefined
                        ? `${capital(change.position)} is gone: ${change.before}.`
                        : `${capital(change.position)} is new: ${change.after}.`,
            };
        case 'moved':
            return {
                change,
                positions: [change.before, change.after],
                words: `${change.held} moved from the ${change.before} to the ${change.after}${
                    change.differences.length === 0 ? '' : `; ${change.differences.map(lineWords).join('; ')}`
                }.`,
            };
        case 'swap':
            return {
                change,
                positions: change.positions,
                words: `${capital(change.positions[0])} and ${change.positions[1]} swapped ${swapWords[change.what]}.`,
            };
    }
}

const swapWords = { gear: 'lures', outfit: 'outfits', back: 'distances' } as const;

/** What stands at the position itself: no need to name it there. */
function changesAt(position: string, told: readonly ToldChange[]): string[] {
    return told.flatMap(({ change }): string[] => {
        switch (change.kind) {
            case 'line':
                return change.position === position ? [lineWords(change)] : [];
            case 'position':
                if (change.position !== position) return [];
                return [change.after === undefined ? 'gone' : 'new'];
            case 'moved':
                if (change.before === position) return [`moved to ${change.after}`];
                return change.after === position
                    ? [`from ${change.before}`, ...change.differences.map(lineWords)]
                    : [];
            case 'swap': {
                const at = change.positions.indexOf(position);
                if (at < 0) return [];
                return [`swapped ${swapWords[change.what]} with ${change.positions[1 - at]}`];
            }
            default:
                return [];
        }
    });
}

function lineWords({
    path,
    before,
    after,
}: {
    readonly path: readonly string[];
    readonly before?: string;
    readonly after?: string;
}): string {
    const isMove = path.length === 1 && path[0] === 'back' && before !== undefined && after !== undefined;
    return isMove ? `moved: ${before} → ${after}` : `${pathWords(path)}: ${between({ before, after })}`;
}

function pathWords(path: readonly string[]): string {
    return path.join(' ').replace(/^drag (set|hooked|full)$/, '$1 drag');
}

function between({
    before,
    after,
}: {
    readonly before?: string | undefined;
    readonly after?: string | undefined;
}): string {
    if (before === undefined) return `${after}, new`;
    return after === undefined ? `${before}, gone` : `${before} → ${after}`;
}
