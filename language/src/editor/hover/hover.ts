import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Range } from 'vscode-languageserver';
import type { Definition, Position, PositionBlock, Quantity, Use } from '../../../grammar/generated/ast.ts';
import { contextOf } from '../../plan/checks/context.ts';
import type { AnalysedPlan, LineFigures } from '../../plan/figures.ts';
import { pathOf } from '../../plan/names/uses.ts';
import { readPosition } from '../../plan/resolve/position.ts';
import { definitionName } from '../../plan/resolve/table.ts';
import { propertyOf } from '../../plan/vocabulary.ts';
import { parseDate } from '../../units/date.ts';
import { definitionOffers } from '../completion/definitions.ts';
import { definitionNamed, definitionsOf } from '../named.ts';
import { commands } from '../protocol.ts';
import type { EditorServices } from '../services.ts';
import { around, definitionAround, rangeOf, type Spot, spotAt } from '../spot.ts';
import { aboutDefinition } from './definition.ts';
import { aboutLine } from './line.ts';
import { aboutNumber } from './number.ts';
import { code, hoverOf, type Part, rows, text, title } from './page.ts';
import { aboutPlan, wavesIn } from './plan.ts';
import { aboutRule, aboutSetting } from './rule.ts';
import { type Speech, speechBy } from './speech.ts';

/** Tells of the word at the caret what it means, what it comes to, and who decided. */
export function hover(services: EditorServices): HoverProvider {
    return {
        async getHoverContent(document, { position }) {
            const spot = spotAt(document, position);
            if (!spot) return undefined;
            const speech = speechBy(services.shared.editor.Settings.current);
            const { parts, range } = answer({ spot, document, services, speech });
            parts.push(...(await aboutSeason(spot.node, services)));
            if (parts.length > 0) parts.push(...aboutFigures(spot, services));
            return parts.length > 0 ? hoverOf(parts, range, services) : undefined;
        },
    };
}

interface Question {
    readonly spot: Spot;
    readonly document: LangiumDocument;
    readonly services: EditorServices;
    readonly speech: Speech;
}

interface Answer {
    readonly parts: Part[];
    readonly range: Range;
}

function answer(asked: Question): Answer {
    const { node, leaf, property } = asked.spot;
    const whole = (of: AstNode, parts: Part[]): Answer => ({ parts, range: rangeOf(of) ?? leaf.range });
    const word = (parts: Part[]): Answer => ({ parts, range: leaf.range });
    const position = around<Position>(node, 'Position');
    if (position) return whole(position, aboutPosition(position, asked));
    const quantity = around<Quantity>(node, 'Quantity');
    if (quantity) return whole(quantity, aboutQuantity(quantity, asked));
    const named = definitionNamed(asked.spot, asked.services);
    if (named) return word(aboutNamed(named, asked));
    const { rule, key, kind } = node as { rule?: string; key?: string; kind?: string };
    switch (property) {
        case 'rule':
            return word(aboutRule(rule));
        case 'key':
            return word(aboutSetting((node.$container as { rule?: string }).rule, key));
        case 'kind':
            return word(aboutKind(kind));
        case 'path':
            return word(aboutFile(node as Use, asked));
        case 'date':
        case 'until':
            return word(aboutDay(asked.spot));
        default:
            return word(node.$type === 'Use' ? aboutKind('use') : aboutWord(asked.spot));
    }
}

function aboutNamed(definition: Definition, { services, speech }: Question): Part[] {
    if (definition.kind !== 'spread') return aboutDefinition(definition, speech, services);
    const home = AstUtils.getDocument(definition).uri.toString();
    const { Checks, Findings } = services.shared.editor;
    const plan = Checks.of(home)?.plans.find((each) => each.plan.name === definitionName(definition));
    return plan ? aboutPlan(plan, Findings.remarksOf(home), speech) : [];
}

function aboutPosition(position: Position, asked: Question): Part[] {
    const plan = planAround(asked);
    const line = plan && lineOf(plan, position);
    if (plan && line) return aboutLine(line, plan, asked.speech);
    const name = readPosition(position)?.name;
    return name ? [title(name)] : [];
}

