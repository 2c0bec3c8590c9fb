import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, Command, Range } from 'vscode-languageserver';
import type { Day as DayNode, Definition } from '../../grammar/generated/ast.ts';
import type { Finding } from '../plan/finding.ts';
import type { Hour } from '../plan/model.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import { likeOne } from './likes.ts';
import { definitionsOf, targetOf } from './named.ts';
import {
    commands,
    type OpenDiagramArguments,
    type ShowFindingsArguments,
    type ShowReferencesArguments,
    type ShowSensitivityArguments,
} from './protocol.ts';
import { referencesTo } from './references.ts';
import type { EditorServices } from './services.ts';
import { rangeOf } from './spot.ts';
import type { Workshop } from './workshop/part.ts';

/**
 * Above a plan: its picture, how much was found, what is like it, how tightly it turns. Above a piece of gear:
 * who uses it.
 */
export function lenses(services: EditorServices): CodeLensProvider {
    const { Settings } = services.shared.editor;
    return {
        async provideCodeLens(document) {
            if (!Settings.current.codeLens || document.uri.scheme === LIBRARY_SCHEME) return [];
            const definitions = definitionsOf(document.parseResult.value);
            const isDay = definitions.some(({ kind }) => kind === 'day');
            const workshop = isDay ? await services.shared.editor.Press.workshop() : undefined;
            return definitions.flatMap((definition) => {
                const range = rangeOf(definition, 'name');
                if (!range || definition.kind === 'log') return [];
                if (definition.kind === 'day')
                    return aboveDay(definition as DayNode, document, workshop, services);
                const made = definition.kind === 'spread' ? abovePlan : aboveGear;
                return made(definition, document, services).map((command): CodeLens => ({ range, command }));
            });
        },
    };
}

function abovePlan(spread: Definition, document: LangiumDocument, services: EditorServices): Command[] {
    const uri = document.uri.toString();
    const { Checks, Findings } = services.shared.editor;
    const name = (spread as { name: string }).name;
    const analysed = Checks.of(uri)?.plans.find(({ plan }) => plan.name === name);
    if (!analysed) return [];
    const found = Findings.currentOf(uri).filter((finding) => concerns(finding, name, rangeOf(spread)));
    const of: OpenDiagramArguments & ShowSensitivityArguments = [uri, name];
    const show: ShowFindingsArguments = [uri, rangeOf(spread)!];
    return [
        // Elsewhere these words would only look like something to press.
        ...(services.shared.editor.Client.carriesOut(commands.openDiagram)
            ? [command('Open the diagram', commands.openDiagram, of, services)]
            : []),
        command(countWords(found, Findings.hasLate(uri)), commands.showFindings, show, services),
        ...likeWords(spread, document, services),
        ...Findings.remarksOf(uri)
            .filter(({ plan }) => plan === name)
            .map(({ title }) => command(title, commands.showSensitivity, of, services)),
    ];
}

/** Above each hour of a day, and each condition: how much there is to do when it comes. */
function aboveDay(
    node: DayNode,
    document: LangiumDocument,
    workshop: Workshop | undefined,
    services: EditorServices,
): CodeLens[] {
    const sheet = services.shared.editor.Checks.of(document.uri.toString());
    const day = sheet?.resolved.days.find(({ name }) => name === node.name);
    if (!day || !workshop) return [];
    const first = day.hours[0]?.plan.value;
    return [...day.hours, ...day.conditions].flatMap((entry): CodeLens[] => {
        const at = day.hours.indexOf(entry as Hour);
        const from = at < 0 ? first : day.hours[at - 1]?.plan.value;
        const { property } = entry.origin;
        if (!from || property.uri !== document.uri.toString()) return [];
        return [
            {
                range: property.range,
                command: { title: workshop.overWords(from, entry.plan.value), command: '' },
            },
        ];
    });
}

function aboveGear(definition: Definition, document: LangiumDocument, services: EditorServices): Command[] {
    const places = referencesTo(definition, services);
    if (places.length === 0) return [];
    const title = places.length === 1 ? 'used once' : `used ${places.length} times`;
    const show: ShowReferencesArguments = [
        document.uri.toString(),
        rangeOf(definition, 'name')!.start,
        places,
    ];
    return [command(title, commands.showReferences, show, services)];
}

/** Where a preset is used. */
function likeWords(spread: Definition, document: LangiumDocument, services: EditorServices): Command[] {
    const alike = likeOne(spread, services.shared.workspace.LangiumDocuments.all);
    if (alike.length === 0) return [];
    const places = alike.flatMap((each) => locationOf(each));
    const title = alike.length === 1 ? '1 plan is like it' : `${alike.length} plans are like it`;
    const show: ShowReferencesArguments = [document.uri.toString(), rangeOf(spread, 'name')!.start, places];
    return [command(title, commands.showReferences, show, services)];
}

function locationOf(node: AstNode) {
    const target = targetOf(node);
    return target ? [{ uri: AstUtils.getDocument(node).uri.toString(), range: target.name }] : [];
}

function concerns({ plan, at }: Finding, name: string, range: Range | undefined): boolean {
    if (plan !== undefined) return plan === name;
    const { start } = at.range;
    return range !== undefined && start.line >= range.start.line && start.line <= range.end.line;
}

/** @param all  false while the turns are still to be looked at */
function countWords(found: readonly Finding[], all: boolean): string {
    const of = (severity: Finding['severity'], one: string) => {
        const count = found.filter((each) => each.severity === severity).length;
        return count === 0 ? [] : [`${count} ${one}${count === 1 ? '' : 's'}`];
    };
    const counts = [...of('error', 'error'), ...of('warning', 'warning'), ...of('hint', 'hint')];
    if (counts.length > 0) return counts.join(', ');
    return all ? 'Nothing found' : 'Nothing found so far';
}

/** A command that the client does not carry out is shown as words. */
function command(
    title: string,
    name: string,
    given: readonly unknown[],
    { shared }: EditorServices,
): Command {
    return shared.editor.Client.carriesOut(name)
        ? { title, command: name, arguments: [...given] }
        : { title, command: '' };
}
