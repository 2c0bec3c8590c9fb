import { AstUtils } from 'langium';
import type { DefinitionProvider } from 'langium/lsp';
import { LocationLink } from 'vscode-languageserver';
import type { From, Position, Use } from '../../grammar/generated/ast.ts';
import { pathOf } from '../plan/names/uses.ts';
import { startOf } from '../plan/place.ts';
import { ruleNamed } from '../rules/registry.ts';
import { pageAddress } from './diagnostic.ts';
import { definitionNamed, namedPoint, positionBlock, type Target, targetOf } from './named.ts';
import type { EditorServices } from './services.ts';
import { around, rangeOf, type Spot, spotAt } from './spot.ts';

/** Leads from a name to what it names: a definition, a file, a position of the plan, a point of the boat, a rule. */
export function definition(services: EditorServices): DefinitionProvider {
    return {
        async getDefinition(document, { position }) {
            const spot = spotAt(document, position);
            const target = spot && targetFrom(spot, services);
            if (!spot || !target) return undefined;
            return [LocationLink.create(target.uri, target.whole, target.name, originOf(spot))];
        },
    };
}

function targetFrom(spot: Spot, services: EditorServices): Target | undefined {
    const { node, property } = spot;
    const named = definitionNamed(spot, services);
    if (named) return targetOf(named);
    if (node.$type === 'Use' && property === 'path') return fileUsed(node as Use, services);
    if (node.$type === 'From' && property === 'point') {
        const point = namedPoint(node as From);
        return point && targetOf(point);
    }
    if ((node.$type === 'Waive' || node.$type === 'RuleSetting') && property === 'rule')
        return pageOf((node as { rule?: string }).rule);
    const position = around<Position>(node, 'Position');
    const block = position && positionBlock(position);
    return block && targetOf(block, 'position');
}

function fileUsed(use: Use, { shared }: EditorServices): Target | undefined {
    const from = AstUtils.getDocument(use).uri;
    const target = shared.names.Reach.target(from, pathOf(use));
    return 'uri' in target && shared.workspace.LangiumDocuments.hasDocument(target.uri)
        ? beginningOf(target.uri.toString())
        : undefined;
}

function pageOf(rule: string | undefined): Target | undefined {
    return rule !== undefined && ruleNamed(rule) ? beginningOf(pageAddress(rule)) : undefined;
}

function beginningOf(uri: string): Target {
    const { range } = startOf(uri);
    return { uri, whole: range, name: range };
}

/** A position is one name, though it is three words. */
function originOf({ node, leaf }: Spot) {
    return around(node, 'Position') ? rangeOf(around(node, 'Position')!) : leaf.range;
}