/** What the season's logs tell of the position that is asked about. */
async function aboutSeason(node: AstNode, { shared }: EditorServices): Promise<Part[]> {
    const position = around<Position>(node, 'Position');
    const name = position && readPosition(position)?.name;
    const kind: string | undefined = position && definitionAround(position)?.kind;
    // A boat has positions too, for its holders: no season is told of those.
    if (!name || (kind !== 'spread' && kind !== 'log')) return [];
    // Without what counts it, all else is told none the less.
    const record = await shared.editor.Seasons.record(name).catch(() => undefined);
    return record ? rows(record) : [];
}

/** Where it is written how all of this is computed. */
function aboutFigures(spot: Spot, { shared }: EditorServices): Part[] {
    const isPosition =
        around<Position>(spot.node, 'Position') && definitionAround(spot.node)?.kind === 'spread';
    if (!isPosition || !shared.editor.Client.carriesOut(commands.openGuide)) return [];
    const text = 'How each figure is computed, and on what it stands';
    return [{ kind: 'command', text, command: commands.openGuide, given: ['figures'] }];
}

function aboutQuantity(quantity: Quantity, asked: Question): Part[] {
    const plan = planAround(asked);
    const block = around<PositionBlock>(quantity, 'PositionBlock');
    const line = plan && block?.position && lineOf(plan, block.position);
    const { word } = quantity.$container as { word?: string };
    const isSpeed = plan && word === 'speed' && quantity.$container.$container?.$type === 'Spread';
    const waves = isSpeed ? wavesIn(plan, asked.speech) : undefined;
    return [...aboutNumber(quantity, line, asked.speech), ...(waves ? [text(`Waves ${waves}.`)] : [])];
}

/** The plan that the word stands in. */
function planAround({ spot, document, services }: Question): AnalysedPlan | undefined {
    const definition = definitionAround(spot.node);
    if (definition?.kind !== 'spread') return undefined;
    const sheet = services.shared.editor.Checks.of(document.uri);
    return sheet?.plans.find(({ plan }) => plan.name === definition.name);
}

function lineOf({ lines }: AnalysedPlan, position: Position): LineFigures | undefined {
    const name = readPosition(position)?.name;
    return lines.find(({ line }) => line.position.name === name);
}

function aboutFile(use: Use, { document, services }: Question): Part[] {
    const { names, workspace } = services.shared;
    const target = names.Reach.target(document.uri, pathOf(use));
    const used = 'uri' in target ? workspace.LangiumDocuments.getDocument(target.uri) : undefined;
    if (!used) return [];
    const held = definitionsOf(used.parseResult.value).map((each) => `${each.kind} ${definitionName(each)}`);
    return held.length > 0
        ? [title(pathOf(use)), code(held.join('\n'))]
        : [title(pathOf(use), 'holds nothing yet')];
}

/** A date with its day of the week, by which a crew would see that it is the wrong one. */
function aboutDay({ node, leaf, property }: Spot): Part[] {
    const parsed = parseDate(leaf.text);
    if (typeof parsed !== 'string') return [];
    const day = dayOfWeek.format(new Date(`${parsed}T00:00:00Z`));
    const context = contextOf(node);
    const { word } = node as { word?: string };
    const said = context && word ? propertyOf(context, word) : undefined;
    return [
        title(day, property === 'until' ? 'until' : word),
        ...(property === 'until'
            ? [text('The last day that the waiver holds, by the date of the plan.')]
            : said
              ? [text(said.says)]
              : []),
    ];
}

const dayOfWeek = new Intl.DateTimeFormat('en-GB', { dateStyle: 'full', timeZone: 'UTC' });

function aboutKind(kind: string | undefined): Part[] {
    const offer = definitionOffers().find(({ label }) => label === kind);
    return offer?.detail ? [title(offer.label), text(offer.detail)] : [];
}

/** A word of the language: what it is for, and what it looks like. */
function aboutWord({ node, leaf }: Spot): Part[] {
    const context = contextOf(node);
    const { word } = node as { word?: string };
    const property = context && word && propertyOf(context, word);
    if (!property || !/^[A-Za-z]/.test(leaf.text)) return [];
    return [
        title(property.word, context),
        text(property.says),
        code(property.example),
        ...(property.otherwise ? [text(`Where it is left out: ${property.otherwise}.`)] : []),
    ];
}
