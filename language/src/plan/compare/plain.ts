import type { AstNode, CstNode } from 'langium';
import type { Quantity, Sheet } from '../../../grammar/generated/ast.ts';
import { type Quantity as Amount, fromSI, si } from '../../units/quantity.ts';
import { type Unit, units, usualUnit } from '../../units/unit.ts';
import { entriesOf, keyOf } from '../merge/keys.ts';
import { readQuantity } from '../resolve/values.ts';

/**
 * What a file says, a line for each thing, alike for all texts that mean the same: definitions and properties by name,
 * lengths in metres whatever they were written in, no comments. For whoever compares lines.
 */
export function plainText(sheet: Sheet): string {
    return sortedEntries(sheet)
        .map((entry) => `${lines(entry).join('\n')}\n`)
        .join('\n');
}

function lines(node: AstNode): string[] {
    const entries = sortedEntries(node);
    const head = headOf(node, entries);
    if (!/\{$/.test(head)) return [head];
    return [head, ...entries.flatMap((entry) => lines(entry).map((line) => `    ${line}`)), '}'];
}

/** By what they are about; what is said several times keeps its order, which may matter. */
function sortedEntries(node: AstNode): AstNode[] {
    return entriesOf(node)
        .map((entry) => ({ entry, about: aboutOf(entry) }))
        .sort((a, b) => (a.about < b.about ? -1 : a.about > b.about ? 1 : 0))
        .map(({ entry }) => entry);
}

const inTheirOrder: ReadonlySet<string> = new Set(['step', 'note', 'say']);

function aboutOf(entry: AstNode): string {
    const { word } = entry as AstNode & { word?: string };
    return word !== undefined && inTheirOrder.has(word) ? word : keyOf(entry);
}

/** The words of an entry, up to its block. */
function headOf(node: AstNode, entries: readonly AstNode[]): string {
    const cst = node.$cstNode;
    if (!cst) return '';
    const end = entries[0] ? Math.min(...entries.map((entry) => entry.$cstNode!.offset)) : cst.end;
    const words: string[] = [];
    let amount: AstNode | undefined;
    for (const leaf of leavesOf(cst)) {
        if (leaf.offset >= end || (leaf.text === '}' && leaf.end === cst.end)) break;
        if (leaf.astNode.$type === 'Quantity') {
            if (leaf.astNode !== amount) words.push(plainAmount(leaf.astNode as Quantity));
            amount = leaf.astNode;
        } else words.push(sameWord[leaf.text] ?? leaf.text.replace(/^[“”„]|[“”]$/g, '"'));
    }
    return words.join(' ').replaceAll(' ,', ',');
}

const sameWord: Readonly<Record<string, string>> = { center: 'centre', color: 'colour', halyard: 'halyards' };

function leavesOf(node: CstNode): CstNode[] {
    if (!('content' in node)) return 'hidden' in node && node.hidden ? [] : [node];
    return (node.content as readonly CstNode[]).flatMap(leavesOf);
}

function plainAmount(node: Quantity): string {
    const found = readQuantity(node);
    if (!found) return node.$cstNode?.text ?? '';
    const unit = usualUnit[found.unit.dimension];
    const beside = unit.beside && ` (${inUnit(found, units[unit.beside], 4)})`;
    return `${inUnit(found, unit)}${beside ?? ''}`;
}

/** More digits than anybody writes and fewer than conversion spoils. */
function inUnit(amount: Amount, unit: Unit, digits = 7): string {
    const number = Number(fromSI(si(amount), unit).toPrecision(digits));
    return unit.symbol === units.count.symbol
        ? String(number)
        : unit.symbol === '%'
          ? `${number}%`
          : `${number} ${unit.symbol}`;
}
