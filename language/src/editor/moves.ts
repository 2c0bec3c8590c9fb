import type { LangiumDocument, TextDocument } from 'langium';
import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { PositionBlock } from '../../grammar/generated/ast.ts';
import { facesFor } from '../plan/analyse/faces.ts';
import { analyse } from '../plan/analyse.ts';
import type { AnalysedPlan, LineFigures } from '../plan/figures.ts';
import type { Back, SpreadLine } from '../plan/model.ts';
import { moved } from '../plan/moved.ts';
import { asWritten, replaceProperty } from '../rules/fixes.ts';
import { print } from '../units/print.ts';
import { units } from '../units/unit.ts';
import { addedAtEnd } from './block-end.ts';
import { ownBlock, spreadNamed } from './named.ts';
import type { LureMove, MoveWanted } from './protocol.ts';

/*
 * A lure taken in or let back by hand. Where its author counts waves it goes from face to face; where they measure,
 * to any distance, rounded as they would write it.
 */

/** Where each lure of a plan runs, and the faces it would snap to. */
export function lureMoves(analysed: AnalysedPlan): LureMove[] {
    return analysed.lines.flatMap((figures): LureMove[] => {
        const { line, astern } = figures;
        if (line.role === 'standby' || !astern.known) return [];
        const faces = facesFor(figures, analysed);
        return [
            {
                position: line.position.name,
                astern: astern.value,
                counts: line.back?.kind === 'wave' ? 'waves' : 'distance',
                faces: faces.known ? faces.value : [],
            },
        ];
    });
}

/** A lure at another place: how its author would write that, and the plan as it would be then. */
export interface Moved {
    /** `back wave 4`, `back 112 ft` */
    readonly text: string;
    readonly astern: number;
    /** The face that it is on the ideal place of. */
    readonly wave?: number;
    /** Without turns. */
    readonly analysed: AnalysedPlan;
}

/** @returns undefined where there is no such lure, or no such place for it */
export function moveOf(analysed: AnalysedPlan, { position, astern }: MoveWanted): Moved | undefined {
    const figures = analysed.lines.find(({ line }) => line.position.name === position);
    if (!figures || figures.line.role === 'standby' || !(astern > 0) || !Number.isFinite(astern))
        return undefined;
    const back = backAt(figures, analysed, astern);
    if (!back) return undefined;
    const there = analyse(moved(analysed.plan, position, back.said));
    const now = there.lines.find(({ line }) => line.position.name === position)?.astern;
    if (!now?.known) return undefined;
    const wave = back.wave === undefined ? {} : { wave: back.wave };
    return { text: `back ${back.text}`, astern: now.value, ...wave, analysed: there };
}

interface BackSaid {
    readonly said: Back;
    readonly text: string;
    readonly wave?: number;
}

function backAt(figures: LineFigures, analysed: AnalysedPlan, astern: number): BackSaid | undefined {
    const { line } = figures;
    const faces = facesFor(figures, analysed);
    const near = (faces.known ? faces.value : []).toSorted(
        (a, b) => Math.abs(a.astern - astern) - Math.abs(b.astern - astern),
    )[0];
    const origin = line.back?.origin ?? line.origin;
    if (line.back?.kind === 'wave') {
        if (!near) return undefined;
        const wave = { si: near.wave, origin, standing: 'written' } as const;
        return { said: { kind: 'wave', wave, origin }, text: `wave ${near.wave}`, wave: near.wave };
    }
    const { text, si } = (line.back && asWritten(line.back.distance, astern, 'nearest')) ?? inMetres(astern);
    if (!(si > 0)) return undefined;
    const isThere = near && Math.abs(near.astern - si) < SAME_PLACE;
    return {
        said: { kind: 'distance', distance: { si, origin, standing: 'written' }, origin },
        text,
        ...(isThere && { wave: near.wave }),
    };
}

function inMetres(astern: number) {
    const text = print(astern, units.m);
    return { text, si: Number.parseFloat(text) };
}

/** As far as a distance that is written in whole feet can be from the place that is meant, m. */
const SAME_PLACE = 0.16;

/**
 * The edit that writes a move into the text, one step to undo: the `back` that is there where the plan itself says
 * it; else a `back` of its own in the position's block, or a block for the position, so that whoever shares the
 * other plan's distance keeps it.
 *
 * @returns undefined where the plan's text gives no place for it
 */
export function moveEdit(
    { plan }: AnalysedPlan,
    { position }: MoveWanted,
    { text }: Moved,
    document: LangiumDocument,
): WorkspaceEdit | undefined {
    const line = plan.lines.find((each) => each.position.name === position);
    if (!line) return undefined;
    const fix =
        line.back && isOfPlan(line, plan.name) ? replaceProperty('', line.back.origin, text) : undefined;
    const edit = fix?.edits[0];
    if (edit) return { changes: { [edit.at.uri]: [{ range: edit.at.range, newText: edit.text }] } };
    const added = addedTo(plan.name, position, text, document);
    return added && { changes: { [document.uri.toString()]: [added] } };
}

function isOfPlan({ back }: SpreadLine, plan: string): boolean {
    return back !== undefined && !back.origin.inherited && back.origin.definition === plan;
}

function addedTo(
    plan: string,
    position: string,
    text: string,
    { parseResult, textDocument }: LangiumDocument,
): TextEdit | undefined {
    const spread = spreadNamed(parseResult.value, plan);
    if (!spread) return undefined;
    const block = ownBlock(spread, position);
    if (!block) return addedAtEnd(spread, `${position} { ${text} }`, textDocument);
    return inItsLine(block, text, textDocument) ?? addedAtEnd(block, text, textDocument);
}

/** A block that its author keeps in one line stays in one. */
function inItsLine({ $cstNode }: PositionBlock, text: string, document: TextDocument): TextEdit | undefined {
    const inside = /^[^\r\n]*\{[^\r\n]*(?=\})/.exec($cstNode?.text ?? '')?.[0].trimEnd();
    if (!inside || !$cstNode) return undefined;
    const at = document.positionAt($cstNode.offset + inside.length);
    return { range: { start: at, end: at }, newText: `${inside.endsWith('{') ? ' ' : '  '}${text}` };
}
