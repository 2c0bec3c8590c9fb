import type { AstNode, LangiumDocument } from 'langium';
import type { Sheet } from '../../../grammar/generated/ast.ts';
import type { Finding } from '../finding.ts';
import type { ReachScope } from '../names/scope.ts';
import { Gathered } from '../resolve/gather.ts';
import { contentsOf } from '../syntax/contents.ts';
import { checkConflicts, isOnMark } from './conflicts.ts';
import { checkDates } from './dates.ts';
import { checkDuplicates } from './duplicates.ts';
import { withoutEchoes } from './echoes.ts';
import { ENOUGH } from './enough.ts';
import { checkIdle } from './idle.ts';
import { checkLost } from './lost.ts';
import { asMeant } from './miswritten.ts';
import { checkDuplicateNames, checkLike, checkReferences, checkWritten } from './names.ts';
import { checkQuantity } from './quantities.ts';
import { checkRange, checkSpool } from './swapped.ts';
import { checkSyntax } from './syntax.ts';
import { checkUses, type UseContext } from './uses.ts';
import { checkChoice, checkHead, checkPosition, checkRemoval, checkTitle, checkUnknown } from './words.ts';

/** Everything that can be wrong with a text as a text, before anybody asks whether the plan is a good one. */
export function checkLanguage(
    document: LangiumDocument,
    scope: ReachScope,
    context: UseContext,
    gathered = new Gathered(),
): Finding[] {
    const sheet = document.parseResult.value as Sheet;
    const extra = extraPositions(document, context);
    const uses = checkUses(document, context);
    const conflicts = checkConflicts(document);
    const said = asMeant(document, [
        ...checkSyntax(document),
        ...uses,
        ...checkReferences(
            document,
            scope,
            uses.some(isBroken) || (sheet.uses ?? []).some(({ path }) => path === undefined),
        ),
        ...checkDuplicateNames(document, context.reach),
        ...(sheet.definitions ?? []).flatMap((definition) => [
            ...listOf(checkLike(definition)),
            ...checkWritten(definition),
            ...listOf(checkTitle(definition)),
            ...checkIdle(definition, gathered),
            ...checkLost(definition, gathered),
        ]),
        ...checkNodes(contentsOf(sheet), extra),
    ]);
    const found = withoutEchoes(document, said);
    if (conflicts.length === 0) return found;
    return [...conflicts, ...found.filter(({ at }) => !isOnMark(document, at.range.start.line))];
}

function isBroken({ severity }: Finding): boolean {
    return severity === 'error';
}

/** In the order of the text. Of very many unknown words only the first are worth looking for what was meant. */
function checkNodes(nodes: readonly AstNode[], extra: ReadonlySet<string>): Finding[] {
    let unknown = 0;
    return nodes.flatMap((node) => {
        const found = checkNode(node, extra, unknown > 2 * ENOUGH);
        unknown += found.filter(({ rule }) => rule === 'unknown-word').length;
        return found;
    });
}

function checkNode(node: AstNode, extra: ReadonlySet<string>, isFlood: boolean): Finding[] {
    const { entries } = node as { entries?: readonly AstNode[] };
    return [
        ...(entries ? checkDuplicates(entries) : []),
        ...checkDates(node),
        ...oneOf(node, extra, isFlood),
    ];
}

function oneOf(node: AstNode, extra: ReadonlySet<string>, isFlood: boolean): Finding[] {
    const found = (() => {
        switch (node.$type) {
            case 'Quantity':
                return checkQuantity(node as never);
            case 'Unknown':
                return checkUnknown(node as never, isFlood);
            case 'Chosen':
                return checkChoice(node as never);
            case 'Lure':
                return checkHead(node as never);
            case 'Ranged':
                return checkRange(node as never);
            case 'Block':
                return checkSpool(node as never);
            case 'Position':
                return checkPosition(node as never, extra);
            case 'Removal':
                return checkRemoval(node as never);
            default:
                return undefined;
        }
    })();
    return listOf(found);
}

function listOf(finding: Finding | undefined): Finding[] {
    return finding ? [finding] : [];
}

/** The positions that boats in reach have on top of the trade's. */
function extraPositions(document: LangiumDocument, { reach }: UseContext): ReadonlySet<string> {
    const names = new Set<string>();
    for (const reached of reach.from(document)) {
        for (const definition of reached.parseResult.value.definitions ?? []) {
            if (definition.kind !== 'boat') continue;
            for (const entry of definition.entries)
                if (entry.$type === 'ExtraPosition') names.add(entry.name);
        }
    }
    return names;
}
