import type { LangiumDocument } from 'langium';
import type { Scene } from '../drawing/scene.ts';
import type { SideScene } from '../drawing/scene-side.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { Finding } from '../plan/finding.ts';
import type { SpreadLine } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';
import { placeOf } from '../plan/place.ts';
import type { CheckedSheet } from '../rules/check.ts';
import { lureMoves } from './moves.ts';
import { spreadNamed } from './named.ts';
import type { Picture, PicturePlace, PictureWanted, PlanEntry, PlanWanted } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';
import type { Views } from './shown.ts';

/** A plan that could be read, to be drawn again while it cannot. */
interface LastGood {
    readonly analysed: AnalysedPlan;
    readonly findings: readonly Finding[];
    readonly entry: PlanEntry;
}

/** A plan to be shown, and what is to be said with it. */
export interface Seen extends LastGood {
    /** False while the text cannot be read, or does not hold it. */
    readonly isWhole: boolean;
    readonly told: Pick<Picture, 'uri' | 'version' | 'plan' | 'outdated' | 'partial'>;
}

/** Draws plans; while a text cannot be read, the last one of it that could. */
export class Pictures {
    private readonly services: EditorSharedServices;
    private readonly lastGood = new Map<string, LastGood>();

    constructor(services: EditorSharedServices) {
        this.services = services;
        services.workspace.DocumentBuilder.onUpdate((_, deleted) => {
            const gone = new Set(deleted.map((uri) => uri.toString()));
            for (const key of this.lastGood.keys())
                if (gone.has(key.split('\n', 1)[0]!)) this.lastGood.delete(key);
        });
    }

    draw(document: LangiumDocument, wanted: PictureWanted, { drawPlan }: Views): Picture | undefined {
        const seen = this.see(document, wanted);
        if (!seen) return undefined;
        const moves = seen.isWhole ? lureMoves(seen.analysed) : [];
        const { scene, svg, summary } = drawPlan(seen.analysed, seen.findings, wanted);
        const places = placesIn(scene, seen.analysed.plan.lines);
        return { ...seen.told, svg, summary, places, moves };
    }

    /** The plan that is wanted, as it stands or as it last could be read. */
    see(document: LangiumDocument, wanted: PlanWanted): Seen | undefined {
        const uri = document.uri.toString();
        const sheet = this.services.editor.Checks.of(uri);
        if (!sheet) return undefined;
        const analysed = planWanted(sheet, wanted, document);
        const broken = analysed && faultIn(analysed, sheet);
        const name = analysed?.plan.name ?? wanted.plan;
        const key = `${uri}\n${name}`;
        if (analysed && !broken) {
            const findings = this.concerning(analysed, sheet);
            this.lastGood.set(key, { analysed, findings, entry: entryOf(analysed, sheet) });
        }
        const good = this.lastGood.get(key);
        // Nothing was ever good: what can be read of it is better than nothing, and says what it is.
        const shown = good ?? (analysed && { analysed, findings: [], entry: entryOf(analysed, sheet) });
        if (!shown) return undefined;
        const version = this.services.workspace.TextDocuments.get(document.uri)?.version;
        return {
            ...shown,
            isWhole: analysed !== undefined && !broken,
            told: {
                uri,
                ...(version !== undefined && { version }),
                plan: shown.entry,
                ...(outdated(analysed, broken) ?? {}),
                ...(broken !== undefined && !good && { partial: true }),
            },
        };
    }

    /** What was found in a plan, also where another one shares the cause; late findings where they still hold. */
    private concerning({ plan }: AnalysedPlan, sheet: CheckedSheet): readonly Finding[] {
        const first = new Set<Finding>(sheet.findings);
        const late = this.services.editor.Findings.currentOf(sheet.uri).filter((one) => !first.has(one));
        return [...(sheet.judgement.plans.get(plan.name) ?? []), ...late];
    }
}

/** Where in the texts what a scene shows is said; of what stands beside a lure, the whole block of its position. */
export function placesIn(
    { elements, notes, marks }: Pick<Scene | SideScene, 'elements' | 'notes' | 'marks'>,
    lines: readonly SpreadLine[],
): PicturePlace[] {
    const blocks = new Map(lines.map(({ position, origin }) => [position.name, origin.property]));
    const placed = (id: string, { uri, range }: Place, position?: string): PicturePlace => ({
        id,
        uri,
        range,
        ...(position !== undefined && { position }),
    });
    return [
        ...elements.flatMap(({ id, at, position }) => (at ? [placed(id, at, position)] : [])),
        ...notes.map(({ id, at, position }) => placed(id, blocks.get(position) ?? at, position)),
        ...marks.map(({ id, at, positions }) => ({ ...placed(id, at, positions[0]), positions })),
    ];
}

function outdated(
    analysed: AnalysedPlan | undefined,
    broken: string | undefined,
): Pick<Picture, 'outdated'> | undefined {
    if (!analysed) return { outdated: 'The plan is no longer in the text.' };
    return broken === undefined ? undefined : { outdated: broken };
}

/** What keeps a plan from being read as it is meant: a fault of syntax inside its definition. */
function faultIn({ plan }: AnalysedPlan, { findings }: CheckedSheet): string | undefined {
    const { start, end } = plan.origin.property;
    return findings.find(({ rule, at }) => rule === 'syntax' && at.end >= start && at.start <= end)?.what;
}

/** The plan that a request is about. */
export function planWanted(
    { plans }: CheckedSheet,
    { plan, position }: PlanWanted,
    document: LangiumDocument,
): AnalysedPlan | undefined {
    if (plan !== undefined) return plans.find((each) => each.plan.name === plan);
    if (!position) return plans[0];
    return planAt(plans, document.textDocument.offsetAt(position)) ?? plans[0];
}

/** The plan whose definition holds an offset, or the nearest one above it. */
function planAt(plans: readonly AnalysedPlan[], offset: number): AnalysedPlan | undefined {
    return plans.findLast(({ plan }) => plan.origin.property.start <= offset);
}

export function entryOf({ plan }: AnalysedPlan, { document }: CheckedSheet): PlanEntry {
    const definition = spreadNamed(document.parseResult.value, plan.name);
    const { range } = definition ? placeOf(definition) : plan.origin.place;
    return { name: plan.name, title: plan.title, range };
}
