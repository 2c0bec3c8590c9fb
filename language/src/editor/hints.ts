import { type AstNode, AstUtils } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import { type InlayHint, InlayHintKind, type Range } from 'vscode-languageserver';
import type { Back, Measured, Part, Position, PositionBlock, Quantity } from '../../grammar/generated/ast.ts';
import { partWords } from '../drawing/words.ts';
import { contextOf } from '../plan/checks/context.ts';
import type { AnalysedPlan, Known, LineFigures } from '../plan/figures.ts';
import { Gathered, gather } from '../plan/resolve/gather.ts';
import { readPosition } from '../plan/resolve/position.ts';
import { CLASS_NEWTONS, outfitOf } from '../plan/resolve/tackle.ts';
import { read, readQuantity } from '../plan/resolve/values.ts';
import { within } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { massOf, si } from '../units/quantity.ts';
import { units } from '../units/unit.ts';
import { definitionsOf } from './named.ts';
import type { Settings } from './protocol.ts';
import type { EditorServices } from './services.ts';
import { around, definitionAround, rangeOf } from './spot.ts';

type Wanted = Settings['inlayHints'];

/** Behind what was written, what it comes to: metres behind a wave, a share behind a drag, the pull behind a lure. */
export function hints({ shared }: EditorServices): InlayHintProvider {
    return {
        getInlayHints(document, { range }) {
            const wanted = shared.editor.Settings.current.inlayHints;
            if (!Object.values(wanted).includes(true)) return [];
            const plans = shared.editor.Checks.of(document.uri)?.plans ?? [];
            return definitionsOf(document.parseResult.value)
                .filter((definition) => isAcross(rangeOf(definition), range))
                .flatMap((definition) => AstUtils.streamAst(definition).toArray())
                .filter((node) => isAcross(node.$cstNode?.range, range))
                .flatMap((node) => hintsAt(node, plans, wanted))
                .filter(({ position }) => isIn(position, range));
        },
    };
}

function hintsAt(node: AstNode, plans: readonly AnalysedPlan[], wanted: Wanted): InlayHint[] {
    switch (node.$type) {
        case 'Back':
            return wanted.waves ? waveHint(node as Back, lineAt(node, plans)) : [];
        case 'Part':
            return wanted.pull ? pullHint(node as Part, lineAt(node, plans)) : [];
        case 'Measured':
            return wanted.shares ? shareHint(node as Measured, lineAt(node, plans)) : [];
        case 'Quantity':
            return wanted.units ? unitHint(node as Quantity) : [];
        default:
            return [];
    }
}

/** Metres for a wave, the wave and its part for metres; in the unit of neither author where there is none. */
function waveHint(back: Back, line: LineFigures | undefined): InlayHint[] {
    if (!line) return [];
    if (back.wave) {
        if (!line.astern.known) return [];
        const sign = line.astern.standing === 'estimated' ? '≈' : '=';
        return [hintBehind(back, `${sign} ${print(line.astern.value, units.m)}`, standsOn(line.astern))];
    }
    if (!line.wave.known) return [];
    const { wave, part, onFace } = line.wave.value;
    return [hintBehind(back, `= wave ${wave}${onFace ? '' : `, ${partWords(part)}`}`, standsOn(line.wave))];
}

/** What a lure pulls at the speed of the plan, where it is named in a position. */
function pullHint(part: Part, line: LineFigures | undefined): InlayHint[] {
    const isTowed = part.word === 'lure' || part.word === 'teaser' || part.word === 'bait';
    if (!isTowed || part.$container.$type !== 'PositionBlock' || !line?.pull.known) return [];
    const name = rangeOf(part, 'of');
    const { value, range, standing } = line.pull;
    const mass = (newtons: number) => print(massOf(newtons), units.kg);
    const sign = standing === 'estimated' ? '≈' : '=';
    const label = `pulls ${sign} ${within(mass(value), range, mass)}`;
    if (!name) return [];
    const hint = { position: name.end, label: ` ${label}`, data: standsOn(line.pull) };
    return [{ ...hint, kind: InlayHintKind.Parameter }];
}

/** The share of the class behind a drag, the load behind a share. */
function shareHint(measured: Measured, line: LineFigures | undefined): InlayHint[] {
    const { word, amount } = measured;
    if (word !== 'set' && word !== 'hooked' && word !== 'full') return [];
    const kilograms = line ? line.line.outfit?.value.line?.lineClass?.si : classAround(measured);
    const quantity = readQuantity(amount);
    if (kilograms === undefined || !quantity) return [];
    const force = read(quantity, 'force');
    if (force !== undefined) {
        const share = print(force / (kilograms * CLASS_NEWTONS), units['%'], { digits: 0 });
        return [hintBehind(measured, `= ${share} of class`, ofClass(kilograms))];
    }
    const share = read(quantity, 'share');
    return share === undefined
        ? []
        : [hintBehind(measured, `= ${print(share * kilograms, units.kg)}`, ofClass(kilograms))];
}

/** The class of the outfit that a drag is written in. */
function classAround(node: AstNode): number | undefined {
    const definition = definitionAround(node);
    if (definition?.kind !== 'outfit' || contextOf(node) !== 'drag') return undefined;
    const gathered = new Gathered();
    gather(definition, gathered);
    return outfitOf(definition, gathered).line?.lineClass?.si;
}

/** The same in the other system. */
function unitHint(node: Quantity): InlayHint[] {
    const quantity = readQuantity(node);
    const beside = quantity?.unit.beside;
    if (!quantity || !beside) return [];
    return [hintBehind(node, `= ${print(si(quantity), units[beside])}`)];
}

function hintBehind(node: AstNode, label: string, why?: string): InlayHint {
    const { end } = rangeOf(node)!;
    return { position: end, label: ` ${label}`, kind: InlayHintKind.Type, ...(why && { data: why }) };
}

/** Why a hint can be believed, for whoever points at it; told when it is asked for. */
export function resolveHint(hint: InlayHint): InlayHint {
    return typeof hint.data === 'string' ? { ...hint, tooltip: hint.data } : hint;
}

function standsOn({ standing, leaning }: Known<unknown>): string {
    const source = {
        measured: 'Measured.',
        written: 'As written.',
        computed: 'Computed.',
        estimated: 'Estimate.',
    };
    return [source[standing], ...leaning].join(' ');
}

function ofClass(kilograms: number): string {
    return `Of the ${print(kilograms, units.kg)} class.`;
}

/** The line of the plan that a property stands in. */
function lineAt(node: AstNode, plans: readonly AnalysedPlan[]): LineFigures | undefined {
    const block = around<PositionBlock>(node, 'PositionBlock');
    const definition = block && definitionAround(block);
    const name = readPosition(block?.position as Position | undefined)?.name;
    if (definition?.kind !== 'spread' || !name) return undefined;
    const plan = plans.find((each) => each.plan.name === definition.name);
    return plan?.lines.find(({ line }) => line.position.name === name);
}

function isAcross(stretch: Range | undefined, { start, end }: Range): boolean {
    return stretch !== undefined && stretch.start.line <= end.line && stretch.end.line >= start.line;
}

function isIn(at: Range['start'], { start, end }: Range): boolean {
    const isAfter = at.line > start.line || (at.line === start.line && at.character >= start.character);
    return isAfter && (at.line < end.line || (at.line === end.line && at.character <= end.character));
}
